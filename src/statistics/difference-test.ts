import { normalUpperTail } from './normal-distribution.ts';
import { requireCovariance, requireFinite, requireNotNegative } from './refuse-input.ts';

export interface DifferenceTestInput {
  readonly first: number;
  readonly second: number;
  /** Standard uncertainties, in the unit of the two. */
  readonly uFirst: number;
  readonly uSecond: number;
  /** Covariance of the two; 0 when left out. */
  readonly covariance?: number;
}

/**
 * One-sided test that the first number is larger than the second.
 *
 * @returns z, the difference in standard uncertainties, and the probability of one at least as large
 * if there were no difference; z is infinite where nothing is uncertain and the two differ
 * @throws {BenchError} statistics-input for a number that is not finite, a negative uncertainty, or a
 * covariance larger than the uncertainties allow
 * Edge cases: equal numbers give z 0 and p 0.5, with or without uncertainty.
 * Source: normal test of a difference, JCGM 100:2008 (GUM), equation 13, for its uncertainty.
 * Checked by: src/statistics/difference-test.test.ts
 * @example differenceTest({ first: 14, second: 12, uFirst: 0.98, uSecond: 0.84 }) // z 1.549, p 0.0606
 */
export function differenceTest(input: DifferenceTestInput): { z: number; pValue: number } {
  const { first, second, uFirst, uSecond, covariance = 0 } = input;
  requireFinite('the first number', first);
  requireFinite('the second number', second);
  requireNotNegative('the first uncertainty', uFirst);
  requireNotNegative('the second uncertainty', uSecond);
  requireCovariance(covariance, uFirst, uSecond);
  if (first === second) return { z: 0, pValue: 0.5 };
  const variance = uFirst * uFirst + uSecond * uSecond - 2 * covariance;
  const z = (first - second) / Math.sqrt(Math.max(0, variance));
  return { z, pValue: normalUpperTail(z) };
}
