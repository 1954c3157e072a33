import { type Finding, finding } from '../../findings/index.ts';
import { type Bench, cellPlace, type PanelRow } from '../../model/index.ts';
import {
  binomialLimits,
  binomialLowerTail,
  binomialTest,
  smallestSignificantCount,
} from '../../statistics/index.ts';
import { assessorsNeeded } from './assessors-needed.ts';

/** Probability of a right answer by guessing. */
const CHANCE = { triangle: 1 / 3, 'duo-trio': 1 / 2, paired: 1 / 2 } as const;

export interface PanelPlan {
  /** Share of people who tell the waters apart that a panel should find. */
  readonly share: number;
  readonly power: number;
}

/** What a panel is planned for where nothing else is asked: common practice, no source. */
export const USUAL_PLAN: PanelPlan = { share: 0.3, power: 0.8 };

/**
 * The sensory tests of a bench, each by the exact binomial test.
 *
 * A paired test has two readings: one-sided where the right answer was fixed beforehand, two-sided
 * where it was open; both are given. The share of distinguishers has limits that hold alone, each on
 * its own side, and limits that hold together.
 */
export function panelTests(
  bench: Bench,
  plan: PanelPlan = USUAL_PLAN,
): { readonly rows: readonly PanelRow[]; readonly findings: readonly Finding[] } {
  const level = 1 - bench.settings.confidence;
  const findings: Finding[] = [];
  const rows = bench.tables.panel.flatMap((row): PanelRow[] => {
    const { device, against, test, attribute, assessors, correct } = row.values;
    if (correct > assessors) {
      findings.push(
        finding(
          'panel-count',
          `${correct} correct answers of ${assessors}`,
          'correct cannot be more than assessors',
          cellPlace(row, 'correct'),
        ),
      );
      return [];
    }
    const chance = CHANCE[test];
    const { pValue, distinguishers } = binomialTest({ trials: assessors, correct, chance });
    const needed = smallestSignificantCount({ trials: assessors, chance, level });
    const isShown = needed !== null && correct >= needed;
    return [
      {
        device,
        against,
        test,
        attribute,
        assessors,
        correct,
        chance,
        p_value: pValue,
        p_value_two_sided: test === 'paired' ? twoSided(assessors, correct) : null,
        correct_needed: needed,
        verdict: isShown ? 'told-apart' : 'not-told-apart',
        distinguishers: {
          low: distinguishers.low,
          estimate: distinguishers.estimate,
          high: distinguishers.high,
        },
        distinguishers_two_sided: twoSidedShare(assessors, correct, chance, level),
        assessors_needed: assessorsNeeded({ chance, level, ...plan }),
        correct_needed_two_sided:
          test === 'paired'
            ? smallestSignificantCount({ trials: assessors, chance, level: level / 2 })
            : null,
        assessors_needed_two_sided:
          test === 'paired' ? assessorsNeeded({ chance, level: level / 2, ...plan }) : null,
      },
    ];
  });
  return { rows, findings };
}

/** Exact limits of the share of distinguishers, half of the level left out on each side. */
function twoSidedShare(
  trials: number,
  correct: number,
  chance: number,
  level: number,
): PanelRow['distinguishers_two_sided'] {
  const { low, high } = binomialLimits(trials, correct, 1 - level / 2);
  const share = (right: number): number => Math.max(0, (right - chance) / (1 - chance));
  return { low: share(low), high: share(high) };
}

/** Twice the smaller tail, at most 1. */
function twoSided(trials: number, correct: number): number {
  const upper = binomialTest({ trials, correct, chance: 0.5 }).pValue;
  const lower = binomialLowerTail({ trials, successes: correct, chance: 0.5 });
  return Math.min(1, 2 * Math.min(upper, lower));
}
