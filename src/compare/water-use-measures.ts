import { type DeviceDrain, ranged, type SpreadFact } from '../analyse/index.ts';
import type { Spread, WaterUseRow } from '../model/index.ts';
import { type Measure, plainMeasure, rangedFigure } from './measure.ts';

const SCENARIO_MEASURES = [
  {
    id: 'total-drain-ratio',
    title: 'Total drain per clean volume',
    unit: 'L/L',
    direction: 'lower',
    pick: (row: WaterUseRow) => row.total_drain_ratio,
  },
  {
    id: 'recovery',
    title: 'Recovery',
    unit: 'fraction',
    direction: 'higher',
    pick: (row: WaterUseRow) => row.recovery,
  },
  {
    id: 'drain-per-year',
    title: 'Drain in a year',
    unit: 'L/year',
    direction: 'lower',
    pick: (row: WaterUseRow) => row.drain_L_per_year,
  },
] as const;

/** Drain while producing, then each figure of each scenario, with their ranges. */
export function waterUseMeasures(
  drains: readonly DeviceDrain[],
  uses: readonly SpreadFact[],
  confidence: number,
): Measure[] {
  const ratio = drains.map((drain) =>
    plainMeasure({
      measure: 'water-use.drain-ratio',
      title: 'Drain per clean volume while producing',
      unit: 'L/L',
      direction: 'lower',
      device: drain.device.values.device,
      variant: drain.variant,
      ...rangedFigure(ratioOf(drain, uses, confidence)),
    }),
  );
  const scenarios = [...new Set(uses.map(({ row }) => row.scenario))];
  const perScenario = scenarios.flatMap((scenario) =>
    SCENARIO_MEASURES.flatMap(({ id, title, unit, direction, pick }) =>
      uses
        .filter(({ row }) => row.scenario === scenario)
        .map(({ row }) =>
          plainMeasure({
            measure: `water-use.${id}.${scenario}`,
            title: `${title}, ${scenario}`,
            unit,
            direction,
            device: row.device,
            variant: row.variant,
            ...rangedFigure(pick(row)),
          }),
        ),
    ),
  );
  return [...ratio, ...perScenario];
}

/** The draws of the figures of a device are the same in every scenario. */
function ratioOf(drain: DeviceDrain, uses: readonly SpreadFact[], confidence: number): Spread {
  const estimate = drain.model?.drainRatio ?? null;
  const drawn = uses.find((use) => use.drain === drain && use.spread !== null)?.spread;
  return ranged(estimate, drawn?.inputs.ratio ?? new Float64Array(0), confidence);
}
