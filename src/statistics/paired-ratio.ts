import { type FiellerInterval, fieller } from './fieller.ts';
import { arithmeticMean, sampleCovariance, sampleSd } from './mean-and-sd.ts';
import { requireInnerProbability, requireNumbers, requireSameLength } from './refuse-input.ts';
import { studentTQuantile } from './student-t.ts';

/**
 * Ratio of the means of numbers taken in pairs, with Fieller's interval from the scatter of the
 * pairs: what the two sides share cancels through their covariance.
 *
 * @param numerators at least two finite numbers
 * @param denominators as many, in the same order
 * @param confidence two-sided level, 0.95 unless given
 * @returns as `fieller`: not cut, null ends where the denominator is not told apart from zero
 * @throws {BenchError} statistics-input for lists that are too short, differ in length or hold a
 * number that is not finite, or a mean denominator of zero
 * Source: E. C. Fieller (1954), Journal of the Royal Statistical Society B 16, 175-185, with the
 * Student t factor of n - 1 degrees of freedom.
 * Checked by: tests/outside-checks/statistics/paired.test.ts
 * @example pairedRatio([3, 2.6, 3.9], [150, 148, 155]).ratio // 0.02097
 */
export function pairedRatio(
  numerators: ArrayLike<number>,
  denominators: ArrayLike<number>,
  confidence = 0.95,
): FiellerInterval {
  requireInnerProbability('the confidence', confidence);
  requireSameLength('numerators and denominators', numerators, denominators);
  requireNumbers('the numerators', numerators, 2);
  requireNumbers('the denominators', denominators, 2);
  const n = numerators.length;
  return fieller({
    numerator: arithmeticMean(numerators),
    denominator: arithmeticMean(denominators),
    uNumerator: sampleSd(numerators) / Math.sqrt(n),
    uDenominator: sampleSd(denominators) / Math.sqrt(n),
    covariance: sampleCovariance(numerators, denominators) / n,
    multiplier: studentTQuantile((1 + confidence) / 2, n - 1),
  });
}
