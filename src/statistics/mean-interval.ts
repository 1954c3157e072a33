import { arithmeticMean, sampleSd } from './mean-and-sd.ts';
import { requireInnerProbability, requireNumbers } from './refuse-input.ts';
import { studentTQuantile } from './student-t.ts';

export interface MeanInterval {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  /** Standard error of the mean. */
  readonly uMean: number;
  readonly n: number;
}

/**
 * Two-sided Student t interval of a mean. For ratios give their logarithms and turn the ends back:
 * the result is then an interval of the geometric mean.
 *
 * @param values at least two finite numbers
 * @param confidence two-sided level, 0.95 unless given
 * @throws {BenchError} statistics-input outside these ranges
 * Source: W. S. Gosset (1908), The probable error of a mean, Biometrika 6, 1-25.
 * Checked by: tests/outside-checks/statistics/paired.test.ts
 * @example meanInterval([1, 2, 3]) // mean 2, low -0.484, high 4.484
 */
export function meanInterval(values: ArrayLike<number>, confidence = 0.95): MeanInterval {
  requireInnerProbability('the confidence', confidence);
  requireNumbers('the values', values, 2);
  const n = values.length;
  const mean = arithmeticMean(values);
  const uMean = sampleSd(values) / Math.sqrt(n);
  const reach = studentTQuantile((1 + confidence) / 2, n - 1) * uMean;
  return { mean, low: mean - reach, high: mean + reach, uMean, n };
}
