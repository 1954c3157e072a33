import { describe, expect, it } from 'vitest';
import { largestSimilarCount, smallestSignificantCount } from './critical-counts.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

describe('Counts that decide a test', () => {
  it('need 13 of 25 right answers in a triangle test at 5 %', () => {
    expect(smallestSignificantCount({ trials: 25, chance: 1 / 3, level: 0.05 })).toBe(13);
  });

  it('have no significant count where even all right answers are too few', () => {
    expect(smallestSignificantCount({ trials: 4, chance: 0.5, level: 0.05 })).toBeNull();
  });

  it('count a tail equal to the level as reaching it', () => {
    expect(smallestSignificantCount({ trials: 1, chance: 0.1, level: 0.1 })).toBe(1);
  });

  it('allow at most 58 of 100 right answers to rule out a third of distinguishers', () => {
    expect(
      largestSimilarCount({ trials: 100, chance: 0.5, distinguishers: 1 / 3, level: 0.05 }),
    ).toBe(58);
  });

  it('show no similarity with too few trials', () => {
    const few = { trials: 2, chance: 0.5, distinguishers: 0.1, level: 0.05 };
    expect(largestSimilarCount(few)).toBeNull();
  });

  it('refuse impossible trials, chances and levels', () => {
    const plain = { trials: 5, chance: 0.5, distinguishers: 0.3, level: 0.05 };
    for (const wrong of [
      { trials: 0 },
      { trials: 2.5 },
      { chance: 2 },
      { level: 0 },
      { level: Number.NaN },
    ]) {
      expect(() => smallestSignificantCount({ ...plain, ...wrong })).toThrow(refused);
      expect(() => largestSimilarCount({ ...plain, ...wrong })).toThrow(refused);
    }
    expect(() => largestSimilarCount({ ...plain, distinguishers: -1 })).toThrow(refused);
  });
});
