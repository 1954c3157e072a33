import { findRoot } from './find-root.ts';
import { incompleteGammaLower, incompleteGammaUpper } from './incomplete-gamma.ts';
import { normalQuantile } from './normal-distribution.ts';
import { requirePositive, requireProbability } from './refuse-input.ts';

/**
 * Chi-square probability of a value at or below x.
 *
 * @param x zero or more; Infinity gives 1
 * @param degreesOfFreedom above 0, whole or not
 * @throws {BenchError} statistics-input outside these ranges
 * Source: Abramowitz & Stegun (1964), Handbook of Mathematical Functions, 26.4.19.
 * Checked by: tests/outside-checks/statistics/r-distributions/
 * @example chiSquareCdf(2, 2) // 0.6321205588285577
 */
export function chiSquareCdf(x: number, degreesOfFreedom: number): number {
  return incompleteGammaLower(degreesOfFreedom / 2, x / 2);
}

/**
 * Value below which a chi-square variable lies with probability p.
 *
 * @param probability from 0 to 1; 0 gives 0, 1 gives Infinity
 * @param degreesOfFreedom above 0, whole or not
 * @throws {BenchError} statistics-input outside these ranges
 * Source: root of the distribution function, started from the cube-root approximation of Wilson &
 * Hilferty (1931), Abramowitz & Stegun 26.4.17.
 * Checked by: tests/outside-checks/statistics/quantiles.test.ts
 * @example chiSquareQuantile(0.95, 2) // 5.991464547107982
 */
export function chiSquareQuantile(probability: number, degreesOfFreedom: number): number {
  requireProbability('the probability', probability);
  requirePositive('the degrees of freedom', degreesOfFreedom);
  if (probability === 0) return 0;
  if (probability === 1) return Infinity;
  const shape = degreesOfFreedom / 2;
  // Matched as a logarithm, in whichever tail is smaller, so that both tails keep their digits.
  const miss =
    probability < 0.5
      ? (x: number) => Math.log(incompleteGammaLower(shape, Math.exp(x)) / probability)
      : (x: number) => Math.log((1 - probability) / incompleteGammaUpper(shape, Math.exp(x)));
  let low = logStart(probability, degreesOfFreedom);
  let high = low;
  for (let reach = 0.1; miss(low) > 0 && low > -1500; reach *= 2) low -= reach;
  for (let reach = 0.1; miss(high) < 0; reach *= 2) high += reach;
  return 2 * Math.exp(findRoot(miss, low, high));
}

/** Logarithm of half the approximate quantile; the small-x limit where the cube turns negative. */
function logStart(probability: number, degreesOfFreedom: number): number {
  const spread = 2 / (9 * degreesOfFreedom);
  const cubeRoot = 1 - spread + normalQuantile(probability) * Math.sqrt(spread);
  return cubeRoot > 0.1
    ? Math.log(degreesOfFreedom / 2) + 3 * Math.log(cubeRoot)
    : Math.log(probability) / (degreesOfFreedom / 2);
}
