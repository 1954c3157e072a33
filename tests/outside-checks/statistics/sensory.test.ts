import { describe, expect, it } from 'vitest';
import {
  binomialLowerTail,
  binomialTest,
  binomialUpperTail,
  largestSimilarCount,
  normalUpperTail,
  smallestSignificantCount,
} from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readCsv, readJson } from './read-fixture.ts';

interface Difference {
  id: string;
  test: string;
  correct: number;
  n: number;
  p_guess: number;
  expected: {
    p_value: number;
    pd_hat?: number;
    pd_lower95_one_sided_exact?: number;
    pd_upper95_one_sided_exact?: number;
    score_z2?: number;
    score_p_one_sided?: number;
  };
  source: string;
  seen: string;
  tol_rel: number;
}

interface Similarity {
  id: string;
  n: number;
  p_guess: number;
  pd0?: number;
  alpha?: number;
  minimum_correct?: number;
  max_correct?: number;
  p_at_58?: number;
  p_at_59?: number;
  power_if_pd_0?: number;
  power_if_pd_0_2?: number;
  source: string;
  seen: string;
}

const cases = readJson<{ difference: Difference[]; similarity: Similarity[] }>(
  'sensory-cases.json',
);

describe('Exact binomial tests of right answers', () => {
  for (const {
    id,
    test,
    correct,
    n,
    p_guess,
    expected,
    source,
    seen,
    tol_rel,
  } of cases.difference) {
    it(`${source} (${seen}): ${id}`, () => {
      const tolerance = {
        relative: tol_rel,
        absolute: 1e-11,
        reason: 'exact sums, printed to 12 figures; the chance itself is printed to 12',
      };
      const { pValue, distinguishers } = binomialTest({ trials: n, correct, chance: p_guess });
      if (test === 'paired_two_sided') {
        const below = binomialLowerTail({ trials: n, successes: correct, chance: p_guess });
        expectClose(Math.min(1, 2 * Math.min(pValue, below)), expected.p_value, tolerance);
        return;
      }
      expectClose(pValue, expected.p_value, tolerance);
      expectClose(distinguishers.estimate, expected.pd_hat ?? Number.NaN, tolerance);
      const { pd_lower95_one_sided_exact: low, pd_upper95_one_sided_exact: high } = expected;
      expectClose(distinguishers.low, low ?? Number.NaN, tolerance);
      expectClose(distinguishers.high, high ?? Number.NaN, tolerance);
    });
  }

  const score = cases.difference.find(({ expected }) => expected.score_z2 !== undefined);
  it(`${score?.source} (${score?.seen}): the normal tail used there`, () => {
    expectClose(
      normalUpperTail(Math.sqrt(score?.expected.score_z2 ?? Number.NaN)),
      score?.expected.score_p_one_sided ?? Number.NaN,
      { relative: 1e-9, reason: 'printed to 12 figures' },
    );
  });
});

describe('Numbers of right answers that decide', () => {
  for (const item of cases.similarity) {
    const { id, n: trials, p_guess: chance, source, seen } = item;
    it(`${source} (${seen}): ${id}`, () => {
      if (item.minimum_correct !== undefined) {
        const level = item.alpha ?? Number.NaN;
        expect(smallestSignificantCount({ trials, chance, level })).toBe(item.minimum_correct);
        return;
      }
      const distinguishers = item.pd0 ?? Number.NaN;
      const most = item.max_correct ?? Number.NaN;
      expect(largestSimilarCount({ trials, chance, distinguishers, level: 0.05 })).toBe(most);
      const atMost = (share: number, successes: number): number =>
        binomialLowerTail({ trials, successes, chance: chance + share * (1 - chance) });
      const printed = {
        relative: 1e-9,
        absolute: 1e-11,
        reason: 'exact sums printed to 12 figures; the share itself is printed to 12',
      };
      expectClose(atMost(distinguishers, 58), item.p_at_58 ?? Number.NaN, printed);
      expectClose(atMost(distinguishers, 59), item.p_at_59 ?? Number.NaN, printed);
      expectClose(atMost(0, most), item.power_if_pd_0 ?? Number.NaN, printed);
      expectClose(atMost(0.2, most), item.power_if_pd_0_2 ?? Number.NaN, printed);
      expectClose(atMost(0, most), 0.956, { absolute: 5e-4, reason: 'printed in the vignette' });
      expectClose(atMost(0.2, most), 0.377, { absolute: 5e-4, reason: 'printed in the vignette' });
    });
  }
});

describe('Printed tables of minimum numbers of right answers', () => {
  const table = readCsv<'test' | 'n' | 'alpha' | 'minimum_correct' | 'published_in'>(
    'sensory-critical-numbers.csv',
  );
  // A two-sided test spends half its level on each side.
  const designs: Record<string, { chance: number; sides: number }> = {
    triangle: { chance: 1 / 3, sides: 1 },
    duo_trio_or_one_sided_paired: { chance: 1 / 2, sides: 1 },
    paired_two_sided: { chance: 1 / 2, sides: 2 },
    two_out_of_five: { chance: 1 / 10, sides: 1 },
  };
  const sourceOf = (row: { published_in: string }): string =>
    row.published_in || 'computed only, R 4.2.2';

  it('holds 1190 numbers', () => expect(table).toHaveLength(1190));

  for (const source of new Set(table.map(sourceOf))) {
    const rows = table.filter((row) => sourceOf(row) === source);
    it(`${source}: ${rows.length} minimum numbers of right answers`, () => {
      for (const { test, n, alpha, minimum_correct: minimum } of rows) {
        const { chance, sides } = designs[test] ?? { chance: Number.NaN, sides: Number.NaN };
        const trials = Number(n);
        const level = Number(alpha) / sides;
        const count = smallestSignificantCount({ trials, chance, level });
        // Whole numbers: no tolerance.
        expect(count, `${test} n ${n} alpha ${alpha}`).toBe(
          minimum === '' ? null : Number(minimum),
        );
      }
    });
  }

  it('definition: one answer fewer than the minimum is not significant', () => {
    for (const { test, n, alpha, minimum_correct: minimum } of table) {
      const { chance, sides } = designs[test] ?? { chance: Number.NaN, sides: Number.NaN };
      const fewer = { trials: Number(n), successes: Number(minimum) - 1, chance };
      if (minimum === '' || fewer.successes <= fewer.trials * chance) continue;
      expect(binomialUpperTail(fewer)).toBeGreaterThan(Number(alpha) / sides);
    }
  });
});
