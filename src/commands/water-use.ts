import { benchUncertainty, type SpreadProgress } from '../analyse/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { waterUseViews } from '../report/views/index.ts';
import { tankViews } from '../report/views/tank-view.ts';
import { yardsticksViews } from '../report/views/yardsticks-view.ts';
import { benchWaterUse } from './bench-facts.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { breakEvens } from './break-evens.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters } from './filters.ts';
import { readBench } from './read-bench.ts';
import { toldProgress, untold } from './told-progress.ts';
import { curveWork, regionsWork } from './water-curves.ts';
import { inputsWork, keptSpread, sweepWork } from './water-sweeps.ts';
import {
  rangeSettings,
  seedOf,
  type WaterUseOptions,
  waterUseSettings,
} from './water-use-options.ts';

export { breakEvens } from './break-evens.ts';
export { type CurveOptions, drainRegions, waterCurve } from './water-curves.ts';
export { type SweepOptions, sweepWaterUse, waterInputs } from './water-sweeps.ts';
export { drawCount, seedOf, type WaterUseOptions, waterUseSettings } from './water-use-options.ts';

/**
 * Drain ratios and usage scenarios with their ranges: rows of `water-use/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function waterUse(bench: Bench, options: WaterUseOptions = {}): Outcome {
  return untold(useWork(bench, options));
}

function* useWork(bench: Bench, options: WaterUseOptions): Generator<SpreadProgress, Outcome> {
  const keep = checkFilters(bench, options);
  const use = benchWaterUse(bench, seedOf(bench, options));
  const facts = yield* keptSpread(bench, use, options);
  const kept = facts.filter(
    ({ row }) => keep.keepsDevice(row.device, row.variant) && keep.keepsScenario(row.scenario),
  );
  const rows = kept.map((fact) => fact.row);
  return benchOutcome(bench, {
    schema: 'water-use/1',
    settings: {
      ...waterUseSettings(bench, options),
      ...rangeSettings(bench, options),
      ...filterSettings(options),
    },
    rows,
    findings: [...use.findings, ...benchUncertainty(bench, use.drains).findings],
    views: [...waterUseViews(use, kept), ...tankViews(rows), ...yardsticksViews(rows)],
  });
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const refused = refusedResult(bench);
  if (refused !== null) return refused;
  const { options, io } = call;
  await io.progress('playing the scenarios');
  if (options.regions) {
    return doneResult(await toldProgress(io, 'playing pours', regionsWork(bench, options)));
  }
  if (options.curve) {
    return doneResult(await toldProgress(io, 'playing pours', curveWork(bench, options)));
  }
  if (options.breakEven) return doneResult(breakEvens(bench, options));
  if (options.sweeps.length > 0) {
    return doneResult(await toldProgress(io, 'sweeping', sweepWork(bench, options)));
  }
  const work = options.inputs ? inputsWork(bench, options) : useWork(bench, options);
  return doneResult(await toldProgress(io, 'drawing', work));
}
