import type { DeviceDrain, DrainFit, FlushVolume, WaterUseFact } from '../analyse/index.ts';
import type { DeviceTank } from '../analyse/tank/index.ts';
import { NOWHERE, place } from '../findings/index.ts';
import { cellPlace, type TraceRow } from '../model/index.ts';
import { quantityFormula, type TraceStep, traceRows, volumeStep } from './trace-steps.ts';

/** How the drain ratio of a device came about: every run, what was taken out, and the fit. */
export function traceDrainRatio(drain: DeviceDrain): TraceRow[] {
  return traceRows(ratioSteps(drain, 0));
}

/** How a figure of a usage scenario came about: the ratio, the flushes and the pours. */
export function traceScenario(fact: WaterUseFact, pick: keyof typeof SCENARIO_FIGURES): TraceRow[] {
  const { title, unit, formula, value } = SCENARIO_FIGURES[pick];
  const { simulated } = fact;
  const head: TraceStep = {
    depth: 0,
    what: `${title} of ${fact.row.device} (${fact.row.variant}) in ${fact.row.scenario}`,
    value: value(fact),
    unit,
    formula,
    place: place({ file: fact.scenario.source }),
  };
  if (simulated === null) {
    return traceRows([{ ...head, what: `${head.what}: not tested` }]);
  }
  const volumes: readonly (readonly [string, number])[] = [
    ['clean water', simulated.cleanL],
    ['drain while producing', simulated.producingDrainL],
    ['drain of flushes', simulated.flushDrainL],
  ];
  return traceRows([
    head,
    ...volumes.map(
      ([what, litres]): TraceStep => ({
        depth: 1,
        what: `${what} over ${fact.scenario.days} days`,
        value: litres,
        unit: 'L',
        formula: null,
        place: NOWHERE,
      }),
    ),
    ...ratioSteps(fact.drain, 1),
    ...fact.drain.flushVolumes.flatMap((volume) =>
      flushSteps(volume, simulated.flushCounts[volume.rule.values.rule] ?? 0),
    ),
  ]);
}

export const SCENARIO_FIGURES = {
  'total-drain-ratio': {
    title: 'total drain per clean volume',
    unit: 'L/L',
    formula: '(drain while producing + drain of flushes) / clean water',
    value: (fact: WaterUseFact) => fact.row.total_drain_ratio.estimate,
  },
  recovery: {
    title: 'recovery',
    unit: 'fraction',
    formula: 'clean water / (clean water + all drain)',
    value: (fact: WaterUseFact) => fact.row.recovery.estimate,
  },
  'drain-per-year': {
    title: 'drain in a year',
    unit: 'L',
    formula: 'all drain / days x 365',
    value: (fact: WaterUseFact) => fact.row.drain_L_per_year.estimate,
  },
} as const;

function ratioSteps(drain: DeviceDrain, depth: number): TraceStep[] {
  const name = `${drain.device.values.device} (${drain.variant})`;
  const { fit } = drain;
  if (drain.tank !== null) return tankSteps(drain.tank, name, depth);
  if (fit === null) {
    const hasLine = drain.device.values.drain_line === 'yes';
    return [
      {
        depth,
        what: hasLine
          ? `drain ratio of ${name}: not tested`
          : `drain ratio of ${name}: no drain line, so nothing drains`,
        value: hasLine ? null : 0,
        unit: 'L/L',
        formula: null,
        place: cellPlace(drain.device, hasLine ? 'device' : 'drain_line'),
      },
    ];
  }
  const isFitted = fit.method === 'ratio and per-start';
  const steps: TraceStep[] = [
    {
      depth,
      what: `drain ratio of ${name}: ${fit.method}`,
      value: fit.ratio,
      unit: 'L/L',
      formula: isFitted
        ? 'least squares of drain = ratio x clean + per-start x starts'
        : 'sum of drain / sum of clean water',
      place: NOWHERE,
    },
  ];
  if (isFitted) {
    steps.push({
      depth: depth + 1,
      what: 'drain per start of production',
      value: fit.perStartL,
      unit: 'L',
      formula: 'from the same least squares',
      place: NOWHERE,
    });
  }
  return [...steps, ...runSteps(fit, depth + 1)];
}

/** A tank drains what its refills take: every figure of tanks.csv, and the feed's solids. */
function tankSteps(tank: DeviceTank, name: string, depth: number): TraceStep[] {
  const { values } = tank.row;
  const stated = TANK_FIGURES.flatMap(([column, what, unit]): TraceStep[] => {
    const quantity = values[column];
    if (quantity === null) return [];
    return [
      {
        depth: depth + 1,
        what,
        value: quantity.value,
        unit,
        formula: quantityFormula(quantity),
        place: cellPlace(tank.row, column),
      },
    ];
  });
  return [
    {
      depth,
      what: `drain ratio of ${name}: filling its tank from restart to stop`,
      value: tank.cycleRatio,
      unit: 'L/L',
      formula:
        'drain flow x filling time / water made, against the pressure of the air in the tank',
      place: cellPlace(tank.row, 'device'),
    },
    ...stated,
    {
      depth: depth + 1,
      what:
        tank.feedSolidsMgPerL === null
          ? 'dissolved solids of the feed: not tested, so no osmotic pressure'
          : 'mean dissolved solids of the natural feeds, for the osmotic pressure',
      value: tank.feedSolidsMgPerL,
      unit: 'mg/L',
      formula: null,
      place: NOWHERE,
    },
  ];
}

const TANK_FIGURES = [
  ['shell', 'volume of the empty shell', 'L'],
  ['precharge', 'air pressure in the empty tank', 'kPa'],
  ['feed_pressure', 'feed pressure', 'kPa'],
  ['stop', 'tank pressure at which filling stops', 'kPa'],
  ['restart', 'tank pressure at which it starts again', 'kPa'],
  ['permeate_flow', 'clean flow into an open tank', 'L/min'],
  ['reject_flow', 'drain flow while filling', 'L/min'],
] as const;

function runSteps(fit: DrainFit, depth: number): TraceStep[] {
  return fit.runs.flatMap(({ row, clean, drain, flushTakenOutL, producingL, refused }) => {
    const steps: TraceStep[] = [
      {
        depth,
        what:
          refused === null
            ? `run ${row.values.run}, collected until ${row.values.collected_until}`
            : `run ${row.values.run} is not used: ${refused}`,
        value: producingL,
        unit: 'L',
        formula:
          flushTakenOutL > 0
            ? `drain ${drain.volumeL} - flush ${flushTakenOutL}`
            : 'drain while producing',
        place: cellPlace(row, 'run'),
      },
      volumeStep('clean water', depth + 1, clean, cellPlace(row, 'clean')),
      volumeStep('drain', depth + 1, drain, cellPlace(row, 'drain')),
    ];
    if (row.values.starts !== null) {
      steps.push({
        depth: depth + 1,
        what: 'starts of production',
        value: row.values.starts,
        unit: null,
        formula: null,
        place: cellPlace(row, 'starts'),
      });
    }
    return steps;
  });
}

function flushSteps(volume: FlushVolume, count: number): TraceStep[] {
  const { rule, measured } = volume;
  const stated = rule.values.volume;
  return [
    {
      depth: 1,
      what: `flush rule ${rule.values.rule} fired ${count} times; volume of one flush`,
      value: volume.volumeL,
      unit: 'L',
      formula:
        stated === null
          ? `mean of ${measured.length} measured flushes`
          : `as stated: ${quantityFormula(stated)}`,
      place: cellPlace(rule, stated === null ? 'rule' : 'volume'),
    },
    ...measured.map(({ row, volume: one }) =>
      volumeStep(
        'measured flush',
        2,
        one,
        cellPlace(row, row.values.volume === null ? 'mass' : 'volume'),
      ),
    ),
  ];
}
