import { type Costs, computeCosts } from '../analyse/costs/index.ts';
import { computeWaterUse } from '../analyse/index.ts';
import type { Bench } from '../model/index.ts';
import { readCostSettings } from '../normalise/index.ts';
import type { Outcome } from '../report/index.ts';
import { costsViews } from '../report/views/costs-view.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters } from './filters.ts';
import { readBench } from './read-bench.ts';
import { seedOf, type WaterUseOptions } from './water-use.ts';

/** The costs of a bench, before any filter: what `costs` prints and charts are drawn from. */
export function benchCosts(bench: Bench, options: WaterUseOptions = {}): Costs {
  const use = computeWaterUse(bench, seedOf(bench, options));
  return computeCosts(bench, use, readCostSettings(bench.settings).value);
}

/**
 * Cost of owning each device in each scenario: rows of `costs/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function costs(bench: Bench, options: WaterUseOptions = {}): Outcome {
  const keep = checkFilters(bench, options);
  const { facts, ranges, findings } = benchCosts(bench, options);
  const kept = facts
    .map(({ row }) => row)
    .filter(
      (row) => keep.keepsDevice(row.device, row.variant) && keep.keepsScenario(row.scenario ?? ''),
    );
  const isWholeBench = (options.scenarios ?? []).length === 0;
  const keptRanges = isWholeBench
    ? ranges.filter((row) => keep.keepsDevice(row.device, row.variant))
    : [];
  const { settings } = bench;
  return benchOutcome(bench, {
    schema: 'costs/1',
    settings: {
      tariffs: settings.tariffs ?? null,
      cost_horizon: settings.cost_horizon,
      discount_rate: settings.discount_rate,
      scenario_days: settings.scenario_days,
      seed: seedOf(bench, options),
      year: '365 days of use; lifetimes in years of 365.2425 days',
      parts:
        'the earlier of time and capacity, capacity against clean water; the first set belongs to ' +
        'the purchase, none is bought at the very end',
      discounting: 'purchases as they fall due, running costs at the end of each year',
      ...filterSettings(options),
    },
    rows: [...kept, ...keptRanges],
    findings,
    views: costsViews(kept, keptRanges),
  });
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const refused = refusedResult(bench);
  if (refused !== null) return refused;
  await call.io.progress('playing the scenarios');
  return doneResult(costs(bench, call.options));
}
