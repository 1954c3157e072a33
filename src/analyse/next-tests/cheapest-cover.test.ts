import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CoverSet, cheapestCover, mostAnswered } from './cheapest-cover.ts';

/** Every choice of sets, one by one. */
function choices(sets: readonly CoverSet[]) {
  return Array.from({ length: 2 ** sets.length }, (_, mask) => {
    const chosen = sets.filter((_set, at) => (mask >> at) & 1);
    return {
      cost: chosen.reduce((sum, { cost }) => sum + cost, 0),
      answers: new Set(chosen.flatMap(({ answers }) => answers)).size,
    };
  });
}

function optimum(sets: readonly CoverSet[]): number {
  const all = new Set(sets.flatMap(({ answers }) => answers)).size;
  const full = choices(sets).filter(({ answers }) => answers === all);
  return Math.min(...full.map(({ cost }) => cost));
}

const QUESTIONS = 7;
const setArbitrary = fc.record({
  cost: fc.integer({ min: 0, max: 60 }),
  answers: fc.uniqueArray(fc.integer({ min: 0, max: QUESTIONS - 1 }), { maxLength: 5 }),
});
const setsArbitrary = fc.array(setArbitrary, { maxLength: 9 });

describe('the cheapest cover', () => {
  it('of no sets costs nothing and leaves every question unanswerable', () => {
    expect(cheapestCover([], 2)).toMatchObject({ chosen: [], cost: 0, unanswerable: [0, 1] });
  });

  it('takes two cheap packages before a dear one, and a dear one before three cheap ones', () => {
    const sets = [
      { cost: 50, answers: [0, 1, 2] },
      { cost: 20, answers: [0, 1] },
      { cost: 20, answers: [2] },
    ];
    expect(cheapestCover(sets, 3)).toMatchObject({ chosen: [1, 2], cost: 40, method: 'exact' });
    expect(cheapestCover([{ cost: 35, answers: [0, 1, 2] }, ...sets.slice(1)], 3).chosen).toEqual([
      0,
    ]);
  });

  it('of equal prices is the first of them, so that equal input gives equal output', () => {
    const same = { cost: 5, answers: [0] };
    expect(cheapestCover([same, same], 1).chosen).toEqual([0]);
  });

  it('takes what is free', () => {
    expect(cheapestCover([{ cost: 0, answers: [0] }], 1)).toMatchObject({ chosen: [0], cost: 0 });
  });

  it('is as cheap as the cheapest of all choices, answers all, and buys nothing in vain', () => {
    fc.assert(
      fc.property(setsArbitrary, (sets) => {
        const cover = cheapestCover(sets, QUESTIONS);
        expect(cover.cost).toBe(optimum(sets));
        expect(cover.method).toBe('exact');
        expect(cover.costAtLeast).toBe(cover.cost);
        const bought = new Set(cover.chosen.flatMap((at) => sets[at]?.answers ?? []));
        expect([...bought].sort()).toEqual([...cover.answered]);
        expect(cover.answered.length + cover.unanswerable.length).toBe(QUESTIONS);
      }),
      { seed: 1, numRuns: 400 },
    );
  });

  it('by the heuristic answers all, lies between its bound and its guarantee', () => {
    fc.assert(
      fc.property(setsArbitrary, (sets) => {
        const cover = cheapestCover(sets, QUESTIONS, 0);
        const best = optimum(sets);
        const most = Math.max(1, ...sets.map(({ answers }) => answers.length));
        const harmonic = Array.from({ length: most }, (_, at) => 1 / (at + 1));
        const guarantee = harmonic.reduce((sum, one) => sum + one, 0);
        const all = new Set(sets.flatMap(({ answers }) => answers)).size;
        expect(cover.answered).toHaveLength(all);
        // Sums of doubles only.
        expect(cover.cost).toBeGreaterThanOrEqual(best);
        expect(cover.cost).toBeLessThanOrEqual(best * guarantee + 1e-9);
        expect(cover.costAtLeast).toBeLessThanOrEqual(best + 1e-9);
        if (all > 0) expect(cover.method).toBe('heuristic');
      }),
      { seed: 1, numRuns: 400 },
    );
  });

  it('beyond the exact size says so, with a bound below its cost', () => {
    const sets = Array.from({ length: 20 }, (_, at) => ({ cost: 10 + at, answers: [at, 20 + at] }));
    const extra = Array.from({ length: 40 }, (_, at) => ({ cost: 8, answers: [at] }));
    const cover = cheapestCover([...sets, ...extra], 40);
    expect(cover.method).toBe('heuristic');
    expect(cover.costAtLeast).toBeGreaterThan(0);
    expect(cover.costAtLeast).toBeLessThanOrEqual(cover.cost);
  });
});

describe('the most answers within a budget', () => {
  const within = (sets: readonly CoverSet[], budget: number): number =>
    Math.max(...choices(sets).flatMap(({ cost, answers }) => (cost <= budget ? answers : [])));

  it('are none for no money', () => {
    expect(mostAnswered([{ cost: 1, answers: [0] }], 1, 0)).toMatchObject({
      chosen: [],
      answered: [],
      unanswerable: [],
    });
  });

  it('are as many as the best of all choices, and never cost more than the budget', () => {
    fc.assert(
      fc.property(setsArbitrary, fc.integer({ min: 0, max: 150 }), (sets, budget) => {
        const cover = mostAnswered(sets, QUESTIONS, budget);
        expect(cover.answered).toHaveLength(within(sets, budget));
        expect(cover.cost).toBeLessThanOrEqual(budget);
      }),
      { seed: 1, numRuns: 400 },
    );
  });

  it('by the heuristic are (1 - 1/e)/2 of the best at least, and never above the bound', () => {
    fc.assert(
      fc.property(setsArbitrary, fc.integer({ min: 0, max: 150 }), (sets, budget) => {
        const cover = mostAnswered(sets, QUESTIONS, budget, 0);
        const best = within(sets, budget);
        expect(cover.cost).toBeLessThanOrEqual(budget);
        expect(cover.answered.length).toBeGreaterThanOrEqual((best * (1 - 1 / Math.E)) / 2);
        expect(cover.answeredAtMost).toBeGreaterThanOrEqual(best);
      }),
      { seed: 1, numRuns: 400 },
    );
  });

  it('count sums such as 0.1 + 0.2 as 0.3', () => {
    const sets = [
      { cost: 0.1, answers: [0] },
      { cost: 0.2, answers: [1] },
    ];
    expect(mostAnswered(sets, 2, 0.3).answered).toEqual([0, 1]);
  });
});
