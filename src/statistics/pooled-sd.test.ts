import { describe, expect, it } from 'vitest';
import { pooledRelativeSd, pooledSd } from './pooled-sd.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

const pairs = [
  [10.2, 9.8],
  [5.1, 5.6],
  [22, 20.9],
  [7.7, 7.7],
];

describe('Pooled standard deviation', () => {
  it('is 0.45 for four pairs of duplicates', () => {
    expect(pooledSd(pairs).sd).toBeCloseTo(0.45, 14);
    expect(pooledSd(pairs).degreesOfFreedom).toBe(4);
  });

  it('is the plain one for one group', () => {
    expect(pooledRelativeSd([[9, 11]]).sd).toBeCloseTo(Math.SQRT2 / 10, 15);
    expect(pooledSd([[1, 2, 3]])).toEqual({ sd: 1, degreesOfFreedom: 2 });
  });

  it('weighs groups by their degrees of freedom', () => {
    // (1 × 2 + 2 × 1) / 3 by hand.
    expect(
      pooledSd([
        [1, 3],
        [1, 2, 3],
      ]).sd,
    ).toBeCloseTo(Math.sqrt(4 / 3), 14);
  });

  it('refuses no group, a group of one, NaN, and a relative one about zero', () => {
    expect(() => pooledSd([])).toThrow(refused);
    expect(() => pooledSd([[1, 2], [3]])).toThrow(refused);
    expect(() => pooledSd([[1, Number.NaN]])).toThrow(refused);
    expect(() => pooledRelativeSd([[-1, 1]])).toThrow(refused);
  });
});
