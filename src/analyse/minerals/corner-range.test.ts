import { describe, expect, it } from 'vitest';
import { cornerRange } from './corner-range.ts';

const at = (low: number, high = low) => ({ low, high });

describe('the range of an index over bounded inputs', () => {
  it('is a point where every input is', () => {
    expect(cornerRange([at(2), at(3)], ([a = 0, b = 0]) => a * b)).toEqual({ low: 6, high: 6 });
  });

  it('runs from the worst to the best corner where it rises with one and falls with another', () => {
    const range = cornerRange([at(1, 2), at(0, 3)], ([a = 0, b = 0]) => a - b);
    expect(range).toEqual({ low: -2, high: 2 });
  });

  it('is refused where the index turns within the bounds', () => {
    expect(cornerRange([at(-1, 2)], ([a = 0]) => a * a)).toBeNull();
  });

  it('is refused where a corner has no solution', () => {
    expect(cornerRange([at(0, 2)], ([a = 0]) => Math.log10(a))).toBeNull();
    expect(cornerRange([at(1)], () => Number.NaN)).toBeNull();
    expect(cornerRange([at(1)], () => null)).toBeNull();
  });
});
