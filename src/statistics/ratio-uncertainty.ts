import { type FiellerInput, requireRatio } from './fieller.ts';
import { refuse, requirePositive } from './refuse-input.ts';

/**
 * Standard uncertainty of a ratio, to first order.
 *
 * What: for quoting "u" beside a ratio, not for an interval: a symmetric interval on a ratio is too
 * short on one side and can pass zero; use `fieller`.
 * @throws {BenchError} statistics-input as for `fieller`
 * Edge cases: a numerator of zero still gives the share of its own uncertainty.
 * Source: JCGM 100:2008 (GUM), equation 13, for a quotient with correlated inputs.
 * Checked by: tests/outside-checks/statistics/uncertainty.test.ts
 * @example
 * ratioUncertainty({ numerator: 8, denominator: 40, uNumerator: 1, uDenominator: 4, covariance: 3 })
 * // 0.01658
 */
export function ratioUncertainty(input: Omit<FiellerInput, 'multiplier'>): number {
  requireRatio(input);
  const { numerator, denominator, uNumerator, uDenominator, covariance = 0 } = input;
  const ratio = numerator / denominator;
  const variance =
    uNumerator * uNumerator - 2 * ratio * covariance + ratio * ratio * uDenominator * uDenominator;
  return Math.sqrt(Math.max(0, variance)) / Math.abs(denominator);
}

/**
 * Interval of a ratio of two positive numbers whose errors are purely relative.
 *
 * What: exact where numerator and denominator are lognormal; it never reaches zero. Not for a
 * numerator near its limit, where the error is not relative.
 * @returns a low end above zero, the ratio, a high end; not symmetric
 * @throws {BenchError} statistics-input as for `fieller`, and for a numerator or denominator that is
 * not above zero
 * Source: variance of the logarithm of a lognormal variable, ln(1 + cv²), derived.
 * Checked by: tests/outside-checks/statistics/reduction-uncertainty.test.ts
 * @example
 * logRatioInterval({ numerator: 1, denominator: 2, uNumerator: 0, uDenominator: 0, multiplier: 2 })
 * // { ratio: 0.5, low: 0.5, high: 0.5 }
 */
export function logRatioInterval(input: FiellerInput): {
  ratio: number;
  low: number;
  high: number;
} {
  requireRatio(input);
  const { numerator, denominator, uNumerator, uDenominator, covariance = 0, multiplier } = input;
  requirePositive('the numerator', numerator);
  requirePositive('the denominator', denominator);
  requirePositive('the multiplier', multiplier);
  const shared = covariance / (numerator * denominator);
  if (shared <= -1) {
    refuse('the covariance is too negative for relative errors', 'use fieller for such a ratio');
  }
  const variance =
    Math.log1p((uNumerator / numerator) ** 2) +
    Math.log1p((uDenominator / denominator) ** 2) -
    2 * Math.log1p(shared);
  const ratio = numerator / denominator;
  const factor = Math.exp(multiplier * Math.sqrt(Math.max(0, variance)));
  return { ratio, low: ratio / factor, high: ratio * factor };
}
