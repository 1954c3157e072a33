import { binomialUpperTail, smallestSignificantCount } from '../../statistics/index.ts';

/** More answers than any household panel gives. */
const MOST = 2000;

/**
 * Answers a panel needs to find, with the wanted power, that a stated share of people tells two
 * waters apart.
 *
 * Exact: for each number of answers the smallest significant count is taken, and the power is the
 * chance to reach it when the probability of a right answer is `chance + share x (1 - chance)`.
 * Since power rises in a saw-tooth, the number given is the smallest from which on the power holds
 * for the next ten numbers too.
 *
 * @returns null where no panel of up to 2,000 answers reaches the power
 * Source: guessing model and exact binomial power, as in ISO 4120 and ASTM E1885 (from memory).
 * @example assessorsNeeded({ chance: 1 / 3, share: 0.3, level: 0.05, power: 0.8 })
 */
export function assessorsNeeded(plan: {
  readonly chance: number;
  readonly share: number;
  readonly level: number;
  readonly power: number;
}): number | null {
  let held = 0;
  for (let trials = 1; trials <= MOST; trials += 1) {
    held = powerOf(trials, plan) >= plan.power ? held + 1 : 0;
    if (held === 11) return trials - 10;
  }
  return null;
}

function powerOf(
  trials: number,
  plan: { readonly chance: number; readonly share: number; readonly level: number },
): number {
  const needed = smallestSignificantCount({ trials, chance: plan.chance, level: plan.level });
  if (needed === null) return 0;
  const correct = plan.chance + plan.share * (1 - plan.chance);
  return binomialUpperTail({ trials, successes: needed, chance: correct });
}
