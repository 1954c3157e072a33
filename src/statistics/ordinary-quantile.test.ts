import { describe, expect, it } from 'vitest';
import { ordinaryQuantile } from './ordinary-quantile.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

describe('Quantile of plain numbers', () => {
  it('interpolates between ordered values', () => {
    expect(ordinaryQuantile([4, 1, 3, 2], 0.25)).toBe(1.75);
    expect(ordinaryQuantile([4, 1, 3, 2], 0.5)).toBe(2.5);
  });

  it('gives the ends for 0 and 1 and one number for every probability', () => {
    expect(ordinaryQuantile([5, 2, 9], 0)).toBe(2);
    expect(ordinaryQuantile([5, 2, 9], 1)).toBe(9);
    expect(ordinaryQuantile([-7], 0.3)).toBe(-7);
  });

  it('leaves the list as it was', () => {
    const values = [3, 1, 2];
    ordinaryQuantile(values, 0.5);
    expect(values).toEqual([3, 1, 2]);
  });

  it('refuses nothing, NaN and what is not a probability', () => {
    expect(() => ordinaryQuantile([], 0.5)).toThrow(refused);
    expect(() => ordinaryQuantile([1, Number.NaN], 0.5)).toThrow(refused);
    expect(() => ordinaryQuantile([1], 1.5)).toThrow(refused);
  });
});
