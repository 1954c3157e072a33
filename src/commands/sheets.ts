import { computeSheets } from '../analyse/sheets/index.ts';
import type { Bench } from '../model/index.ts';
import { variantNames } from '../normalise/index.ts';
import type { Outcome } from '../report/index.ts';
import { sheetViews } from '../report/views/sheets-view.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters, type Filters } from './filters.ts';
import { readBench } from './read-bench.ts';
import { seedOf } from './water-use-options.ts';

export interface SheetsOptions extends Filters {
  /** Seed of the order; null: the seed of bench.json. */
  readonly seed?: number | null;
}

/**
 * Sheets for the sampling day: rows of `sheets/1`.
 *
 * @param bench a bench without errors; without samples.csv the sample codes are proposed
 * @throws {BenchError} filter-unknown
 * @example sheets(readBench('samples/first-bench'), { seed: 7 }).rows
 */
export function sheets(bench: Bench, options: SheetsOptions = {}): Outcome {
  const keep = checkFilters(bench, options);
  const seed = seedOf(bench, options);
  const states = bench.tables.devices.flatMap(({ values: { device } }) =>
    variantNames(bench.tables, device).map((variant) => ({ device, variant })),
  );
  const rows = computeSheets(bench, states, seed, keep.keepsDevice);
  const { devices = [], variants = [] } = options;
  return benchOutcome(bench, {
    schema: 'sheets/1',
    settings: {
      seed,
      order: 'feed first, then at random within each event',
      ...filterSettings({ devices, variants }),
    },
    rows,
    findings: [],
    views: sheetViews(rows, seed),
  });
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const { devices, variants, seed } = call.options;
  return refusedResult(bench) ?? doneResult(sheets(bench, { devices, variants, seed }));
}
