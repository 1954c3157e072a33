import { computeFilterLife } from '../analyse/filter-life/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { filterLifeViews } from '../report/views/index.ts';
import { benchReductions } from './bench-facts.ts';
import { benchOutcome, filterSettings } from './bench-outcome.ts';
import { checkFilters, type Filters } from './filters.ts';
import { readClaims } from './read-claims.ts';
import { reductionSettings } from './reduction-settings.ts';

/**
 * Reductions along the volume treated, against claims and reference levels: rows of `filter-life/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function filterLife(bench: Bench, filters: Filters = {}): Outcome {
  const keep = checkFilters(bench, filters);
  const { facts, findings } = benchReductions(bench);
  const read = readClaims(bench);
  const rows = computeFilterLife(bench, facts, read.claims).filter(
    (row) => keep.keepsDevice(row.device, row.variant) && keep.keepsAnalyte(row.analyte),
  );
  return benchOutcome(bench, {
    schema: 'filter-life/1',
    settings: {
      ...reductionSettings(bench),
      targets: 'claims on the device, and reference levels its feed exceeded',
      ...filterSettings(filters),
    },
    rows,
    findings: [...findings, ...read.findings],
    views: filterLifeViews(rows),
  });
}
