import { chiSquareQuantile } from './chi-square.ts';
import { requireInnerProbability, requirePositive } from './refuse-input.ts';

/**
 * Factors that turn an estimated standard deviation into the ends of its two-sided interval.
 *
 * @param degreesOfFreedom above 0
 * @param confidence two-sided level, 0.95 unless given
 * @throws {BenchError} statistics-input outside these ranges
 * Source: chi-square distribution of a sample variance, as in 40 CFR 136 appendix B.
 * Checked by: tests/outside-checks/statistics/detection-limit.test.ts
 * @example sdConfidenceFactors(6) // { low: 0.6444, high: 2.2021 }
 */
export function sdConfidenceFactors(
  degreesOfFreedom: number,
  confidence = 0.95,
): { low: number; high: number } {
  requirePositive('the degrees of freedom', degreesOfFreedom);
  requireInnerProbability('the confidence', confidence);
  const miss = (1 - confidence) / 2;
  const factor = (p: number): number =>
    Math.sqrt(degreesOfFreedom / chiSquareQuantile(p, degreesOfFreedom));
  return { low: factor(1 - miss), high: factor(miss) };
}
