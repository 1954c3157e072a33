import {
  breakEven,
  CURVE_POURS_ML,
  computeWaterUse,
  curveRatio,
  type DrainCurve,
  drainCurves,
} from '../analyse/index.ts';
import { type Bench, type BreakEvenRow, STANDARD, type WaterCurveRow } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { breakEvenView, curveView, waterUseViews } from '../report/views/index.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters, type Filters } from './filters.ts';
import { quantitySetting } from './quantity-setting.ts';
import { readBench } from './read-bench.ts';

export interface WaterUseOptions extends Filters {
  /** Seed of random spreads; the seed of the bench where it is left out. */
  readonly seed?: number | null;
}

export interface CurveOptions extends WaterUseOptions {
  /** Pour sizes as written, such as `250 ml`; a fixed list where none is given. */
  readonly pours?: readonly string[];
}

/**
 * Drain ratios and usage scenarios: rows of `water-use/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function waterUse(bench: Bench, options: WaterUseOptions = {}): Outcome {
  const keep = checkFilters(bench, options);
  const use = computeWaterUse(bench, seedOf(bench, options));
  const kept = use.facts.filter(
    ({ row }) => keep.keepsDevice(row.device, row.variant) && keep.keepsScenario(row.scenario),
  );
  return benchOutcome(bench, {
    schema: 'water-use/1',
    settings: { ...waterUseSettings(bench, options), ...filterSettings(options) },
    rows: kept.map((fact) => fact.row),
    findings: use.findings,
    views: waterUseViews(use, kept),
  });
}

/** Total drain ratio of a pour that stands alone, against its size: rows of `water-curve/1`. */
export function waterCurve(bench: Bench, options: CurveOptions = {}): Outcome {
  const { curves, findings } = keptCurves(bench, options);
  const sizes =
    options.pours === undefined || options.pours.length === 0
      ? [...CURVE_POURS_ML]
      : options.pours.map((text) => quantitySetting(bench, text, 'volume', '--pour') * 1000);
  const rows = curveRows(curves, sizes);
  return benchOutcome(bench, {
    schema: 'water-curve/1',
    settings: {
      ...waterUseSettings(bench, options),
      pour_mL: sizes,
      curve: 'ratio + fixed drain / pour; one pour alone, one idle flush after it',
      rules_left_out: Object.fromEntries(
        curves.flatMap(({ drain, isolated }) =>
          isolated === null || isolated.excludedRules.length === 0
            ? []
            : [[`${drain.device.values.device} ${drain.variant}`, isolated.excludedRules]],
        ),
      ),
      ...filterSettings(options),
    },
    rows,
    findings,
    views: [curveView(rows, curves)],
  });
}

/** Pour sizes at which two devices drain the same: rows of `break-even/1`. */
export function breakEvens(bench: Bench, options: WaterUseOptions = {}): Outcome {
  const { curves, findings } = keptCurves(bench, options);
  const rows = breakEvenRows(curves);
  return benchOutcome(bench, {
    schema: 'break-even/1',
    settings: {
      ...waterUseSettings(bench, options),
      break_even: '(fixed drain A - fixed drain B) / (ratio B - ratio A)',
      ...filterSettings(options),
    },
    rows,
    findings,
    views: [breakEvenView(rows)],
  });
}

export function curveRows(
  curves: readonly DrainCurve[],
  sizesML: readonly number[],
): WaterCurveRow[] {
  return curves.flatMap((curve) =>
    sizesML.map((pour_mL) => ({
      device: curve.drain.device.values.device,
      variant: curve.drain.variant,
      pour_mL,
      total_drain_ratio: curveRatio(curve, pour_mL / 1000),
    })),
  );
}

/** All pairs of different devices whose curves are known. */
export function breakEvenRows(curves: readonly DrainCurve[]): BreakEvenRow[] {
  const known = curves.filter((curve) => curve.isolated !== null);
  return known.flatMap((a, index) =>
    known.slice(index + 1).flatMap((b) => {
      const deviceA = a.drain.device.values.device;
      const deviceB = b.drain.device.values.device;
      if (deviceA === deviceB) return [];
      const pourL = breakEven(a, b);
      return {
        device_a: deviceA,
        device_b: deviceB,
        variant_a: a.drain.variant,
        variant_b: b.drain.variant,
        pour_mL: pourL === null ? null : pourL * 1000,
      };
    }),
  );
}

/** Every setting and method water use depends on. */
export function waterUseSettings(bench: Bench, options: WaterUseOptions): Record<string, unknown> {
  return {
    scenario_days: bench.settings.scenario_days,
    seed: seedOf(bench, options),
    measures: bench.settings.measures ?? null,
    drain_ratio: 'all drain / all clean water of the runs that count; per-start fitted where told',
    flush_volume: 'as stated, else the mean of the measured flushes',
    variants: `${STANDARD}, flush-off and those of variants.csv`,
  };
}

function keptCurves(bench: Bench, options: WaterUseOptions) {
  const keep = checkFilters(bench, options);
  const use = computeWaterUse(bench, seedOf(bench, options));
  const { curves, findings } = drainCurves(use.drains);
  return {
    curves: curves.filter(({ drain }) =>
      keep.keepsDevice(drain.device.values.device, drain.variant),
    ),
    findings: [...use.findings, ...findings],
  };
}

export function seedOf(bench: Bench, options: WaterUseOptions): number {
  return options.seed ?? bench.settings.seed;
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const refused = refusedResult(bench);
  if (refused !== null) return refused;
  await call.io.progress('playing the scenarios');
  const { options } = call;
  if (options.curve) return doneResult(waterCurve(bench, options));
  return doneResult(options.breakEven ? breakEvens(bench, options) : waterUse(bench, options));
}
