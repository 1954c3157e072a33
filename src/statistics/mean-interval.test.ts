import { describe, expect, it } from 'vitest';
import { meanInterval } from './mean-interval.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

describe('Student t interval of a mean', () => {
  it('reaches t times the standard error to both sides', () => {
    const { mean, low, high, uMean, n } = meanInterval([1, 2, 3]);
    expect({ mean, n }).toEqual({ mean: 2, n: 3 });
    expect(uMean).toBeCloseTo(1 / Math.sqrt(3), 14);
    // t(0.975, 2) = 4.30265; to the digits of the example.
    expect(low).toBeCloseTo(-0.484, 3);
    expect(high).toBeCloseTo(4.484, 3);
  });

  it('has no width for equal numbers and grows with the confidence', () => {
    expect(meanInterval([4, 4])).toMatchObject({ low: 4, high: 4 });
    expect(meanInterval([1, 2, 3], 0.99).high).toBeGreaterThan(meanInterval([1, 2, 3]).high);
  });

  it('refuses one number, NaN and impossible confidences', () => {
    expect(() => meanInterval([1])).toThrow(refused);
    expect(() => meanInterval([])).toThrow(refused);
    expect(() => meanInterval([1, Number.NaN])).toThrow(refused);
    expect(() => meanInterval([1, 2], 1)).toThrow(refused);
  });
});
