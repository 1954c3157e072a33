import { findRoot } from './find-root.ts';
import { incompleteBeta } from './incomplete-beta.ts';
import {
  refuse,
  requireCount,
  requireInnerProbability,
  requireProbability,
} from './refuse-input.ts';

/**
 * Probability of at least `successes` successes in `trials` independent trials.
 *
 * @param trials a whole number, one or more
 * @param successes a whole number from 0 to trials; 0 gives 1
 * @param chance probability of a success in one trial
 * @throws {BenchError} statistics-input outside these ranges
 * Accuracy: relative error about 1e-13.
 * Source: incomplete beta form, Abramowitz & Stegun (1964), Handbook of Mathematical Functions,
 * 26.5.24.
 * Checked by: tests/outside-checks/statistics/sensory.test.ts
 * @example binomialUpperTail({ trials: 4, successes: 3, chance: 0.5 }) // 0.3125
 */
export function binomialUpperTail(count: BinomialCount): number {
  requireBinomial(count);
  const { trials, successes, chance } = count;
  if (successes === 0) return 1;
  return incompleteBeta(successes, trials - successes + 1, chance);
}

/**
 * Probability of at most `successes` successes in `trials` independent trials.
 *
 * @example binomialLowerTail({ trials: 4, successes: 1, chance: 0.5 }) // 0.3125
 */
export function binomialLowerTail(count: BinomialCount): number {
  requireBinomial(count);
  const { trials, successes, chance } = count;
  if (successes === trials) return 1;
  return incompleteBeta(trials - successes, successes + 1, 1 - chance, chance);
}

/** Successes among independent trials that all succeed with the same chance. */
export interface BinomialCount {
  readonly trials: number;
  readonly successes: number;
  readonly chance: number;
}

/**
 * Exact limits of the probability of a success: each limit holds with the stated confidence on its
 * own, so the pair taken together holds with twice the remainder taken off.
 *
 * @param trials a whole number, one or more
 * @param successes a whole number from 0 to trials; 0 gives low 0, all give high 1
 * @param oneSidedConfidence for example 0.95 for each limit, which makes a 90 % two-sided interval
 * @throws {BenchError} statistics-input outside these ranges
 * Source: C. J. Clopper & E. S. Pearson (1934), The use of confidence or fiducial limits illustrated
 * in the case of the binomial, Biometrika 26, 404-413.
 * Checked by: tests/outside-checks/statistics/sensory.test.ts
 * @example binomialLimits(6, 6, 0.95) // { low: 0.6069622310029172, high: 1 }
 */
export function binomialLimits(
  trials: number,
  successes: number,
  oneSidedConfidence: number,
): { low: number; high: number } {
  requireBinomial({ trials, successes, chance: 0.5 });
  requireInnerProbability('the confidence', oneSidedConfidence);
  const miss = 1 - oneSidedConfidence;
  return {
    low: successes === 0 ? 0 : betaQuantile(successes, trials - successes + 1, miss),
    high: successes === trials ? 1 : 1 - betaQuantile(trials - successes, successes + 1, miss),
  };
}

/** Value below which a beta variable lies with a probability between 0 and 1. */
function betaQuantile(a: number, b: number, probability: number): number {
  return findRoot((x) => Math.log(incompleteBeta(a, b, x) / probability), 0, 1);
}

function requireBinomial({ trials, successes, chance }: BinomialCount): void {
  requireCount('the number of trials', trials, 1);
  requireCount('the number of successes', successes, 0);
  if (successes > trials) {
    refuse(
      `${successes} successes in ${trials} trials`,
      'give at most as many successes as trials',
    );
  }
  requireProbability('the chance', chance);
}
