import { type ReductionFact, statementOptions } from '../analyse/index.ts';
import { type ReductionSummary, summariseReductions } from '../compare/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { reductionViews, replicateViews } from '../report/views/index.ts';
import { benchReductions } from './bench-facts.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { filterLife } from './filter-life.ts';
import { checkFilters, type Filters } from './filters.ts';
import { readBench } from './read-bench.ts';
import { reductionSettings } from './reduction-settings.ts';
import { spikes } from './spikes.ts';
import { logReductions, sums } from './sums.ts';

/**
 * Reductions of every analyte, device by device: rows of `reductions/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 * @example reductions(readBench('samples/first-bench'), { analytes: ['lead'] }).rows
 */
export function reductions(bench: Bench, filters: Filters = {}): Outcome {
  const keep = checkFilters(bench, filters);
  const { facts, findings } = benchReductions(bench);
  const kept = facts.filter(
    ({ row }) => keep.keepsDevice(row.device, row.variant) && keep.keepsAnalyte(row.analyte),
  );
  return benchOutcome(bench, {
    schema: 'reductions/1',
    settings: { ...reductionSettings(bench), ...filterSettings(filters) },
    rows: kept.map((fact) => fact.row),
    findings,
    views: [...reductionViews(kept), ...replicateViews(repeatedEvents(bench, kept))],
  });
}

/** Every device and analyte over its events, natural and spiked feeds apart. */
function repeatedEvents(bench: Bench, facts: readonly ReductionFact[]): ReductionSummary[] {
  const options = statementOptions(bench);
  return (['natural', 'spiked'] as const).flatMap((kind) =>
    summariseReductions(
      facts.filter(({ row }) => row.kind === kind),
      options,
    ),
  );
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  return refusedResult(bench) ?? doneResult(outcomeOf(bench, call.options));
}

/** The reductions, or the form of them that the call asks for. */
function outcomeOf(bench: Bench, options: Call['options']): Outcome {
  if (options.sums) return sums(bench, options);
  if (options.spikes) return spikes(bench, options);
  if (options.filterLife) return filterLife(bench, options);
  return options.log10 ? logReductions(bench, options) : reductions(bench, options);
}
