import { continuedFraction } from './continued-fraction.ts';
import { binomialDensity } from './count-densities.ts';
import { requirePositive, requireProbability } from './refuse-input.ts';

/**
 * Regularised incomplete beta function: the probability that a beta variable with shapes a and b
 * lies at or below x.
 *
 * Accuracy: relative error about 1e-13 in the lower tail; swap the shapes for the upper tail.
 * @param x from 0 to 1
 * @param complement 1 - x; give it where it is known better than that difference
 * @throws {BenchError} statistics-input for shapes that are not above 0
 * Source: continued fraction, NIST Digital Library of Mathematical Functions, 8.17.22; mirrored by
 * 8.17.4 to the side where it converges fast.
 * Checked by: tests/outside-checks/statistics/r-distributions/
 * @example incompleteBeta(2, 3, 0.5) // 0.6875
 */
export function incompleteBeta(a: number, b: number, x: number, complement = 1 - x): number {
  requirePositive('the first shape', a);
  requirePositive('the second shape', b);
  requireProbability('the argument', x);
  if (x === 0) return 0;
  if (complement === 0) return 1;
  return x <= (a + 1) / (a + b + 2)
    ? betaFraction(a, b, x, complement)
    : 1 - betaFraction(b, a, complement, x);
}

function betaFraction(a: number, b: number, x: number, y: number): number {
  // The factor before the fraction, x^a y^b / (a B(a, b)), is a binomial probability in disguise.
  const factor = (binomialDensity(a, b, x, y) * b) / (a + b);
  if (factor === 0) return 0;
  const numerator = (k: number): number => {
    const m = Math.floor(k / 2);
    const scale = ((a + k - 1) * (a + k)) / x;
    return k % 2 === 0 ? (m * (b - m)) / scale : (-(a + m) * (a + b + m)) / scale;
  };
  return factor / continuedFraction(1, numerator, () => 1);
}
