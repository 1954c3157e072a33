import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { twoSamplePower, twoSampleSize } from './two-sample-power.ts';

const PLAN = { difference: 1, sd: 1, level: 0.05 };

describe('the power of a two-sample t test', () => {
  it('is that of the worked example', () => {
    // J. Cohen (1988), table 2.4.1, d = 1, two-sided 5 %, power 0.80: n = 17 (from memory).
    expect(twoSampleSize(PLAN, 0.8)).toBe(17);
    expect(twoSamplePower(17, PLAN)).toBeCloseTo(0.807, 3);
  });

  it('rises with the number of results, and falls with their scatter', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.double({ min: 0.05, max: 5, noNaN: true }),
        (n, difference) => {
          const plan = { ...PLAN, difference };
          // Simpson's rule is good to 1e-8.
          expect(twoSamplePower(n + 1, plan)).toBeGreaterThanOrEqual(
            twoSamplePower(n, plan) - 1e-8,
          );
          expect(twoSamplePower(n, { ...plan, sd: 2 })).toBeLessThanOrEqual(
            twoSamplePower(n, plan) + 1e-8,
          );
        },
      ),
      { seed: 1, numRuns: 60 },
    );
  });

  it('is a probability, also far out', () => {
    expect(twoSamplePower(2, { ...PLAN, difference: 1e6 })).toBeCloseTo(1, 8);
    expect(twoSamplePower(2, { ...PLAN, difference: 1e-9 })).toBeCloseTo(0.025, 6);
  });

  it.each([
    [1, PLAN],
    [2.5, PLAN],
    [5, { ...PLAN, difference: 0 }],
    [5, { ...PLAN, difference: Number.NaN }],
    [5, { ...PLAN, sd: 0 }],
    [5, { ...PLAN, sd: -1 }],
    [5, { ...PLAN, level: 0 }],
    [5, { ...PLAN, level: 1 }],
  ])('refuses %j results with %j', (n, plan) => {
    expect(() => twoSamplePower(n, plan)).toThrow(
      expect.objectContaining({ code: 'statistics-input' }),
    );
  });
});

describe('the results a two-sample t test needs', () => {
  it('are two at least, and null beyond the largest number looked at', () => {
    expect(twoSampleSize({ ...PLAN, difference: 100 }, 0.8)).toBe(2);
    expect(twoSampleSize({ ...PLAN, difference: 0.01 }, 0.8, 100)).toBeNull();
    expect(twoSampleSize(PLAN, 0.8, 17)).toBe(17);
    expect(twoSampleSize(PLAN, 0.8, 16)).toBeNull();
  });

  it('are the fewest that reach the power', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.4, max: 3, noNaN: true }), (difference) => {
        const plan = { ...PLAN, difference };
        const n = twoSampleSize(plan, 0.9) ?? 0;
        expect(twoSamplePower(n, plan)).toBeGreaterThanOrEqual(0.9);
        if (n > 2) expect(twoSamplePower(n - 1, plan)).toBeLessThan(0.9);
      }),
      { seed: 1, numRuns: 40 },
    );
  });

  it('refuse a power of 1', () => {
    expect(() => twoSampleSize(PLAN, 1)).toThrow(
      expect.objectContaining({ code: 'statistics-input' }),
    );
  });
});
