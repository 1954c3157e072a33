import type { Spread } from '../../model/index.ts';
import { sortedQuantile } from '../../statistics/index.ts';

/**
 * An estimate with the quantiles of its draws that leave out half of what the confidence leaves out,
 * on each side. A range holds its estimate.
 *
 * @param values one a draw, none empty
 * @returns low and high null without an estimate, without a draw, or where a draw has no value (a
 * ratio without clean water)
 * @example ranged(2, Float64Array.of(1, 2, 3), 0.5) // { low: 1.5, estimate: 2, high: 2.5 }
 */
export function ranged(estimate: number | null, values: Float64Array, confidence: number): Spread {
  if (estimate === null || values.length === 0 || !values.every(Number.isFinite)) {
    return { low: null, estimate, high: null };
  }
  const ascending = values.slice().sort();
  const out = (1 - confidence) / 2;
  return {
    low: Math.min(estimate, sortedQuantile(ascending, out)),
    estimate,
    high: Math.max(estimate, sortedQuantile(ascending, 1 - out)),
  };
}
