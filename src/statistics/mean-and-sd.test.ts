import { describe, expect, it } from 'vitest';
import { arithmeticMean, sampleCovariance, sampleSd } from './mean-and-sd.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

describe('Mean, standard deviation and covariance', () => {
  it('give the values their comments quote', () => {
    expect(arithmeticMean([1, 2, 4])).toBe(7 / 3);
    expect(sampleSd([2, 4, 4, 4, 5, 5, 7, 9])).toBeCloseTo(Math.sqrt(32 / 7), 15);
    expect(sampleCovariance([1, 2, 3], [2, 4, 6])).toBe(2);
  });

  it('find no spread in equal numbers, however large', () => {
    expect(sampleSd([1e15 + 0.3, 1e15 + 0.3, 1e15 + 0.3])).toBe(0);
  });

  it('accept one number for the mean only', () => {
    expect(arithmeticMean([-3])).toBe(-3);
    expect(() => sampleSd([1])).toThrow(refused);
    expect(() => sampleCovariance([1], [1])).toThrow(refused);
  });

  it('refuse nothing, NaN, infinity and lists of different length', () => {
    expect(() => arithmeticMean([])).toThrow(refused);
    expect(() => arithmeticMean([1, Number.NaN])).toThrow(refused);
    expect(() => sampleSd([1, Infinity])).toThrow(refused);
    expect(() => sampleCovariance([1, 2], [1, 2, 3])).toThrow(refused);
  });
});
