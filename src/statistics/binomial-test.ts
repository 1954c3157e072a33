import { binomialLimits, binomialUpperTail } from './binomial-tails.ts';
import { requireInnerProbability } from './refuse-input.ts';

const LIMIT_CONFIDENCE = 0.95;

export interface BinomialTestInput {
  /** Number of independent trials, one or more. */
  readonly trials: number;
  /** Number of them that were answered right. */
  readonly correct: number;
  /** Probability of a right answer by guessing: 1/3 in a triangle test, 1/2 in a paired test. */
  readonly chance: number;
}

export interface BinomialTest {
  /** Probability of at least this many right answers by guessing alone. */
  readonly pValue: number;
  /** Share that tells the samples apart, with exact limits of 95 % each on its own side. */
  readonly distinguishers: {
    readonly estimate: number;
    readonly low: number;
    readonly high: number;
  };
}

/**
 * Exact one-sided binomial test of more right answers than guessing would give.
 *
 * What: the share of distinguishers is (c - p) / (1 - p) for a share c of right answers and a chance
 * p, cut at 0. Its limits are the exact ones of c, 95 % one-sided each, carried through the same
 * formula: `low` can be quoted alone as "at least, with 95 % confidence", and so can `high`; the two
 * together are a 90 % interval. Several trials by one person are not independent.
 * @throws {BenchError} statistics-input for counts that are not whole, more right answers than
 * trials, no trial, or a chance that is not strictly between 0 and 1
 * Source: exact binomial as in the printed tables of ASTM E1885-04; limits C. J. Clopper & E. S.
 * Pearson (1934), Biometrika 26, 404-413; guessing model as in ISO 4120.
 * Checked by: tests/outside-checks/statistics/sensory.test.ts
 * @example binomialTest({ trials: 15, correct: 10, chance: 1 / 3 }).pValue // 0.0085042714403226
 */
export function binomialTest({ trials, correct, chance }: BinomialTestInput): BinomialTest {
  requireInnerProbability('the chance', chance);
  const pValue = binomialUpperTail({ trials, successes: correct, chance });
  const limits = binomialLimits(trials, correct, LIMIT_CONFIDENCE);
  const share = (c: number): number => Math.max(0, (c - chance) / (1 - chance));
  return {
    pValue,
    distinguishers: {
      estimate: share(correct / trials),
      low: share(limits.low),
      high: share(limits.high),
    },
  };
}
