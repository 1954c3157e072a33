import { describe, expect, it } from 'vitest';
import { figuresAreFalse, printedEnds } from './judge-statement.ts';
import { MDL, normalPair, RL, reported } from './lab-readings.ts';
import { beyondChance } from './page.ts';
import { type CellCount, GRID, REDUCTIONS, simulateCell } from './simulate-statements.ts';

// The page docs/printed-statements.md has 100,000 trials a cell; here are fewer on the same grid.
const TRIALS = 1000;
const SEED = 20;

function simulate(bound: 'reporting' | 'detection', shape: 'normal' | 'lognormal'): CellCount[] {
  return GRID.map((cell, index) =>
    simulateCell(cell, index, { seed: SEED, trials: TRIALS, bound, shape }),
  );
}

describe('what is printed of a simulated pair, bounded by the reporting limit', () => {
  // Own simulation on a published grid; derivation in docs/methods.md, no outside source. Tolerance:
  // three standard errors of a share of 5 % plus one for the highest of 480 cells, at 1000 trials.
  const limit = beyondChance(TRIALS) + Math.sqrt((0.05 * 0.95) / TRIALS);
  it.each(['normal', 'lognormal'] as const)(
    'is false in at most 5 %% of the trials of every cell, %s errors',
    (shape) => {
      const counts = simulate('reporting', shape);
      const worst = Math.max(...counts.map((count) => count.falsePrinted / TRIALS));
      expect(worst).toBeLessThanOrEqual(limit);
      // A rule that never says anything would pass the line above.
      expect(worst).toBeGreaterThan(0.03);
      // Many cells together are sharper: three standard errors of all trials of one reduction.
      for (const reduction of REDUCTIONS) {
        const own = counts.filter(({ cell }) => cell.reduction === reduction && cell.feed >= 5);
        const wrong = own.reduce((sum, count) => sum + count.falsePrinted, 0);
        const trials = own.length * TRIALS;
        expect(wrong / trials, `${reduction}`).toBeLessThanOrEqual(beyondChance(trials));
      }
    },
  );

  it('still claims a reduction wherever a high feed shows one', () => {
    const cells = simulate('reporting', 'normal').filter(
      ({ cell }) => cell.feed >= 30 && cell.reduction >= 0.8 && cell.relative <= 0.1,
    );
    for (const { outcomes } of cells) {
      const silent = (outcomes.get('not-shown') ?? 0) + (outcomes.get('untestable') ?? 0);
      expect(silent / TRIALS).toBeLessThan(0.01);
    }
  });
});

describe('what a detection limit bounds', () => {
  it('is the report and not the water: such bounds are false in more than one of ten trials', () => {
    const cell = GRID.findIndex(
      ({ feed, reduction, relative }) => feed === 2 && reduction === 0.8 && relative === 0.03,
    );
    const at = GRID[cell];
    expect(at).toBeDefined();
    if (at === undefined) return;
    const simulation = { seed: SEED, trials: TRIALS, shape: 'normal' } as const;
    const share = (bound: 'detection' | 'reporting') =>
      simulateCell(at, cell, { ...simulation, bound }).falsePrinted / TRIALS;
    expect(share('detection')).toBeGreaterThan(0.1);
    expect(share('reporting')).toBeLessThan(0.05);
  });
});

describe('the judge of the simulation', () => {
  const statement = {
    outcome: 'at-least',
    low: 0.9,
    high: null,
    estimate: null,
    intervalLow: null,
    intervalHigh: null,
    confidence: 0.95,
  } as const;

  it('calls a bound above the true reduction false, and one at it true', () => {
    expect(figuresAreFalse(statement, { feed: 10, product: 1.01 })).toBe(true);
    expect(figuresAreFalse(statement, { feed: 10, product: 1 })).toBe(false);
  });

  it('calls a rise of an unchanged product false', () => {
    expect(figuresAreFalse({ ...statement, outcome: 'rise' }, { feed: 1, product: 1 })).toBe(true);
  });

  it.each([
    ['91.6 % (90.1 to 92.9)', 0.901, 0.929],
    ['-5.0 % (-9.1 to -1.0)', -0.091, -0.01],
    ['99.1 % (at least 98.2)', 0.982, null],
    ['≥ 98.4 %', 0.984, null],
    ['74 % to 93 %', 0.74, 0.93],
    ['no reduction shown', null, null],
  ])('reads the ends of "%s" as printed', (text, low, high) => {
    const ends = printedEnds(text);
    const expectEnd = (found: number | null, wanted: number | null): void => {
      if (wanted === null) expect(found).toBeNull();
      else expect(found).toBeCloseTo(wanted, 12);
    };
    expectEnd(ends.low, low);
    expectEnd(ends.high, high);
  });

  it('reports readings as a laboratory with two limits does', () => {
    const states = [RL, RL * 0.999, MDL, MDL * 0.999, -1].map(
      (read) => reported(read, 0.1, 'reporting').state,
    );
    expect(states).toEqual(['quantified', 'between', 'between', 'notDetected', 'notDetected']);
  });

  it('draws finite normal numbers at the ends of the stream', () => {
    for (const fraction of [0, 1 - 2 ** -53]) {
      expect(normalPair(() => fraction).every(Number.isFinite)).toBe(true);
    }
  });
});
