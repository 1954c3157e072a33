import { describe, expect, it } from 'vitest';
import { pairedRatio } from './paired-ratio.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

describe('Ratio of paired means', () => {
  it('holds the ratio of the means', () => {
    const { ratio, low, high } = pairedRatio([3, 2.6, 3.9], [150, 148, 155]);
    expect(ratio).toBeCloseTo(9.5 / 453, 15);
    expect(low).toBeLessThan(ratio);
    expect(high).toBeGreaterThan(ratio);
  });

  it('has no width where every pair has the same ratio', () => {
    const { low, high } = pairedRatio([10, 11, 12], [20, 22, 24]);
    // Tolerance: the covariance cancels but for rounding, under a square root.
    expect(low).toBeCloseTo(0.5, 7);
    expect(high).toBeCloseTo(0.5, 7);
  });

  it('has no ends where the denominators scatter around zero', () => {
    expect(pairedRatio([1, 2, 3], [-1, 2, 1])).toMatchObject({ low: null, high: null });
  });

  it('refuses one pair, lists of different length, NaN and a mean denominator of zero', () => {
    expect(() => pairedRatio([1], [2])).toThrow(refused);
    expect(() => pairedRatio([1, 2], [2])).toThrow(refused);
    expect(() => pairedRatio([1, Number.NaN], [2, 3])).toThrow(refused);
    expect(() => pairedRatio([1, 2], [-1, 1])).toThrow(refused);
    expect(() => pairedRatio([1, 2], [2, 3], 0)).toThrow(refused);
  });
});
