import type { FlowFact } from '../analyse/flow/index.ts';
import { type ReductionFact, statementOptions, type WaterUse } from '../analyse/index.ts';
import { type Bench, type MeasureRow, STANDARD } from '../model/index.ts';
import { type ReductionSummary, summariseReductions } from './reduction-summary.ts';

/** A comparable figure before it is worded. */
export interface Measure {
  readonly row: Omit<MeasureRow, 'shown'>;
  /** Set for reductions, whose wording follows the outcome. */
  readonly reduction: ReductionSummary | null;
}

export interface MeasureInputs {
  readonly reductions: readonly ReductionFact[];
  readonly waterUse: WaterUse;
  readonly flows: readonly FlowFact[];
}

/**
 * Every measure of every device, in a fixed order: reductions by analyte, water use, flow.
 *
 * A device without a figure still has its row, with the reason as outcome: what was not tested
 * never looks like zero.
 */
export function measuresOf(bench: Bench, inputs: MeasureInputs): Measure[] {
  return [
    ...reductionMeasures(bench, summariseReductions(inputs.reductions, statementOptions(bench))),
    ...waterUseMeasures(inputs.waterUse),
    ...flowMeasures(bench, inputs.flows),
  ];
}

function reductionMeasures(bench: Bench, summaries: readonly ReductionSummary[]): Measure[] {
  const analytes = [...new Map(summaries.map((item) => [item.analyte.key, item.analyte])).values()];
  const variantsOf = (device: string): string[] => {
    const tested = summaries.flatMap((item) => (item.device === device ? item.variant : []));
    return [...new Set([STANDARD, ...tested])];
  };
  return analytes.flatMap((analyte) =>
    bench.tables.devices.flatMap(({ values: { device } }) =>
      variantsOf(device).map((variant): Measure => {
        const summary = summaries.find(
          (item) =>
            item.device === device && item.variant === variant && item.analyte.key === analyte.key,
        );
        return {
          row: {
            measure: `reduction.${analyte.key}`,
            title: `Reduction of ${analyte.name}`,
            unit: 'fraction',
            direction: analyte.kind === 'mineral-beneficial' ? 'none' : 'higher',
            device,
            variant,
            outcome: summary?.outcome ?? 'untested',
            low: summary?.low ?? null,
            estimate: summary?.estimate ?? null,
            high: summary?.high ?? null,
          },
          reduction: summary ?? null,
        };
      }),
    ),
  );
}

function waterUseMeasures(use: WaterUse): Measure[] {
  const ratio = use.drains.map(
    (drain): Measure => ({
      row: {
        measure: 'water-use.drain-ratio',
        title: 'Drain per clean volume while producing',
        unit: 'L/L',
        direction: 'lower',
        device: drain.device.values.device,
        variant: drain.variant,
        ...point(drain.model?.drainRatio ?? null),
      },
      reduction: null,
    }),
  );
  const perScenario = use.scenarios.flatMap((scenario) =>
    SCENARIO_MEASURES.flatMap(({ id, title, unit, direction, pick }) =>
      use.facts
        .filter((fact) => fact.scenario === scenario)
        .map(
          (fact): Measure => ({
            row: {
              measure: `water-use.${id}.${scenario.name}`,
              title: `${title}, ${scenario.name}`,
              unit,
              direction,
              device: fact.row.device,
              variant: fact.row.variant,
              ...point(pick(fact.row)),
            },
            reduction: null,
          }),
        ),
    ),
  );
  return [...ratio, ...perScenario];
}

const SCENARIO_MEASURES = [
  {
    id: 'total-drain-ratio',
    title: 'Total drain per clean volume',
    unit: 'L/L',
    direction: 'lower',
    pick: (row: WaterUse['facts'][number]['row']) => row.total_drain_ratio.estimate,
  },
  {
    id: 'recovery',
    title: 'Recovery',
    unit: 'fraction',
    direction: 'higher',
    pick: (row: WaterUse['facts'][number]['row']) => row.recovery.estimate,
  },
  {
    id: 'drain-per-year',
    title: 'Drain in a year',
    unit: 'L/year',
    direction: 'lower',
    pick: (row: WaterUse['facts'][number]['row']) => row.drain_L_per_year.estimate,
  },
] as const;

function flowMeasures(bench: Bench, flows: readonly FlowFact[]): Measure[] {
  return bench.tables.devices.flatMap(({ values: { device } }) => {
    const own = flows.filter(({ flow }) => flow.device === device);
    const variants = own.length > 0 ? own.map(({ flow }) => flow.variant) : [STANDARD];
    return variants.map((variant): Measure => {
      const fact = own.find(({ flow }) => flow.variant === variant);
      const range = fact?.uncertainty?.range ?? null;
      return {
        row: {
          measure: 'pours.flow',
          title: 'Flow of clean water',
          unit: 'L/min',
          direction: 'higher',
          device,
          variant,
          ...point(fact?.flow.flowLPerMin ?? null),
          low: range === null ? null : Math.max(0, range.low),
          high: range?.high ?? null,
        },
        reduction: null,
      };
    });
  });
}

function point(estimate: number | null): Pick<MeasureRow, 'outcome' | 'low' | 'estimate' | 'high'> {
  return { outcome: estimate === null ? 'untested' : 'measured', low: null, estimate, high: null };
}
