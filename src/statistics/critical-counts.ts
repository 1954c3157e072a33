import { binomialLowerTail, binomialUpperTail } from './binomial-tails.ts';
import { requireCount, requireInnerProbability, requireProbability } from './refuse-input.ts';

// A tail that equals the level exactly counts as reaching it, in spite of rounding.
const EQUAL = 1 + 1e-12;

/**
 * Smallest number of successes that is significantly more than chance: the smallest count above
 * trials × chance whose upper tail is at most the level. For a two-sided test give half the level.
 *
 * @param trials a whole number, one or more
 * @param chance probability of a success by chance
 * @param level significance level, above 0 and below 1
 * @returns the count, or null where even all successes would not be significant
 * @throws {BenchError} statistics-input outside these ranges
 * Source: definition of the printed tables of minimum correct responses, for example ASTM E1885-04.
 * Checked by: tests/outside-checks/statistics/sensory.test.ts
 * @example smallestSignificantCount({ trials: 25, chance: 1 / 3, level: 0.05 }) // 13
 */
export function smallestSignificantCount(test: {
  readonly trials: number;
  readonly chance: number;
  readonly level: number;
}): number | null {
  const { trials, chance, level } = test;
  requireCount('the number of trials', trials, 1);
  requireProbability('the chance', chance);
  requireInnerProbability('the level', level);
  for (let k = Math.floor(trials * chance) + 1; k <= trials; k++) {
    if (binomialUpperTail({ trials, successes: k, chance }) <= level * EQUAL) return k;
  }
  return null;
}

/**
 * Largest number of successes that still shows similarity: the largest count whose lower tail is at
 * most the level if the stated share of people told the samples apart.
 *
 * @param distinguishers the share one must be able to rule out, from 0 to 1
 * @returns the count, or null where not even zero successes would show it
 * @throws {BenchError} statistics-input outside these ranges
 * Source: guessing model, chance + distinguishers × (1 - chance), as in the tests for similarity of
 * ISO 4120 and ASTM E1885 (from memory).
 * Checked by: tests/outside-checks/statistics/sensory.test.ts
 * @example largestSimilarCount({ trials: 100, chance: 0.5, distinguishers: 1 / 3, level: 0.05 }) // 58
 */
export function largestSimilarCount(test: {
  readonly trials: number;
  readonly chance: number;
  readonly distinguishers: number;
  readonly level: number;
}): number | null {
  const { trials, chance, distinguishers, level } = test;
  requireCount('the number of trials', trials, 1);
  requireProbability('the chance', chance);
  requireProbability('the share of distinguishers', distinguishers);
  requireInnerProbability('the level', level);
  const correct = chance + distinguishers * (1 - chance);
  let largest: number | null = null;
  for (let k = 0; k <= trials; k++) {
    if (binomialLowerTail({ trials, successes: k, chance: correct }) > level * EQUAL) break;
    largest = k;
  }
  return largest;
}
