// Two units of the last digit: rounding alone can keep the value moving by one.
const PRECISION = 2 * Number.EPSILON;
const TINY = 1e-300;
const MOST_STEPS = 200_000;

/**
 * Value of b0 + a1/(b1 + a2/(b2 + …)), evaluated from the front until it stands still.
 *
 * @param first b0, not zero
 * @param numerator gives a_k for k = 1, 2, …
 * @param denominator gives b_k for k = 1, 2, …
 * @returns the value; NaN when it has not settled after 200,000 steps
 * Source: modified Lentz method, W. J. Lentz (1976), Applied Optics 15, 668-671, with the small
 * constant of Thompson & Barnett (1986), Journal of Computational Physics 64, 490-509 (from memory).
 * @example continuedFraction(1, () => 1, () => 1) // 1.618033988749895
 */
export function continuedFraction(
  first: number,
  numerator: (k: number) => number,
  denominator: (k: number) => number,
): number {
  let value = first;
  let c = first;
  let d = 0;
  for (let k = 1; k <= MOST_STEPS; k++) {
    const a = numerator(k);
    const b = denominator(k);
    d = b + a * d;
    d = 1 / (d === 0 ? TINY : d);
    c = b + a / c;
    if (c === 0) c = TINY;
    const change = c * d;
    value *= change;
    if (Math.abs(change - 1) <= PRECISION) return value;
  }
  return Number.NaN;
}
