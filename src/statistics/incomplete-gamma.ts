import { continuedFraction } from './continued-fraction.ts';
import { poissonDensity } from './count-densities.ts';
import { refuse, requirePositive } from './refuse-input.ts';

/**
 * Regularised lower incomplete gamma function: the probability that a gamma variable with the given
 * shape lies at or below x.
 *
 * Accuracy: relative error about 1e-13 in the lower tail.
 * @param x zero or more; Infinity gives 1
 * @throws {BenchError} statistics-input for a shape that is not above 0 or a negative x
 * Source: NIST Digital Library of Mathematical Functions, series 8.7.1 below x = shape + 1,
 * continued fraction 8.9.2 above.
 * Checked by: tests/outside-checks/statistics/r-distributions/
 * @example incompleteGammaLower(1, 2) // 0.8646647167633873
 */
export function incompleteGammaLower(shape: number, x: number): number {
  return endpoint(shape, x) ?? (x < shape + 1 ? bySeries(shape, x) : 1 - byFraction(shape, x));
}

/**
 * Regularised upper incomplete gamma function: the probability above x, as accurate in the upper
 * tail as `incompleteGammaLower` is in the lower.
 *
 * @example incompleteGammaUpper(1, 2) // 0.1353352832366127
 */
export function incompleteGammaUpper(shape: number, x: number): number {
  const lower = endpoint(shape, x);
  if (lower !== null) return 1 - lower;
  return x < shape + 1 ? 1 - bySeries(shape, x) : byFraction(shape, x);
}

function endpoint(shape: number, x: number): number | null {
  requirePositive('the shape', shape);
  if (!(x >= 0)) refuse(`the argument is ${x}`, 'give a number of zero or more');
  if (x === 0) return 0;
  return x === Infinity ? 1 : null;
}

function bySeries(shape: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let at = shape + 1; ; at += 1) {
    term *= x / at;
    const next = sum + term;
    if (next === sum) break;
    sum = next;
  }
  return sum * poissonDensity(shape, x);
}

function byFraction(shape: number, x: number): number {
  const fraction = continuedFraction(
    x + 1 - shape,
    (k) => k * (shape - k),
    (k) => x + 2 * k + 1 - shape,
  );
  return (shape * poissonDensity(shape, x)) / fraction;
}
