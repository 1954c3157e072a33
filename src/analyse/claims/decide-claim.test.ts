import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decideAtLeast, decideAtMost } from './decide-claim.ts';

describe('a claim of at least a reduction', () => {
  it('is met where the lower bound reaches it, also exactly', () => {
    expect(decideAtLeast({ low: 0.99, high: 0.995 }, 0.99)).toBe('meets');
    expect(decideAtLeast({ low: 1 - 0.3 / 10, high: 1 }, 0.97)).toBe('meets');
  });

  it('is not decided where the upper bound equals it', () => {
    expect(decideAtLeast({ low: 0.95, high: 0.99 }, 0.99)).toBe('cannot-say');
  });

  it('is missed by a rise, and not decided without any bound', () => {
    expect(decideAtLeast({ low: -0.8, high: -0.2 }, 0.5)).toBe('misses');
    expect(decideAtLeast({ low: Number.NEGATIVE_INFINITY, high: 1 }, 0.5)).toBe('cannot-say');
  });

  it('is not decided by figures that are not numbers', () => {
    expect(decideAtLeast({ low: Number.NaN, high: Number.NaN }, 0.5)).toBe('cannot-say');
  });

  it('is never both: a higher claim is never easier to meet', () => {
    const rank = { meets: 2, 'cannot-say': 1, misses: 0 };
    const share = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, share, share, (a, b, c, d) => {
        const interval = { low: Math.min(a, b), high: Math.max(a, b) };
        const easy = decideAtLeast(interval, Math.min(c, d));
        const hard = decideAtLeast(interval, Math.max(c, d));
        expect(rank[easy]).toBeGreaterThanOrEqual(rank[hard]);
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});

describe('a claim of at most a level', () => {
  it('is met by a product that was not detected below it', () => {
    expect(decideAtMost({ low: 0, high: 0.5 }, 5)).toBe('meets');
    expect(decideAtMost({ low: 0, high: 5 }, 5)).toBe('meets');
  });

  it('is not decided where the level lies inside what is possible', () => {
    expect(decideAtMost({ low: 0, high: 10 }, 5)).toBe('cannot-say');
    expect(decideAtMost({ low: 0, high: Number.POSITIVE_INFINITY }, 5)).toBe('cannot-say');
  });

  it('is missed where all of it lies above, also above range and at a level of zero', () => {
    expect(decideAtMost({ low: 6, high: 7 }, 5)).toBe('misses');
    expect(decideAtMost({ low: 2420, high: Number.POSITIVE_INFINITY }, 0)).toBe('misses');
    expect(decideAtMost({ low: 0, high: 0 }, 0)).toBe('meets');
  });
});
