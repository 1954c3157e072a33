import { refuse, requireNotNegative } from './refuse-input.ts';

/** A part of a combined uncertainty: its contribution and how well that is known. */
export interface UncertaintyPart {
  /** Contribution to the combined standard uncertainty, sensitivity included; zero or more. */
  readonly u: number;
  /** Above 0; Infinity for a part taken as known. */
  readonly degreesOfFreedom: number;
}

/**
 * Effective degrees of freedom of a sum of independent uncertain parts.
 *
 * @param parts at least one
 * @returns not truncated; Infinity where no part that matters is uncertain
 * @throws {BenchError} statistics-input for no part, a negative u, or degrees of freedom not above 0
 * Source: JCGM 100:2008 (GUM), equation G.2b; which cuts to the next lower integer, this does not.
 * Checked by: tests/outside-checks/statistics/uncertainty.test.ts
 * @example welchSatterthwaite([{ u: 0.57, degreesOfFreedom: 9 }, { u: 0.25, degreesOfFreedom: Infinity }])
 * // 12.796
 */
export function welchSatterthwaite(parts: readonly UncertaintyPart[]): number {
  if (parts.length === 0) refuse('there is no part', 'give at least one part');
  let largest = 0;
  for (const { u, degreesOfFreedom } of parts) {
    requireNotNegative('an uncertainty', u);
    if (!(degreesOfFreedom > 0)) {
      refuse(`degrees of freedom are ${degreesOfFreedom}`, 'give a number above zero');
    }
    largest = Math.max(largest, u);
  }
  if (largest === 0) return Infinity;
  // Taken relative to the largest part, so that fourth powers cannot underflow.
  let squares = 0;
  let fourths = 0;
  for (const { u, degreesOfFreedom } of parts) {
    const square = (u / largest) ** 2;
    squares += square;
    fourths += (square * square) / degreesOfFreedom;
  }
  return (squares * squares) / fourths;
}
