import { computeReductions } from '../analyse/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { reductionViews } from '../report/views/index.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters, type Filters } from './filters.ts';
import { feedWindowS } from './quantity-setting.ts';
import { readBench } from './read-bench.ts';

/**
 * Reductions of every analyte, device by device: rows of `reductions/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 * @example reductions(readBench('samples/first-bench'), { analytes: ['lead'] }).rows
 */
export function reductions(bench: Bench, filters: Filters = {}): Outcome {
  const keep = checkFilters(bench, filters);
  const { facts, findings } = computeReductions(bench, feedWindowS(bench));
  const kept = facts.filter(
    ({ row }) => keep.keepsDevice(row.device, row.variant) && keep.keepsAnalyte(row.analyte),
  );
  return benchOutcome(bench, {
    schema: 'reductions/1',
    settings: { ...reductionSettings(bench), ...filterSettings(filters) },
    rows: kept.map((fact) => fact.row),
    findings,
    views: reductionViews(kept),
  });
}

/** Every setting and method a reduction depends on. */
export function reductionSettings(bench: Bench): Record<string, unknown> {
  const { nondetect_bound, cross_lab, feed, reference_levels } = bench.settings;
  return {
    nondetect_bound,
    cross_lab,
    feed,
    reference_levels: reference_levels ?? [],
    replicates: 'arithmetic mean, bound by bound',
    uncertainty: 'not considered: bounds only',
  };
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  return refusedResult(bench) ?? doneResult(reductions(bench, call.options));
}
