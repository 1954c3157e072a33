import type { ReductionFact } from '../analyse/index.ts';
import { computeLogReductions, computeSums } from '../analyse/sums/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { logReductionsViews, sumsViews } from '../report/views/index.ts';
import { benchReductions } from './bench-facts.ts';
import { benchOutcome, filterSettings } from './bench-outcome.ts';
import { checkFilters, type Filters } from './filters.ts';
import { reductionSettings } from './reduction-settings.ts';

/**
 * Sums over fixed member lists, and sums of ratios: rows of `sums/1`.
 *
 * A filter by analyte keeps the sums the analyte is, or is a member of.
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function sums(bench: Bench, filters: Filters = {}): Outcome {
  const keep = checkFilters(bench, filters);
  const { facts, findings } = benchReductions(bench);
  const rows = computeSums(bench, facts)
    .map(({ row }) => row)
    .filter((row) => keep.keepsDevice(row.device, row.variant))
    .filter((row) => [row.sum, ...row.members].some((key) => keep.keepsAnalyte(key)));
  return benchOutcome(bench, {
    schema: 'sums/1',
    settings: {
      ...reductionSettings(bench),
      sums: 'intervals added over the same members on both sides; uncertainties added linearly',
      ...filterSettings(filters),
    },
    rows,
    findings,
    views: sumsViews(rows),
  });
}

/**
 * log10 reductions of organisms with the statistics of counting: rows of `log-reductions/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function logReductions(bench: Bench, filters: Filters = {}): Outcome {
  const keep = checkFilters(bench, filters);
  const { facts, findings } = benchReductions(bench);
  const isKept = ({ row }: ReductionFact): boolean =>
    keep.keepsDevice(row.device, row.variant) && keep.keepsAnalyte(row.analyte);
  const rows = computeLogReductions(bench, facts.filter(isKept));
  return benchOutcome(bench, {
    schema: 'log-reductions/1',
    settings: {
      ...reductionSettings(bench),
      counts: 'Poisson limits where the reporting limit is one organism, else the uncertainty',
      ...filterSettings(filters),
    },
    rows,
    findings,
    views: logReductionsViews(rows),
  });
}
