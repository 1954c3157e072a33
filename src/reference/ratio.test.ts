import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BenchError } from '../findings/index.ts';
import {
  addRatio,
  applyRatio,
  divideRatio,
  exactRatio,
  multiplyRatio,
  ratioOfNumber,
  ratioText,
  ratioValue,
} from './ratio.ts';

describe('a factor kept as a ratio of whole numbers', () => {
  it('reads decimals without rounding and reduces them', () => {
    expect(exactRatio('3.785411784')).toEqual({ num: 473176473, den: 125000000 });
    expect(exactRatio('1e-9')).toEqual({ num: 1, den: 1000000000 });
    expect(exactRatio('-160/9')).toEqual({ num: -160, den: 9 });
    expect(exactRatio('0')).toEqual({ num: 0, den: 1 });
  });

  it('reads products and quotients from left to right', () => {
    expect(exactRatio('10*100.087/56.077')).toEqual({ num: 1000870, den: 56077 });
    expect(exactRatio('12/3/2')).toEqual({ num: 2, den: 1 });
  });

  it('refuses text, a division by zero and what whole numbers cannot hold', () => {
    for (const text of ['', 'abc', '1,5', '1/0', '1e400', '0.12345678901234567891']) {
      expect(() => exactRatio(text)).toThrow(BenchError);
    }
  });

  it('multiplies or divides once where one side is 1', () => {
    expect(applyRatio(5, exactRatio('1000'))).toBe(5000);
    expect(applyRatio(70, exactRatio('0.001'))).toBe(0.07);
    // The same step by a decimal factor drifts.
    expect(9 * 0.001).not.toBe(0.009);
    expect(applyRatio(9, exactRatio('0.001'))).toBe(0.009);
  });

  it('passes NaN, infinity, zero and negative values through', () => {
    const third = exactRatio('1/3');
    expect(applyRatio(Number.NaN, third)).toBeNaN();
    expect(applyRatio(Number.POSITIVE_INFINITY, third)).toBe(Number.POSITIVE_INFINITY);
    expect(applyRatio(0, third)).toBe(0);
    expect(applyRatio(-6, third)).toBe(-2);
  });

  it('answers null where a product, a quotient or a sum leaves the safe whole numbers', () => {
    const large = { num: Number.MAX_SAFE_INTEGER, den: 1 };
    expect(multiplyRatio(large, { num: 2, den: 1 })).toBeNull();
    expect(divideRatio(large, { num: 0, den: 1 })).toBeNull();
    expect(addRatio(large, large)).toBeNull();
    expect(ratioOfNumber(Number.NaN)).toBeNull();
    expect(ratioOfNumber(Number.POSITIVE_INFINITY)).toBeNull();
  });

  it('writes itself as the step of a trace', () => {
    expect(ratioText(exactRatio('1000'))).toBe('x 1000');
    expect(ratioText(exactRatio('0.001'))).toBe('/ 1000');
    expect(ratioText(exactRatio('17.118'))).toBe('x 17.118');
    expect(ratioText(exactRatio('5/9'))).toBe('x 5/9');
  });

  it('comes back to where it started: a product divided by one factor is the other', () => {
    const small = fc.record({
      num: fc.integer({ min: 1, max: 9999 }),
      den: fc.integer({ min: 1, max: 9999 }),
    });
    const property = fc.property(small, small, (a, b) => {
      const product = multiplyRatio(a, b);
      const back = product === null ? null : divideRatio(product, b);
      expect(back === null ? null : ratioValue(back)).toBe(ratioValue(a));
    });
    fc.assert(property, { seed: 1, numRuns: 500 });
  });
});
