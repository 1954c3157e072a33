import type { Bench, Interval } from '../../model/index.ts';
import { studentTQuantile } from '../../statistics/index.ts';
import type { Side } from '../reduction-side.ts';
import { lowerLimit, upperLimit } from '../uncertainty/index.ts';

/**
 * The limits between which the true value behind a side lies: its interval, widened by its
 * uncertainty.
 *
 * Two sides are then taken apart by interval arithmetic. What they share of their errors is not
 * taken off, so that the result is wider than it need be, never narrower.
 * @param confidence two-sided, such as 0.95
 */
export function sideLimits(side: Side, confidence: number): Interval {
  const { uncertainty, readings, interval } = side;
  const multiplier = studentTQuantile((1 + confidence) / 2, uncertainty.degreesOfFreedom);
  return {
    low: Math.min(interval.low, lowerLimit(uncertainty, readings.low, multiplier)),
    high: Math.max(interval.high, upperLimit(uncertainty, readings.high, multiplier)),
  };
}

/** True where the scatter of either side is only assumed. */
export function restsOnAssumed(...sides: readonly Side[]): boolean {
  return sides.some(({ uncertainty }) => uncertainty.from === 'assumed');
}

/** True where two sides come from one lab file, or the bench lets them come from different ones. */
export function isComparable(bench: Bench, a: Side, b: Side): boolean {
  if (bench.settings.cross_lab) return true;
  const { file } = bench.results;
  const files = new Set(a.results.map((index) => file[index]));
  return b.results.every((index) => files.has(file[index]));
}
