import { chiSquareQuantile } from './chi-square.ts';
import { requireCount, requireInnerProbability } from './refuse-input.ts';

/**
 * Exact two-sided limits of the mean of a Poisson count.
 *
 * @param count what was counted: a whole number, zero or more
 * @param confidence two-sided level, 0.95 unless given
 * @returns low 0 for a count of zero; the limits share the unit of the count
 * @throws {BenchError} statistics-input outside these ranges
 * Source: F. Garwood (1936), Fiducial limits for the Poisson distribution, Biometrika 28, 437-442,
 * in the chi-square form.
 * Checked by: tests/outside-checks/statistics/r-distributions/
 * @example poissonLimits(0) // { low: 0, high: 3.6888794541139363 }
 */
export function poissonLimits(count: number, confidence = 0.95): { low: number; high: number } {
  requireCount('the count', count, 0);
  requireInnerProbability('the confidence', confidence);
  const miss = (1 - confidence) / 2;
  return {
    low: count === 0 ? 0 : chiSquareQuantile(miss, 2 * count) / 2,
    high: chiSquareQuantile(1 - miss, 2 * count + 2) / 2,
  };
}
