import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lowerBoundText, percentEstimate, percentRange, upperBoundText } from './format-percent.ts';

/** The printed percent as a fraction, parsed once so that no rounding is added by arithmetic. */
function fractionOf(text: string): number {
  return Number(`${text.replace(' %', '')}e-2`);
}

/** Reductions with many near complete removal, where rounding does most harm. */
const reduction = fc.oneof(
  fc.double({ min: -50, max: 1, maxExcluded: true, noNaN: true }),
  fc.double({ min: 0, max: 12, noNaN: true }).map((decades) => 1 - 10 ** -decades),
  fc.integer({ min: -2000, max: 9999 }).map((n) => n / 10_000),
);

describe('a lower bound of a reduction', () => {
  it('rounds down', () => {
    expect(lowerBoundText(0.98437)).toBe('98.4 %');
    expect(lowerBoundText(0.98499)).toBe('98.4 %');
    expect(lowerBoundText(-0.12345)).toBe('-12.4 %');
  });

  it('goes by the digits a person reads, not by the binary number below them', () => {
    expect(lowerBoundText(0.29)).toBe('29.0 %');
    expect(lowerBoundText(0.57)).toBe('57.0 %');
    expect(lowerBoundText(0.919)).toBe('91.9 %');
  });

  it('keeps the first digit of what is left near complete removal', () => {
    expect(lowerBoundText(0.99989)).toBe('99.98 %');
    expect(lowerBoundText(0.99996)).toBe('99.996 %');
    expect(lowerBoundText(0.9999999)).toBe('99.99999 %');
    expect(lowerBoundText(1 - Number.EPSILON)).not.toContain('100');
  });

  it('prints a bound of 1 as less than complete removal', () => {
    expect(lowerBoundText(1)).toBe('99.9999 %');
  });

  it('says where there is none', () => {
    expect(lowerBoundText(Number.NEGATIVE_INFINITY)).toBe('no lower bound');
  });

  it('prints zero and minus zero alike', () => {
    expect(lowerBoundText(0)).toBe('0.0 %');
    expect(lowerBoundText(-0)).toBe('0.0 %');
  });

  it('refuses what cannot be a reduction', () => {
    expect(() => lowerBoundText(Number.NaN)).toThrow(RangeError);
    expect(() => lowerBoundText(1.01)).toThrow(RangeError);
  });

  it('is never above the figure, never 100 %, and overstates what is left less than twofold', () => {
    fc.assert(
      fc.property(reduction, (value) => {
        fc.pre(value < 1);
        const printed = lowerBoundText(value);
        expect(fractionOf(printed)).toBeLessThanOrEqual(value);
        expect(printed).not.toMatch(/^100/);
        if (value > 0.99) {
          expect(1 - fractionOf(printed)).toBeLessThanOrEqual((1 - value) * 2 + 1e-15);
        }
      }),
      { seed: 1, numRuns: 5000 },
    );
  });
});

describe('an upper bound of a reduction', () => {
  it('rounds up', () => {
    expect(upperBoundText(0.9301)).toBe('93.1 %');
    expect(upperBoundText(0.93)).toBe('93.0 %');
    expect(upperBoundText(-0.1239)).toBe('-12.3 %');
  });

  it('never rounds up to complete removal', () => {
    expect(upperBoundText(0.9999)).toBe('99.99 %');
    expect(upperBoundText(0.99999991)).toBe('99.999991 %');
  });

  it('bounds nothing from 1 upward', () => {
    expect(upperBoundText(1)).toBe('no upper bound');
    expect(upperBoundText(Number.POSITIVE_INFINITY)).toBe('no upper bound');
  });

  it('is never below the figure and never 100 %', () => {
    fc.assert(
      fc.property(reduction, (value) => {
        fc.pre(value < 1);
        const printed = upperBoundText(value);
        expect(fractionOf(printed)).toBeGreaterThanOrEqual(value);
        expect(fractionOf(printed)).toBeLessThan(1);
      }),
      { seed: 1, numRuns: 5000 },
    );
  });
});

describe('a range of reductions', () => {
  it('has the decimals its width calls for', () => {
    expect(percentRange(0.742, 0.927)).toBe('74 % to 93 %');
    expect(percentRange(0.9123, 0.9301)).toBe('91.2 % to 93.1 %');
    expect(percentRange(-0.2, 0.4)).toBe('-20 % to 40 %');
  });

  it('keeps decimals at a bound near complete removal', () => {
    expect(percentRange(0.742, 0.9996)).toBe('74 % to 99.96 %');
  });

  it('is open where complete removal is possible or a side is unbounded', () => {
    expect(percentRange(0.98437, null)).toBe('≥ 98.4 %');
    expect(percentRange(0.98437, 1)).toBe('≥ 98.4 %');
    expect(percentRange(null, 0.93)).toBe('≤ 93.0 %');
    expect(percentRange(Number.NEGATIVE_INFINITY, 0.93)).toBe('≤ 93.0 %');
    expect(percentRange(null, null)).toBe('not known');
  });

  it('shows one figure twice where both ends are equal', () => {
    expect(percentRange(0.5, 0.5)).toBe('50.0 % to 50.0 %');
  });
});

describe('a measured reduction', () => {
  it('has the decimals its interval calls for, the ends rounded outward', () => {
    expect(percentEstimate(0.9163, 0.9012, 0.9288)).toBe('91.6 % (90.1 to 92.9)');
    expect(percentEstimate(0.5, 0.2, 0.7)).toBe('50 % (20 to 70)');
  });

  it('stands alone without an interval', () => {
    expect(percentEstimate(0.9163)).toBe('91.6 %');
    expect(percentEstimate(0.9163, 0.9163, 0.9163)).toBe('91.6 %');
  });

  it('names only the lower end where the interval reaches complete removal', () => {
    expect(percentEstimate(0.991, 0.974, null)).toBe('99.1 % (at least 97.4)');
    expect(percentEstimate(0.991, 0.974, 1)).toBe('99.1 % (at least 97.4)');
  });

  it('never reads 100 %', () => {
    expect(percentEstimate(0.99997, 0.5, null)).toBe('99.997 % (at least 50)');
    expect(() => percentEstimate(1)).toThrow(RangeError);
    expect(() => percentEstimate(Number.NaN)).toThrow(RangeError);
  });
});
