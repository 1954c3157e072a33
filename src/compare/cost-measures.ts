import type { CostRow } from '../model/index.ts';
import { type Measure, plainMeasure, rangedFigure } from './measure.ts';

const MEASURES = [
  {
    id: 'per-year',
    title: 'Cost of a year',
    unit: (currency: string) => `${currency}/year`,
    pick: (row: CostRow) => row.per_year,
  },
  {
    id: 'per-litre',
    title: 'Cost of a clean litre',
    unit: (currency: string) => `${currency}/L`,
    pick: (row: CostRow) => row.per_litre,
  },
  {
    id: 'over-horizon',
    title: 'Cost over the horizon, parts bought whole',
    unit: (currency: string) => currency,
    pick: (row: CostRow) => row.total_bought,
  },
] as const;

/**
 * Costs of every device in every scenario. A year and a litre count parts by wear, the horizon counts
 * them as bought. Where something is not counted the figure is a lower bound.
 * @param rows rows of single scenarios
 */
export function costMeasures(rows: readonly CostRow[]): Measure[] {
  const scenarios = [...new Set(rows.flatMap(({ scenario }) => scenario ?? []))];
  return scenarios.flatMap((scenario) =>
    MEASURES.flatMap(({ id, title, unit, pick }) =>
      rows
        .filter((row) => row.scenario === scenario)
        .map((row) =>
          plainMeasure({
            measure: `costs.${id}.${scenario}`,
            title: `${title}, ${scenario}`,
            unit: unit(row.currency ?? 'money'),
            direction: 'lower',
            device: row.device,
            variant: row.variant,
            ...rangedFigure(pick(row)),
          }),
        ),
    ),
  );
}
