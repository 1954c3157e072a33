import {
  benchUncertainty,
  inputRows,
  type SpreadFact,
  type SpreadProgress,
  spreadSteps,
  sweepSteps,
  type WaterUse,
} from '../analyse/index.ts';
import { BenchError } from '../findings/index.ts';
import type { Bench, SweepRow } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { inputsView, sweepView } from '../report/views/index.ts';
import { benchSpread, benchWaterUse, knownSpread } from './bench-facts.ts';
import { benchOutcome, filterSettings } from './bench-outcome.ts';
import { checkFilters } from './filters.ts';
import { readSweep } from './sweep-setting.ts';
import { untold } from './told-progress.ts';
import {
  drawCount,
  rangeSettings,
  seedOf,
  type WaterUseOptions,
  waterUseSettings,
} from './water-use-options.ts';

export interface SweepOptions extends WaterUseOptions {
  /** One or two sweeps as written, such as `drain-ratio=0.5..4 x 8`; two give every pair of values. */
  readonly sweeps?: readonly string[];
}

/** More rows than this is a slip of the pen. */
const MOST_ROWS = 100_000;

/**
 * Water use with one or two inputs set to other values, all else as measured: rows of `sweep/1`.
 *
 * @param options `sweeps` in the syntax of `readSweep`
 * @throws {BenchError} filter-unknown, option-unknown, or the problem of a quantity
 * @example
 * sweepWaterUse(bench, { sweeps: ['flush.idle-flush.volume=0.2..1.5 L x 8'] }).rows
 */
export function sweepWaterUse(bench: Bench, options: SweepOptions = {}): Outcome {
  return untold(sweepWork(bench, options));
}

/** The same in steps. */
export function* sweepWork(
  bench: Bench,
  options: SweepOptions,
): Generator<{ readonly done: number }, Outcome> {
  const keep = checkFilters(bench, options);
  const texts = options.sweeps ?? [];
  const sweeps = texts.map((text) => readSweep(bench, text));
  if (sweeps.length === 0 || sweeps.length > 2 || sweeps[0]?.name === sweeps[1]?.name) {
    throw new BenchError(
      'option-unknown',
      `${sweeps.length} sweeps are asked for${sweeps.length === 2 ? ' of one input' : ''}`,
      'give --sweep once or twice, for two different inputs',
    );
  }
  const use = benchWaterUse(bench, seedOf(bench, options));
  const drains = use.drains.filter((drain) =>
    keep.keepsDevice(drain.device.values.device, drain.variant),
  );
  const scenarios = use.scenarios.filter(({ name }) => keep.keepsScenario(name));
  const points = sweeps.reduce((product, { values }) => product * values.length, 1);
  if (points * drains.length * scenarios.length > MOST_ROWS) {
    throw new BenchError(
      'option-unknown',
      `the sweep would give more than ${MOST_ROWS} rows`,
      'give fewer values, or choose with --device and --scenario',
    );
  }
  const rows: SweepRow[] = yield* sweepSteps({ sweeps, drains, scenarios });
  return benchOutcome(bench, {
    schema: 'sweep/1',
    settings: {
      ...waterUseSettings(bench, options),
      sweep: sweeps.map(({ name, values, unit }) => ({ input: name, values, unit })),
      ...filterSettings(options),
    },
    rows,
    findings: use.findings,
    views: [sweepView(rows)],
  });
}

/**
 * The inputs behind the water use of every device, their standard uncertainties, and which of them
 * the range of the total drain ratio owes most to: rows of `water-inputs/1`.
 */
export function waterInputs(bench: Bench, options: WaterUseOptions = {}): Outcome {
  return untold(inputsWork(bench, options));
}

/** The same in steps. */
export function* inputsWork(
  bench: Bench,
  options: WaterUseOptions,
): Generator<SpreadProgress, Outcome> {
  const keep = checkFilters(bench, options);
  const use = benchWaterUse(bench, seedOf(bench, options));
  const facts = (yield* keptSpread(bench, use, options)).filter(
    ({ row, drain }) =>
      drain.device.values.drain_line === 'yes' &&
      keep.keepsDevice(row.device, row.variant) &&
      keep.keepsScenario(row.scenario),
  );
  const uncertainty = benchUncertainty(bench, use.drains);
  const rows = facts.flatMap((fact) =>
    fact.drain.model === null ? [] : inputRows(fact, uncertainty),
  );
  return benchOutcome(bench, {
    schema: 'water-inputs/1',
    settings: {
      ...waterUseSettings(bench, options),
      ...rangeSettings(bench, options),
      run_scatter: uncertainty.runs.degreesOfFreedom === 0 ? null : uncertainty.runs.relativeSd,
      run_scatter_degrees_of_freedom: uncertainty.runs.degreesOfFreedom,
      share: 'squared correlation with the total drain ratio over the draws',
      ...filterSettings(options),
    },
    rows,
    findings: [...use.findings, ...uncertainty.findings],
    views: [inputsView(rows)],
  });
}

/** Ranges of what the filters keep; of the rest too where they are known anyway. */
export function* keptSpread(
  bench: Bench,
  use: WaterUse,
  options: WaterUseOptions,
): Generator<SpreadProgress, readonly SpreadFact[]> {
  const keep = checkFilters(bench, options);
  const seed = seedOf(bench, options);
  const draws = drawCount(bench, options);
  const wanted = [options.devices, options.variants, options.scenarios];
  const isWhole = wanted.every((names) => (names ?? []).length === 0);
  if (isWhole || knownSpread(bench, seed, draws) !== null) {
    return yield* benchSpread(bench, seed, draws);
  }
  return yield* spreadSteps(bench, use, {
    seed,
    draws,
    keeps: ({ row }) =>
      keep.keepsDevice(row.device, row.variant) && keep.keepsScenario(row.scenario),
  });
}
