import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalOf, decimalText, roundDecimal } from './decimal.ts';
import {
  atMostDigits,
  boundDigits,
  plainNumber,
  significant,
  withUncertaintyDigits,
} from './format-number.ts';
import { durationText, volumeText } from './format-quantity.ts';

const finite = fc.double({ noNaN: true, noDefaultInfinity: true });
// Below the largest double, so that rounding up stays finite in the comparison.
const moderate = fc.double({ min: -1e300, max: 1e300, noNaN: true });

describe('plain numbers', () => {
  it('writes very small and very large numbers without an exponent', () => {
    expect(plainNumber(1e-7)).toBe('0.0000001');
    expect(plainNumber(1.5e21)).toBe('1500000000000000000000');
    expect(plainNumber(-0.25)).toBe('-0.25');
  });

  it('writes minus zero as zero', () => {
    expect(plainNumber(-0)).toBe('0');
    expect(significant(-0, 3)).toBe('0');
  });

  it('reads back as the same double', () => {
    fc.assert(
      fc.property(finite, (value) => {
        expect(Number(plainNumber(value))).toBe(value === 0 ? 0 : value);
      }),
      { seed: 1, numRuns: 1000 },
    );
  });

  it('refuses what is not a finite number', () => {
    expect(() => plainNumber(Number.NaN)).toThrow(RangeError);
    expect(() => significant(Number.POSITIVE_INFINITY, 3)).toThrow(RangeError);
  });
});

describe('significant digits', () => {
  it('keeps the asked digits, zeros included', () => {
    expect(significant(0.0123456, 3)).toBe('0.0123');
    expect(significant(1.2, 3)).toBe('1.20');
    expect(significant(12345, 3)).toBe('12300');
    expect(significant(-98.76, 2)).toBe('-99');
  });

  it('does not gain a digit when rounding carries', () => {
    expect(significant(9.996, 3)).toBe('10.0');
    expect(significant(0.0996, 2)).toBe('0.10');
    expect(significant(999.6, 3)).toBe('1000');
  });

  it('rounds halves by the digits a person reads, away from zero', () => {
    expect(significant(1.005, 3)).toBe('1.01');
    expect(significant(2.675, 3)).toBe('2.68');
    expect(significant(-2.675, 3)).toBe('-2.68');
  });

  it('asks for at least one digit', () => {
    expect(() => significant(1, 0)).toThrow(RangeError);
    expect(() => significant(1, 1.5)).toThrow(RangeError);
  });

  it('lies within half a unit of the last digit', () => {
    fc.assert(
      fc.property(moderate, fc.integer({ min: 1, max: 6 }), (value, digits) => {
        const text = significant(value, digits);
        // Half a unit of the last significant digit, and the slack of the comparison in doubles.
        const tolerance = Math.abs(value) * 0.5 * 10 ** (1 - digits) * (1 + 1e-9);
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(tolerance);
        expect(text).not.toMatch(/e/i);
      }),
      { seed: 1, numRuns: 2000 },
    );
  });

  it('leaves out zeros that say nothing in nominal figures', () => {
    expect(atMostDigits(250, 3)).toBe('250');
    expect(atMostDigits(0.1 + 0.2, 3)).toBe('0.3');
    expect(atMostDigits(1.005, 3)).toBe('1.01');
    expect(atMostDigits(0, 3)).toBe('0');
    expect(atMostDigits(1000, 1)).toBe('1000');
  });
});

describe('a bound', () => {
  it('is rounded to the side on which it stays true', () => {
    expect(boundDigits(0.01231, 3, 'up')).toBe('0.0124');
    expect(boundDigits(0.01239, 3, 'down')).toBe('0.0123');
    expect(boundDigits(-1.239, 3, 'up')).toBe('-1.23');
    expect(boundDigits(0, 3, 'up')).toBe('0');
    expect(() => boundDigits(Number.NaN, 3, 'up')).toThrow(RangeError);
  });

  it('is never below the figure rounded up, and never above it rounded down', () => {
    fc.assert(
      fc.property(moderate, (value) => {
        expect(Number(boundDigits(value, 3, 'up'))).toBeGreaterThanOrEqual(value);
        expect(Number(boundDigits(value, 3, 'down'))).toBeLessThanOrEqual(value);
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});

describe('a value with its uncertainty', () => {
  it('ends at the second digit of the uncertainty', () => {
    expect(withUncertaintyDigits(91.6234, 1.37)).toEqual({ value: '91.6', uncertainty: '1.4' });
    expect(withUncertaintyDigits(12345, 678)).toEqual({ value: '12350', uncertainty: '680' });
    expect(withUncertaintyDigits(1, 0.0996)).toEqual({ value: '1.00', uncertainty: '0.10' });
  });

  it('keeps all digits where the uncertainty is zero', () => {
    expect(withUncertaintyDigits(0.25, 0)).toEqual({ value: '0.25', uncertainty: '0' });
  });

  it('refuses a negative or undefined uncertainty', () => {
    expect(() => withUncertaintyDigits(1, -0.1)).toThrow(RangeError);
    expect(() => withUncertaintyDigits(1, Number.NaN)).toThrow(RangeError);
  });
});

describe('decimal rounding', () => {
  it('rounds down and up by sign, not by size', () => {
    const rounded = (value: number, places: number, way: 'down' | 'up') =>
      decimalText(roundDecimal(decimalOf(value), places, way));
    expect(rounded(-1.21, 1, 'down')).toBe('-1.3');
    expect(rounded(-1.21, 1, 'up')).toBe('-1.2');
    expect(rounded(1.21, 1, 'down')).toBe('1.2');
    expect(rounded(-0.04, 1, 'up')).toBe('0.0');
    expect(rounded(149, -2, 'up')).toBe('200');
  });
});

describe('volumes and times', () => {
  it('shows small volumes in millilitres and others in litres', () => {
    expect(volumeText(0.25)).toBe('250 mL');
    expect(volumeText(0.57)).toBe('570 mL');
    expect(volumeText(1)).toBe('1 L');
    expect(volumeText(3.785411784)).toBe('3.79 L');
    expect(volumeText(0)).toBe('0 L');
  });

  it('shows times in the unit that keeps them readable', () => {
    expect(durationText(42.5)).toBe('42.5 s');
    expect(durationText(119)).toBe('119 s');
    expect(durationText(5400)).toBe('90 min');
    expect(durationText(30_600)).toBe('8.5 h');
    expect(durationText(604_800)).toBe('7 d');
  });
});
