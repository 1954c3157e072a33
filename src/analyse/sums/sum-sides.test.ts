import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sumIntervals } from './sum-sides.ts';

describe('a sum of intervals', () => {
  it('adds what was not detected as 0 at the low end and as its limit at the high end', () => {
    expect(
      sumIntervals([
        { low: 0, high: 1 },
        { low: 2, high: 2 },
      ]),
    ).toEqual({ low: 2, high: 3 });
  });

  it('of nothing is nothing, and of one interval that interval', () => {
    expect(sumIntervals([])).toEqual({ low: 0, high: 0 });
    expect(sumIntervals([{ low: 0.5, high: 0.75 }])).toEqual({ low: 0.5, high: 0.75 });
  });

  it('has no upper end where a member has none', () => {
    const sum = sumIntervals([
      { low: 0, high: Number.POSITIVE_INFINITY },
      { low: 1, high: 1 },
    ]);
    expect(sum).toEqual({ low: 1, high: Number.POSITIVE_INFINITY });
  });

  it('weighs its members', () => {
    expect(
      sumIntervals(
        [
          { low: 1, high: 2 },
          { low: 3, high: 3 },
        ],
        [0.5, 2],
      ),
    ).toEqual({
      low: 6.5,
      high: 7,
    });
  });

  it('does not depend on the order of its members and holds any sum of values inside them', () => {
    const part = fc
      .tuple(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 1e6, noNaN: true }),
      )
      .map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) }));
    fc.assert(
      fc.property(
        fc.array(part, { maxLength: 30 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (parts, at) => {
          const sum = sumIntervals(parts);
          const turned = sumIntervals([...parts].reverse());
          // Rounding of 30 terms up to 1e6.
          expect(Math.abs(sum.low - turned.low)).toBeLessThan(1e-8);
          const inside = parts.reduce((all, { low, high }) => all + low + at * (high - low), 0);
          expect(inside).toBeGreaterThanOrEqual(sum.low - 1e-8);
          expect(inside).toBeLessThanOrEqual(sum.high + 1e-8);
        },
      ),
      { seed: 1, numRuns: 300 },
    );
  });
});
