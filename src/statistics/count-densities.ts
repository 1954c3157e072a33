import { countDeviance, stirlingError } from './stirling-error.ts';

const TWO_PI = 2 * Math.PI;

/**
 * Binomial probability, with real numbers allowed for the counts:
 * Γ(a+b+1) / (Γ(a+1) Γ(b+1)) p^a q^b.
 *
 * @param a successes, zero or more
 * @param b failures, zero or more
 * @param p probability of a success; q its complement, given apart because 1 - p may round
 * Accuracy: relative error about 1e-14.
 * Source: C. Loader (2000), Fast and accurate computation of binomial probabilities.
 * @example binomialDensity(2, 2, 0.5, 0.5) // 0.375
 */
export function binomialDensity(a: number, b: number, p: number, q: number): number {
  if (p === 0) return a === 0 ? 1 : 0;
  if (q === 0) return b === 0 ? 1 : 0;
  const n = a + b;
  if (a === 0) return p < 0.1 ? Math.exp(n * Math.log1p(-p)) : q ** n;
  if (b === 0) return q < 0.1 ? Math.exp(n * Math.log1p(-q)) : p ** n;
  const exponent =
    stirlingError(n) -
    stirlingError(a) -
    stirlingError(b) -
    countDeviance(a, n * p) -
    countDeviance(b, n * q);
  return Math.exp(exponent) * Math.sqrt(n / (TWO_PI * a * b));
}

/**
 * Poisson probability of a count, with real numbers allowed: m^x exp(-m) / Γ(x+1).
 *
 * @param x zero or more
 * @param m the mean, zero or more
 * Accuracy: relative error about 1e-14.
 * Source: C. Loader (2000), as above.
 * @example poissonDensity(0, 3) // 0.049787068367863944
 */
export function poissonDensity(x: number, m: number): number {
  if (m === 0) return x === 0 ? 1 : 0;
  if (x === 0) return Math.exp(-m);
  return Math.exp(-stirlingError(x) - countDeviance(x, m)) / Math.sqrt(TWO_PI * x);
}
