import {
  refuse,
  requireCovariance,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from './refuse-input.ts';

export interface FiellerInput {
  readonly numerator: number;
  readonly denominator: number;
  /** Standard uncertainties, in the units of the two. */
  readonly uNumerator: number;
  readonly uDenominator: number;
  /** Covariance of the two; 0 when left out. */
  readonly covariance?: number;
  /** Normal or Student t factor of the wanted level, for example 1.96. */
  readonly multiplier: number;
}

export interface FiellerInterval {
  readonly ratio: number;
  readonly low: number | null;
  readonly high: number | null;
  /** Squared relative uncertainty of the denominator times the squared multiplier. */
  readonly g: number;
}

/**
 * Fieller's interval of a ratio of two uncertain numbers.
 *
 * What: all ratios θ for which numerator - θ × denominator does not differ from zero. Exact for
 * normal errors; not symmetric. A low end below zero is returned as it is: where a ratio cannot be
 * negative the caller cuts it.
 * @returns low and high null when g is 1 or more: the denominator is not told apart from zero and no
 * finite interval exists
 * @throws {BenchError} statistics-input for a number that is not finite, a denominator of zero, a
 * negative uncertainty, a multiplier not above zero, or a covariance larger than the uncertainties
 * allow
 * Edge cases: both uncertainties zero gives low = high = ratio.
 * Source: E. C. Fieller (1954), Some problems in interval estimation, Journal of the Royal
 * Statistical Society B 16, 175-185 (formula seen in summaries of the theorem).
 * Checked by: tests/outside-checks/statistics/fieller.test.ts
 * @example
 * fieller({ numerator: 14, denominator: 7, uNumerator: 3, uDenominator: 2, multiplier: 1.812461 })
 * // { ratio: 2, low: 1.0514, high: 4.4143, g: 0.2682 }
 */
export function fieller(input: FiellerInput): FiellerInterval {
  const { numerator, denominator, uNumerator, uDenominator, covariance = 0, multiplier } = input;
  requireRatio(input);
  requirePositive('the multiplier', multiplier);
  const ratio = numerator / denominator;
  const z2 = multiplier * multiplier;
  const relative = uDenominator / denominator;
  const g = z2 * relative * relative;
  if (g >= 1) return { ratio, low: null, high: null, g };

  // Divided through by the squared denominator, then by 1 - g: θ = (middle ± half) / (1 - g).
  const a = ratio;
  const varA = (uNumerator / denominator) ** 2;
  const varB = relative * relative;
  const cov = covariance / denominator / denominator;
  const middle = a - z2 * cov;
  const variance = varA - 2 * a * cov + a * a * varB;
  const lost = z2 * Math.max(0, varA * varB - cov * cov);
  const half = multiplier * Math.sqrt(Math.max(0, variance - lost));
  return { ratio, low: (middle - half) / (1 - g), high: (middle + half) / (1 - g), g };
}

/**
 * Refuses a ratio that cannot be formed or uncertainties that cannot be.
 *
 * @throws {BenchError} statistics-input
 */
export function requireRatio(input: Omit<FiellerInput, 'multiplier'>): void {
  const { numerator, denominator, uNumerator, uDenominator, covariance = 0 } = input;
  requireFinite('the numerator', numerator);
  requireFinite('the denominator', denominator);
  requireNotNegative('the uncertainty of the numerator', uNumerator);
  requireNotNegative('the uncertainty of the denominator', uDenominator);
  if (denominator === 0) refuse('the denominator is zero', 'a ratio needs another number below');
  requireCovariance(covariance, uNumerator, uDenominator);
}
