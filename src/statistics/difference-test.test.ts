import { describe, expect, it } from 'vitest';
import { differenceTest } from './difference-test.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

const plain = { first: 14, second: 12, uFirst: 0.98, uSecond: 0.84 };

describe('One-sided test of a difference', () => {
  it('finds 14 ± 0.98 not significantly above 12 ± 0.84', () => {
    const { z, pValue } = differenceTest(plain);
    // 2 / sqrt(0.98² + 0.84²), by hand to the digits of the example.
    expect(z).toBeCloseTo(1.5495, 4);
    expect(pValue).toBeCloseTo(0.0606, 4);
  });

  it('looks upward only', () => {
    expect(differenceTest({ ...plain, first: 12, second: 14 }).pValue).toBeCloseTo(0.9394, 4);
  });

  it('gains from errors that both share', () => {
    expect(differenceTest({ ...plain, covariance: 0.5 }).z).toBeGreaterThan(
      differenceTest(plain).z,
    );
  });

  it('says 0.5 for equal numbers and is certain where nothing is uncertain', () => {
    expect(differenceTest({ ...plain, second: 14 })).toEqual({ z: 0, pValue: 0.5 });
    const certain = { uFirst: 0, uSecond: 0 };
    expect(differenceTest({ ...plain, ...certain })).toEqual({ z: Infinity, pValue: 0 });
    expect(differenceTest({ ...plain, ...certain, first: 1 })).toEqual({ z: -Infinity, pValue: 1 });
    expect(differenceTest({ ...plain, ...certain, second: 14 }).pValue).toBe(0.5);
  });

  it('refuses NaN, negative uncertainties and impossible covariances', () => {
    for (const wrong of [
      { first: Number.NaN },
      { second: Infinity },
      { uFirst: -1 },
      { uSecond: Number.NaN },
      { covariance: 1 },
      { covariance: Number.NaN },
    ]) {
      expect(() => differenceTest({ ...plain, ...wrong })).toThrow(refused);
    }
  });
});
