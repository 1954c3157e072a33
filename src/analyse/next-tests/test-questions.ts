import type { Analyte } from '../../reference/index.ts';
import { challengesOf } from '../../reference/index.ts';
import type { Claim } from '../claims/claim.ts';
import type { Target } from './showable-reduction.ts';

/** What a planned test is to answer: one analyte, one target, on all devices planned for. */
export interface TestQuestion {
  readonly analyte: Analyte;
  readonly target: Target;
  /** Who asks: words of claims, or `--wanted`. */
  readonly asked: readonly string[];
  /** Named as wanted, not only claimed. */
  readonly isWanted: boolean;
}

const WANTED = '--wanted';

/**
 * The questions of a plan: what was wanted, and the claims of the bench. A certified claim that names
 * no figure asks for what its standard asks. Equal questions are one.
 * @param fallback analytes to ask about where neither claims nor anything wanted name one: whether
 * there is a reduction at all
 */
export function testQuestions(
  wanted: readonly { readonly analyte: Analyte; readonly fraction: number }[],
  claims: readonly Claim[],
  fallback: readonly Analyte[],
): TestQuestion[] {
  const questions = new Map<string, { analyte: Analyte; target: Target; asked: string[] }>();
  const ask = (analyte: Analyte, target: Target, by: string): void => {
    const key = JSON.stringify([analyte.key, target]);
    const known = questions.get(key) ?? { analyte, target, asked: [] };
    questions.set(key, known);
    if (!known.asked.includes(by)) known.asked.push(by);
  };
  for (const { analyte, fraction } of wanted) {
    ask(analyte, { kind: 'reduction', fraction }, WANTED);
  }
  for (const claim of claims) {
    const { analyte, row } = claim;
    if (analyte === null || row.values.comparator === 'up-to') continue;
    const target = claim.target ?? certifiedTarget(claim);
    if (target !== null) ask(analyte, target, row.values.device);
  }
  if (questions.size === 0) for (const one of fallback) ask(one, { kind: 'any' }, 'the feed');
  return [...questions.values()].map((one) => ({ ...one, isWanted: one.asked.includes(WANTED) }));
}

/** The least reduction, or else the highest product, that the standard of a certified claim asks. */
function certifiedTarget({ row, analyte, standard }: Claim): Target | null {
  if (row.values.evidence !== 'certified' || standard === null || analyte === null) return null;
  const challenges = challengesOf(standard, analyte.key).filter((one) => !one.isSuperseded);
  const reductions = challenges.flatMap(({ minReduction }) => minReduction ?? []);
  if (reductions.length > 0) return { kind: 'reduction', fraction: Math.max(...reductions) };
  const levels = challenges.flatMap(({ maxProduct }) => maxProduct ?? []);
  return levels.length > 0 ? { kind: 'level', value: Math.min(...levels) } : null;
}
