import { describe, expect, it } from 'vitest';
import { compensatedSum } from './compensated-sum.ts';

describe('Compensated sum', () => {
  it('keeps what a plain loop loses between large and small numbers', () => {
    expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2);
    expect(compensatedSum(Array.from({ length: 10 }, () => 0.1))).toBe(1);
  });

  it('gives zero for nothing and one number back', () => {
    expect(compensatedSum([])).toBe(0);
    expect(compensatedSum([-3.5])).toBe(-3.5);
  });

  it('passes on NaN and infinity', () => {
    expect(compensatedSum([1, Number.NaN])).toBeNaN();
    expect(compensatedSum([1, Infinity, 2])).toBe(Infinity);
  });
});
