import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieller } from './fieller.ts';

const PLAIN = {
  numerator: 14,
  denominator: 7,
  uNumerator: 3,
  uDenominator: 2,
  multiplier: 1.812461,
};

const input = fc.record({
  numerator: fc.double({ min: -50, max: 50, noNaN: true }),
  denominator: fc.double({ min: 0.5, max: 50, noNaN: true }),
  uNumerator: fc.double({ min: 0.01, max: 10, noNaN: true }),
  uDenominator: fc.double({ min: 0.01, max: 10, noNaN: true }),
  correlation: fc.double({ min: -0.95, max: 0.95, noNaN: true }),
  multiplier: fc.double({ min: 0.5, max: 4, noNaN: true }),
});

describe('Fieller interval of a ratio', () => {
  it('holds the ratio, unevenly', () => {
    const { ratio, low, high, g } = fieller(PLAIN);
    expect(ratio).toBe(2);
    // Open DC-Stats notebook; half a unit of the last digit given in the example.
    expect(low).toBeCloseTo(1.0514, 4);
    expect(high).toBeCloseTo(4.4143, 4);
    expect(g).toBeCloseTo(0.2682, 4);
  });

  it('shrinks to the ratio without uncertainty', () => {
    const certain = fieller({ ...PLAIN, uNumerator: 0, uDenominator: 0 });
    expect(certain).toEqual({ ratio: 2, low: 2, high: 2, g: 0 });
  });

  it('has no ends where the denominator is not told apart from zero', () => {
    expect(fieller({ ...PLAIN, uDenominator: 7, multiplier: 1 })).toEqual({
      ratio: 2,
      low: null,
      high: null,
      g: 1,
    });
  });

  it('accepts a numerator of zero and does not cut the low end', () => {
    const { low, high } = fieller({ ...PLAIN, numerator: 0 });
    expect(low).toBeLessThan(0);
    expect(high).toBeGreaterThan(0);
  });

  it('mirrors for a negative numerator or denominator', () => {
    const { low, high } = fieller(PLAIN);
    const mirrored = fieller({ ...PLAIN, denominator: -7 });
    expect(mirrored.low).toBeCloseTo(-(high ?? 0), 12);
    expect(mirrored.high).toBeCloseTo(-(low ?? 0), 12);
  });

  it('refuses what no ratio has', () => {
    for (const wrong of [
      { denominator: 0 },
      { numerator: Number.NaN },
      { denominator: Infinity },
      { uNumerator: -1 },
      { uDenominator: Number.NaN },
      { covariance: 7 },
      { covariance: Number.NaN },
      { multiplier: 0 },
      { multiplier: -2 },
    ]) {
      expect(() => fieller({ ...PLAIN, ...wrong })).toThrow(
        expect.objectContaining({ code: 'statistics-input' }),
      );
    }
  });

  it('ends where the difference is exactly the multiplier times its uncertainty', () =>
    fc.assert(
      fc.property(input, ({ correlation, ...rest }) => {
        const {
          numerator: a,
          denominator: b,
          uNumerator: sa,
          uDenominator: sb,
          multiplier: z,
        } = rest;
        const covariance = correlation * sa * sb;
        const { ratio, low, high, g } = fieller({ ...rest, covariance });
        if (g >= 1) {
          expect([low, high]).toEqual([null, null]);
          return;
        }
        fc.pre(g < 0.999);
        expect(low).toBeLessThanOrEqual(ratio + 1e-12 * Math.abs(ratio));
        expect(high).toBeGreaterThanOrEqual(ratio - 1e-12 * Math.abs(ratio));
        for (const end of [low ?? 0, high ?? 0]) {
          const difference = (a - end * b) ** 2;
          const spread = z * z * (sa * sa - 2 * end * covariance + end * end * sb * sb);
          // Tolerance: the two sides are squares of rounded differences.
          const size = (Math.abs(a) + Math.abs(end * b)) ** 2 + spread;
          expect(Math.abs(difference - spread)).toBeLessThanOrEqual(1e-9 * size);
        }
      }),
      { seed: 1, numRuns: 1000 },
    ));
});
