import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feedStanding, isInside, type TestedFeed, testedRange } from './tested-range.ts';

const figure = (value: number, halfWidth = 0): TestedFeed => ({
  reported: { low: value, high: value },
  isFigure: true,
  halfWidth,
});
const between = (low: number, high: number): TestedFeed => ({
  reported: { low, high },
  isFigure: false,
  halfWidth: 0,
});

describe('the range of tested feeds', () => {
  it('reaches from the lowest to the highest figure, with their uncertainty', () => {
    expect(testedRange([figure(10, 1), figure(2, 0.25), figure(5, 1)])).toEqual({
      low: 1.75,
      high: 11,
    });
  });

  it('is the uncertainty of the figure where one level was tested', () => {
    expect(testedRange([figure(10, 1)])).toEqual({ low: 9, high: 11 });
    expect(testedRange([figure(10)])).toEqual({ low: 10, high: 10 });
  });

  it('is not widened without end by a figure that is known badly', () => {
    expect(testedRange([figure(10, 50)])).toEqual({ low: 8, high: 12 });
    expect(testedRange([figure(10, Number.POSITIVE_INFINITY)])).toEqual({ low: 8, high: 12 });
  });

  it('counts of an interval only what is certain', () => {
    expect(testedRange([between(1, 3), figure(10)])).toEqual({ low: 3, high: 10 });
    expect(testedRange([between(2400, Number.POSITIVE_INFINITY), figure(40)])).toEqual({
      low: 40,
      high: 2400,
    });
  });

  it('is not known where a non-detect or a trace is all there is', () => {
    expect(testedRange([between(0, 0.5)])).toBeNull();
    expect(testedRange([between(0.1, 0.5), between(0.1, 0.5)])).toBeNull();
  });

  it('is not known without any feed', () => {
    expect(testedRange([])).toBeNull();
  });

  it('never starts below nothing', () => {
    expect(testedRange([figure(0, 5)])).toEqual({ low: 0, high: 0 });
  });
});

describe('a feed against the tested range', () => {
  const range = { low: 2, high: 10 };

  it('lies inside with both ends included', () => {
    for (const value of [2, 5, 10]) expect(feedStanding(figure(value), range)).toBe('inside');
    expect(feedStanding(between(2, 10), range)).toBe('inside');
  });

  it('lies above where any part of it may', () => {
    expect(feedStanding(figure(10.01), range)).toBe('above');
    expect(feedStanding(between(5, 11), range)).toBe('above');
    expect(feedStanding(between(5, Number.POSITIVE_INFINITY), range)).toBe('above');
  });

  it('lies below as a figure, and as a non-detect whose limit lies below', () => {
    expect(feedStanding(figure(1.99), range)).toBe('below');
    expect(feedStanding(between(0, 1), range)).toBe('below');
  });

  it('reaches below as a non-detect whose limit lies inside', () => {
    expect(feedStanding(between(0, 5), range)).toBe('reaches-below');
  });

  it('is inside exactly where a figure lies between the ends', () => {
    const value = fc.double({ min: 0, max: 20, noNaN: true });
    fc.assert(
      fc.property(value, (level) => {
        const expected =
          level > 10 * (1 + 1e-9) ? 'above' : level < 2 * (1 - 1e-9) ? 'below' : null;
        const found = feedStanding(figure(level), range);
        if (expected !== null) expect(found).toBe(expected);
        if (level >= 2 && level <= 10) expect(found).toBe('inside');
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('takes a pH of 7.52 as inside 7.42 and a tenth', () => {
    expect(isInside(7.52, { low: 7.32, high: 7.42 + 0.1 })).toBe(true);
    expect(isInside(7.53, { low: 7.32, high: 7.42 + 0.1 })).toBe(false);
  });
});
