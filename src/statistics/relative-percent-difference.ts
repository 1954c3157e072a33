import { type CensoredResult, requireResults } from './censored-results.ts';

/**
 * Relative percent difference of two results: their distance in percent of their mean.
 *
 * @param first a number, or an interval; low is zero or more
 * @param second the same
 * @returns percent, from 0 to 200; equal ends for two numbers; null where both can be zero
 * @throws {BenchError} statistics-input for an interval that cannot be used
 * Edge cases: two overlapping intervals can agree, so low is 0; an open interval gives 200 as high.
 * Source: 200 |x1 - x2| / (x1 + x2), USEPA National Functional Guidelines (from memory).
 * Checked by: tests/outside-checks/statistics/duplicates.test.ts
 * @example relativePercentDifference({ low: 10, high: 10 }, { low: 12, high: 12 })?.low // 18.18
 */
export function relativePercentDifference(
  first: CensoredResult,
  second: CensoredResult,
): { low: number; high: number } | null {
  requireResults([first, second]);
  if (first.low === 0 && second.low === 0) return null;
  const [lower, upper] = first.low <= second.low ? [first, second] : [second, first];
  return {
    low: upper.low <= lower.high ? 0 : between(lower.high, upper.low),
    high: Math.max(between(lower.low, upper.high), between(upper.low, lower.high)),
  };
}

/** Grows with the ratio of the two, up to 200 where one of them is zero or open above. */
function between(a: number, b: number): number {
  if (a === Infinity || b === Infinity) return 200;
  return (200 * Math.abs(a - b)) / (a + b);
}
