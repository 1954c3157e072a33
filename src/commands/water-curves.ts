import {
  CURVE_POURS_ML,
  curveRatio,
  type DrainCurve,
  dailyDrain,
  hasCurve,
  lineDrainL,
  ranged,
  regionSteps,
} from '../analyse/index.ts';
import { BenchError } from '../findings/index.ts';
import type { Bench, WaterCurveRow } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { curveView, regionsView } from '../report/views/index.ts';
import { benchOutcome, filterSettings } from './bench-outcome.ts';
import { type InputsOf, keptCurves, linesOf } from './kept-curves.ts';
import { quantitySetting } from './quantity-setting.ts';
import { untold } from './told-progress.ts';
import {
  rangeSettings,
  seedOf,
  type WaterUseOptions,
  waterUseSettings,
} from './water-use-options.ts';

export interface CurveOptions extends WaterUseOptions {
  /** Pour sizes as written, such as `250 ml`; a fixed list where none is given. */
  readonly pours?: readonly string[];
  /** Pours a day as written, whole numbers; none: a pour that stands alone. */
  readonly poursPerDay?: readonly string[];
  /** True: pours a day come at random, else evenly. */
  readonly randomPours?: boolean;
}

/** Sizes and numbers of pours at which regions are looked at when none are asked for. */
const REGION_POURS_ML = [100, 250, 500, 1000, 2000] as const;
const REGION_PER_DAY = [1, 2, 4, 8, 16] as const;
const MOST_PER_DAY = 1000;

/**
 * Total drain ratio and recovery against pour size, and against pours a day: rows of `water-curve/1`.
 *
 * Without pours a day every pour stands alone; with them, so many pours are played every day.
 * @throws {BenchError} filter-unknown, and the problem of a pour size or a number of pours
 */
export function waterCurve(bench: Bench, options: CurveOptions = {}): Outcome {
  return untold(curveWork(bench, options));
}

/** The same in steps. */
export function* curveWork(
  bench: Bench,
  options: CurveOptions,
): Generator<{ readonly done: number }, Outcome> {
  const { curves, findings, inputsOf } = keptCurves(bench, options);
  const sizes = poursML(bench, options.pours, CURVE_POURS_ML);
  const perDay = numbersPerDay(options.poursPerDay, []);
  if (options.randomPours === true && perDay.length === 0) {
    throw new BenchError(
      'option-unknown',
      '--random-pours is asked for without a number of pours',
      'say how many there are on a day with --pours-per-day',
    );
  }
  const rows =
    perDay.length === 0
      ? curveRows(bench, curves, sizes, inputsOf)
      : yield* dailyRows(
          bench,
          curves,
          { sizes, perDay, seed: poursSeed(bench, options) },
          inputsOf,
        );
  return benchOutcome(bench, {
    schema: 'water-curve/1',
    settings: {
      ...waterUseSettings(bench, options),
      ...rangeSettings(bench, options),
      pour_mL: sizes,
      pours_per_day: perDay.length === 0 ? null : perDay,
      curve:
        perDay.length === 0
          ? 'ratio + fixed drain / pour; one pour alone, one idle flush after it'
          : `pours of one size, ${spreadWords(options)}, played`,
      rules_left_out: perDay.length === 0 ? rulesLeftOut(curves) : {},
      ...filterSettings(options),
    },
    rows,
    findings,
    views: [curveView(rows, curves, options.randomPours === true)],
  });
}

/**
 * Which device drains least at which pour size and number of pours a day: rows of
 * `drain-regions/1`. With a filter the least among those kept.
 */
export function drainRegions(bench: Bench, options: CurveOptions = {}): Outcome {
  return untold(regionsWork(bench, options));
}

/** The same in steps. */
export function* regionsWork(
  bench: Bench,
  options: CurveOptions,
): Generator<{ readonly done: number }, Outcome> {
  const { curves, findings, inputsOf } = keptCurves(bench, options);
  const sizes = poursML(bench, options.pours, REGION_POURS_ML);
  const perDay = numbersPerDay(options.poursPerDay, REGION_PER_DAY);
  const { scenario_days: days, confidence } = bench.settings;
  const contenders = curves.flatMap((curve) =>
    hasCurve(curve) ? { drain: curve.drain, inputs: inputsOf(curve.drain) } : [],
  );
  const poursL = sizes.map((size) => size / 1000);
  const seed = poursSeed(bench, options);
  const rows = yield* regionSteps(contenders, { poursL, perDay, days, confidence, seed });
  return benchOutcome(bench, {
    schema: 'drain-regions/1',
    settings: {
      ...waterUseSettings(bench, options),
      ...rangeSettings(bench, options),
      pour_mL: sizes,
      pours_per_day: perDay,
      regions:
        `pours of one size, ${spreadWords(options)}; devices with a drain line, ` +
        'of tanks those that tanks.csv describes and that can give the water; told apart where the ' +
        'draws of the difference are',
      ...filterSettings(options),
    },
    rows,
    findings,
    views: [regionsView(rows, options.randomPours === true)],
  });
}

function curveRows(
  bench: Bench,
  curves: readonly DrainCurve[],
  sizesML: readonly number[],
  inputsOf: InputsOf,
): WaterCurveRow[] {
  return curves.flatMap((curve) => {
    const lines = linesOf(curve, inputsOf);
    return sizesML.map((size) => {
      const pourL = size / 1000;
      const draws =
        lines?.ratio.map((_, draw) => lineDrainL(lines, draw, pourL) / pourL) ??
        new Float64Array(0);
      return curveRow(bench, curve, size, null, { estimate: curveRatio(curve, pourL), draws });
    });
  });
}

function* dailyRows(
  bench: Bench,
  curves: readonly DrainCurve[],
  pours: {
    readonly sizes: readonly number[];
    readonly perDay: readonly number[];
    readonly seed: number | null;
  },
  inputsOf: InputsOf,
): Generator<{ readonly done: number }, WaterCurveRow[]> {
  const days = bench.settings.scenario_days;
  const rows: WaterCurveRow[] = [];
  for (const [at, curve] of curves.entries()) {
    const { drain } = curve;
    for (const [index, size] of pours.sizes.entries()) {
      for (const perDay of pours.perDay) {
        const daily =
          !hasCurve(curve) || drain.model === null
            ? { estimate: null, draws: new Float64Array(0) }
            : dailyDrain(
                drain,
                drain.model,
                { pourL: size / 1000, perDay, days, seed: pours.seed },
                inputsOf(drain),
              );
        rows.push(curveRow(bench, curve, size, perDay, daily));
      }
      yield { done: (at + (index + 1) / pours.sizes.length) / curves.length };
    }
  }
  return rows;
}

function curveRow(
  bench: Bench,
  { drain }: DrainCurve,
  pour_mL: number,
  pours_per_day: number | null,
  { estimate, draws }: { readonly estimate: number | null; readonly draws: Float64Array },
): WaterCurveRow {
  const { low, high } = ranged(estimate, draws, bench.settings.confidence);
  return {
    device: drain.device.values.device,
    variant: drain.variant,
    pour_mL,
    pours_per_day,
    total_drain_ratio: estimate,
    low,
    high,
    recovery: estimate === null ? null : 1 / (1 + estimate),
  };
}

function rulesLeftOut(curves: readonly DrainCurve[]): Record<string, readonly string[]> {
  return Object.fromEntries(
    curves.flatMap(({ drain, isolated }) =>
      isolated === null || isolated.excludedRules.length === 0
        ? []
        : [[`${drain.device.values.device} ${drain.variant}`, isolated.excludedRules]],
    ),
  );
}

function poursML(
  bench: Bench,
  texts: readonly string[] | undefined,
  standard: readonly number[],
): readonly number[] {
  return texts === undefined || texts.length === 0
    ? standard
    : texts.map((text) => quantitySetting(bench, text, 'volume', '--pour') * 1000);
}

/** Null for pours that come evenly. */
function poursSeed(bench: Bench, options: CurveOptions): number | null {
  return options.randomPours === true ? seedOf(bench, options) : null;
}

function spreadWords({ randomPours }: CurveOptions): string {
  return randomPours === true
    ? 'at random from 07:00 to 22:00 every day, forty years'
    : 'spread evenly from 07:00 to 22:00 every day';
}

function numbersPerDay(
  texts: readonly string[] | undefined,
  standard: readonly number[],
): readonly number[] {
  if (texts === undefined || texts.length === 0) return standard;
  return texts.map((text) => {
    const count = Number(text);
    if (!/^\d+$/.test(text) || count < 1 || count > MOST_PER_DAY) {
      throw new BenchError(
        'number-outside',
        `--pours-per-day: "${text}" is not a whole number from 1 to ${MOST_PER_DAY}`,
        'write how many pours there are on each day, such as 8',
      );
    }
    return count;
  });
}
