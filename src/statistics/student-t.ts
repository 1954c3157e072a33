import { findRoot } from './find-root.ts';
import { incompleteBeta } from './incomplete-beta.ts';
import { normalCdf, normalQuantile } from './normal-distribution.ts';
import { refuse, requireProbability } from './refuse-input.ts';

// Above this, the first term of the expansion about the normal leaves less than 1e-12.
const NEARLY_NORMAL = 1e7;
// Logarithm of the largest t whose square is a double; only far below one degree of freedom.
const LARGEST = 354;

/**
 * Student t probability of a value at or below t.
 *
 * Accuracy: relative error about 1e-13 in the lower tail.
 * @param degreesOfFreedom above 0, whole or not; Infinity is the normal distribution
 * @throws {BenchError} statistics-input for degrees of freedom that are not above 0
 * Source: incomplete beta form, Abramowitz & Stegun (1964), Handbook of Mathematical Functions,
 * 26.7.1; above ten million degrees of freedom the expansion about the normal, 26.7.8 (memory).
 * Checked by: tests/outside-checks/statistics/quantiles.test.ts
 * @example studentTCdf(1, 1) // 0.75
 */
export function studentTCdf(t: number, degreesOfFreedom: number): number {
  requireDegrees(degreesOfFreedom);
  if (Number.isNaN(t)) return Number.NaN;
  if (degreesOfFreedom > NEARLY_NORMAL) {
    return normalCdf(t - (t * (t * t + 1)) / (4 * degreesOfFreedom));
  }
  return t > 0 ? 1 - tail(t, degreesOfFreedom) : tail(-t, degreesOfFreedom);
}

/**
 * Value below which a Student t variable lies with probability p: the coverage factor for a
 * two-sided level c is studentTQuantile((1 + c) / 2, df).
 *
 * @param probability from 0 to 1; 0 gives -Infinity, 1 gives Infinity
 * @param degreesOfFreedom above 0, whole or not; Infinity gives the normal quantile
 * @throws {BenchError} statistics-input for input outside these ranges
 * Source: root of the distribution function; method as above.
 * Checked by: tests/outside-checks/statistics/quantiles.test.ts
 * @example studentTQuantile(0.975, 6) // 2.4469118511449692
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  requireProbability('the probability', probability);
  requireDegrees(degreesOfFreedom);
  const z = normalQuantile(probability);
  if (!Number.isFinite(z) || z === 0) return z;
  if (degreesOfFreedom > NEARLY_NORMAL) return z + (z * (z * z + 1)) / (4 * degreesOfFreedom);
  const size = Math.exp(solve(probability, degreesOfFreedom, Math.log(Math.abs(z))));
  return z < 0 ? -size : size;
}

/**
 * Logarithm of |t|, bracketed outwards from the normal value, below which |t| never lies. Near the
 * middle the probability between 0 and t is matched, in the tails the tail, each to full digits.
 */
function solve(probability: number, degreesOfFreedom: number, start: number): number {
  const centred = Math.abs(probability - 0.5);
  const target = probability < 0.5 ? probability : 1 - probability;
  const miss =
    centred < 0.25
      ? (x: number) => Math.log(middle(Math.exp(x), degreesOfFreedom) / centred)
      : (x: number) => Math.log(target / tail(Math.exp(x), degreesOfFreedom));
  if (miss(LARGEST) < 0) return Infinity;
  let low = start - 1e-6;
  let reach = 0.5;
  while (miss(low + reach) < 0) {
    low += reach;
    reach *= 2;
  }
  return findRoot(miss, low, low + reach);
}

/** Probability above t, for t of zero or more. */
function tail(t: number, degreesOfFreedom: number): number {
  const square = t * t;
  const sum = degreesOfFreedom + square;
  if (sum === Infinity) return 0;
  return 0.5 * incompleteBeta(degreesOfFreedom / 2, 0.5, degreesOfFreedom / sum, square / sum);
}

/** Probability between 0 and t, for t of zero or more. */
function middle(t: number, degreesOfFreedom: number): number {
  const square = t * t;
  const sum = degreesOfFreedom + square;
  if (sum === Infinity) return 0.5;
  return 0.5 * incompleteBeta(0.5, degreesOfFreedom / 2, square / sum, degreesOfFreedom / sum);
}

function requireDegrees(degreesOfFreedom: number): void {
  if (!(degreesOfFreedom > 0)) {
    refuse(`the degrees of freedom are ${degreesOfFreedom}`, 'give a number above zero');
  }
}
