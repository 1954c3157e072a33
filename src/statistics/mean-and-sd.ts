import { compensatedSum } from './compensated-sum.ts';
import { requireNumbers, requireSameLength } from './refuse-input.ts';

/**
 * Arithmetic mean.
 *
 * @param values at least one finite number
 * @throws {BenchError} statistics-input for an empty list or a number that is not finite
 * Checked by: tests/outside-checks/statistics/numeric-accuracy.test.ts
 * @example arithmeticMean([1, 2, 4]) // 2.3333333333333335
 */
export function arithmeticMean(values: ArrayLike<number>): number {
  requireNumbers('the values', values, 1);
  return compensatedSum(values) / values.length;
}

/**
 * Standard deviation of a sample, with n - 1.
 *
 * @param values at least two finite numbers; all equal gives 0
 * @throws {BenchError} statistics-input for fewer than two numbers or one that is not finite
 * Source: corrected two-pass algorithm, T. F. Chan, G. H. Golub & R. J. LeVeque (1983), Algorithms
 * for computing the sample variance, The American Statistician 37, 242-247, equation 1.7.
 * Checked by: tests/outside-checks/statistics/numeric-accuracy.test.ts
 * @example sampleSd([2, 4, 4, 4, 5, 5, 7, 9]) // 2.138089935299395
 */
export function sampleSd(values: ArrayLike<number>): number {
  requireNumbers('the values', values, 2);
  return Math.sqrt(sumOfProducts(values, values) / (values.length - 1));
}

/**
 * Covariance of two lists taken together row by row, with n - 1.
 *
 * @param first at least two finite numbers
 * @param second as many
 * @throws {BenchError} statistics-input for lists that are too short, hold a number that is not
 * finite, or differ in length
 * @example sampleCovariance([1, 2, 3], [2, 4, 6]) // 2
 */
export function sampleCovariance(first: ArrayLike<number>, second: ArrayLike<number>): number {
  requireNumbers('the first numbers', first, 2);
  requireNumbers('the second numbers', second, 2);
  requireSameLength('the two lists', first, second);
  return sumOfProducts(first, second) / (first.length - 1);
}

/** Sum of the products of the deviations of two lists from their means. */
function sumOfProducts(first: ArrayLike<number>, second: ArrayLike<number>): number {
  const n = first.length;
  const firstMean = compensatedSum(first) / n;
  const secondMean = compensatedSum(second) / n;
  const products = new Float64Array(n);
  let firstRest = 0;
  let secondRest = 0;
  for (let i = 0; i < n; i++) {
    const a = (first[i] as number) - firstMean;
    const b = (second[i] as number) - secondMean;
    products[i] = a * b;
    firstRest += a;
    secondRest += b;
  }
  // The rests would be zero but for the rounding of the means; taking them out restores the digits.
  return compensatedSum(products) - (firstRest * secondRest) / n;
}
