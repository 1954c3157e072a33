import {
  breakEvenRange,
  breakEvens as breakEvensOf,
  type DrainCurve,
  hasCurve,
  LARGEST_POUR_L,
  largestPourL,
} from '../analyse/index.ts';
import type { Bench, BreakEvenRow } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { breakEvenView } from '../report/views/index.ts';
import { benchOutcome, filterSettings } from './bench-outcome.ts';
import { type InputsOf, keptCurves, linesOf } from './kept-curves.ts';
import { rangeSettings, type WaterUseOptions, waterUseSettings } from './water-use-options.ts';

/** Pour sizes at which two devices drain the same: rows of `break-even/1`. */
export function breakEvens(bench: Bench, options: WaterUseOptions = {}): Outcome {
  const { curves, findings, inputsOf } = keptCurves(bench, options);
  const rows = breakEvenRows(bench, curves, inputsOf);
  return benchOutcome(bench, {
    schema: 'break-even/1',
    settings: {
      ...waterUseSettings(bench, options),
      ...rangeSettings(bench, options),
      break_even:
        '(fixed drain A - fixed drain B) / (ratio B - ratio A); with a tank where the curves cross, ' +
        'up to what it holds',
      range: 'pour sizes at which the draws of the difference do not tell the two apart, to 100 L',
      ...filterSettings(options),
    },
    rows,
    findings,
    views: [breakEvenView(rows)],
  });
}

/** All pairs of different devices whose curves are known; a row for each size of a pair. */
function breakEvenRows(
  bench: Bench,
  curves: readonly DrainCurve[],
  inputsOf: InputsOf,
): BreakEvenRow[] {
  const known = curves
    .filter(hasCurve)
    .map((curve) => ({ curve, lines: linesOf(curve, inputsOf) }));
  return known.flatMap(({ curve: a, lines: linesA }, index) =>
    known.slice(index + 1).flatMap(({ curve: b, lines: linesB }): BreakEvenRow[] => {
      const pair = {
        device_a: a.drain.device.values.device,
        device_b: b.drain.device.values.device,
        variant_a: a.drain.variant,
        variant_b: b.drain.variant,
      };
      if (pair.device_a === pair.device_b) return [];
      const sizes = breakEvensOf(a, b);
      if (sizes.length === 0) return [{ ...pair, pour_mL: null, low_mL: null, high_mL: null }];
      const largestL = Math.min(LARGEST_POUR_L, largestPourL(a), largestPourL(b));
      return sizes.map((pourL) => {
        const range =
          linesA === null || linesB === null
            ? null
            : breakEvenRange(linesA, linesB, pourL, bench.settings.confidence, largestL);
        return {
          ...pair,
          pour_mL: pourL * 1000,
          low_mL: range === null ? null : range.lowL * 1000,
          high_mL: range === null || range.highL === null ? null : range.highL * 1000,
        };
      });
    }),
  );
}
