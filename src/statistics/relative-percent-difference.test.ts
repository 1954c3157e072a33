import { describe, expect, it } from 'vitest';
import { relativePercentDifference } from './relative-percent-difference.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

const at = (value: number) => ({ low: value, high: value });

describe('Relative percent difference', () => {
  it('is 18.18 % for 10 and 12, whichever comes first', () => {
    const rpd = relativePercentDifference(at(10), at(12));
    expect(rpd?.low).toBeCloseTo(200 / 11, 12);
    expect(relativePercentDifference(at(12), at(10))).toEqual(rpd);
  });

  it('is zero for equal numbers and undefined where both can be zero', () => {
    expect(relativePercentDifference(at(5), at(5))).toEqual({ low: 0, high: 0 });
    expect(relativePercentDifference(at(0), at(0))).toBeNull();
    expect(relativePercentDifference({ low: 0, high: 1 }, { low: 0, high: 3 })).toBeNull();
  });

  it('has a lower bound for a number against "below 1", and 200 % above', () => {
    const rpd = relativePercentDifference({ low: 0, high: 1 }, at(4));
    expect(rpd?.low).toBeCloseTo(120, 12);
    expect(rpd?.high).toBe(200);
  });

  it('may be zero where intervals overlap, and bounds the farthest ends', () => {
    expect(relativePercentDifference({ low: 1, high: 4 }, { low: 3, high: 6 })).toEqual({
      low: 0,
      high: (200 * 5) / 7,
    });
    expect(relativePercentDifference(at(2), { low: 2, high: Infinity })?.high).toBe(200);
  });

  it('refuses NaN, negative numbers and ends in the wrong order', () => {
    expect(() => relativePercentDifference(at(Number.NaN), at(1))).toThrow(refused);
    expect(() => relativePercentDifference(at(-1), at(1))).toThrow(refused);
    expect(() => relativePercentDifference({ low: 2, high: 1 }, at(1))).toThrow(refused);
  });
});
