import { describe, expect, it } from 'vitest';
import { binomialTest } from './binomial-test.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

describe('Exact binomial test of right answers', () => {
  it('finds ten of fifteen in a triangle test hard to get by guessing', () => {
    const { pValue, distinguishers } = binomialTest({ trials: 15, correct: 10, chance: 1 / 3 });
    expect(pValue).toBeCloseTo(0.0085042714403226, 12);
    expect(distinguishers.estimate).toBeCloseTo(0.5, 14);
    expect(distinguishers.low).toBeLessThan(0.5);
    expect(distinguishers.high).toBeGreaterThan(0.5);
  });

  it('cuts the share of distinguishers at zero and lets it reach one', () => {
    expect(binomialTest({ trials: 8, correct: 0, chance: 1 / 3 })).toEqual({
      pValue: 1,
      distinguishers: { estimate: 0, low: 0, high: 0 },
    });
    expect(binomialTest({ trials: 6, correct: 6, chance: 0.5 }).distinguishers).toMatchObject({
      estimate: 1,
      high: 1,
    });
  });

  it('answers for a single trial', () => {
    expect(binomialTest({ trials: 1, correct: 1, chance: 0.5 }).pValue).toBeCloseTo(0.5, 14);
  });

  it('refuses no trial, more right answers than trials, parts of answers and impossible chances', () => {
    for (const input of [
      { trials: 0, correct: 0, chance: 0.5 },
      { trials: 3, correct: 4, chance: 0.5 },
      { trials: 3, correct: -1, chance: 0.5 },
      { trials: 3, correct: 1.5, chance: 0.5 },
      { trials: Number.NaN, correct: 1, chance: 0.5 },
      { trials: 3, correct: 1, chance: 0 },
      { trials: 3, correct: 1, chance: 1 },
      { trials: 3, correct: 1, chance: Number.NaN },
    ]) {
      expect(() => binomialTest(input)).toThrow(refused);
    }
  });
});
