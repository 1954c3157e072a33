import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outcomeOf, reductionBounds, type SideState } from './reduction-bounds.ts';

const point = (value: number): SideState => ({
  interval: { low: value, high: value },
  state: 'quantified',
});
const notDetected = (limit: number): SideState => ({
  interval: { low: 0, high: limit },
  state: 'notDetected',
});
const trace = (mdl: number, rl: number): SideState => ({
  interval: { low: mdl, high: rl },
  state: 'between',
});
const above = (limit: number): SideState => ({
  interval: { low: limit, high: Number.POSITIVE_INFINITY },
  state: 'aboveRange',
});

describe('bounds of a reduction', () => {
  it('stand at opposite corners of feed and product', () => {
    expect(reductionBounds({ low: 50, high: 50 }, { low: 0, high: 5 })).toEqual({
      low: 0.9,
      high: 1,
    });
  });

  it('a feed that may be zero bounds nothing from below', () => {
    expect(reductionBounds({ low: 0, high: 1 }, { low: 0, high: 1 })).toEqual({
      low: Number.NEGATIVE_INFINITY,
      high: 1,
    });
  });
});

describe('the one outcome of a pair', () => {
  it.each([
    ['untested without a product', point(10), null, 'untested'],
    ['untested without a feed', null, point(1), 'untested'],
    ['a rise where the product lies above the feed', point(10), point(12), 'rise'],
    ['a rise from a feed without the analyte', notDetected(0.5), point(1.2), 'rise'],
    ['untestable where neither side was found', notDetected(0.5), notDetected(0.5), 'untestable'],
    [
      'untestable where the feed is below the limit of the product',
      point(0.4),
      notDetected(0.5),
      'untestable',
    ],
    [
      'untestable where a trace meets the limit of the feed',
      notDetected(0.5),
      trace(0.5, 2),
      'untestable',
    ],
    ['no reduction shown where both are equal', point(10), point(10), 'not-shown'],
    ['at least where the product was not detected', point(150), notDetected(0.5), 'at-least'],
    ['at least where the feed is above range', above(1000), point(5), 'at-least'],
    ['between where the product is a trace', point(150), trace(0.5, 2), 'between'],
    ['between where the feed is a trace', trace(0.5, 2), point(0.1), 'between'],
    ['measured where both are quantified', point(150), point(3), 'measured'],
    ['untestable where both are above range', above(100), above(100), 'untestable'],
    ['a rise where a bounded feed meets a product above range', point(10), above(100), 'rise'],
  ] as const)('is %s', (_title, feed, product, outcome) => {
    expect(outcomeOf(feed, product)).toBe(outcome);
  });
});

const sideArbitrary = fc.oneof(
  fc.constant(null),
  fc.double({ min: 0.001, max: 1000, noNaN: true }).map(point),
  fc.double({ min: 0.001, max: 1000, noNaN: true }).map(notDetected),
  fc.double({ min: 0.001, max: 1000, noNaN: true }).map((mdl) => trace(mdl, mdl * 3)),
  fc.double({ min: 0.001, max: 1000, noNaN: true }).map(above),
);

describe('properties over all combinations of censoring', () => {
  it('every pair gets exactly one outcome, and the statement follows from the bounds', () => {
    fc.assert(
      fc.property(sideArbitrary, sideArbitrary, (feed, product) => {
        const outcome = outcomeOf(feed, product);
        if (feed === null || product === null) {
          expect(outcome).toBe('untested');
          return;
        }
        const { low, high } = reductionBounds(feed.interval, product.interval);
        const isQuantified = feed.state === 'quantified' && product.state === 'quantified';
        const claims = {
          untested: false,
          rise: product.interval.low > feed.interval.high,
          untestable: !isQuantified && !(low > 0),
          'not-shown': low <= 0 && high >= 0,
          'at-least': low > 0 && !isQuantified,
          between: low > 0 && !isQuantified,
          measured: isQuantified,
        };
        expect(claims[outcome]).toBe(true);
      }),
      { seed: 1, numRuns: 5000 },
    );
  });

  it('a reduction never grows when the product rises', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (feed, product, more) => {
          const interval = { low: feed, high: feed };
          const less = reductionBounds(interval, { low: product, high: product });
          const higher = reductionBounds(interval, { low: product + more, high: product + more });
          expect(higher.low).toBeLessThanOrEqual(less.low);
        },
      ),
      { seed: 1, numRuns: 1000 },
    );
  });

  it('every true value inside the two intervals lies inside the bounds', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.tuple(fc.double({ min: 0.01, max: 10, noNaN: true }), share, share),
        fc.tuple(fc.double({ min: 0, max: 10, noNaN: true }), share, share),
        ([feedLow, feedWidth, feedAt], [productLow, productWidth, productAt]) => {
          const feed = { low: feedLow, high: feedLow + feedWidth };
          const product = { low: productLow, high: productLow + productWidth };
          const trueFeed = feed.low + feedAt * (feed.high - feed.low);
          const trueProduct = product.low + productAt * (product.high - product.low);
          const { low, high } = reductionBounds(feed, product);
          const reduction = 1 - trueProduct / trueFeed;
          // Rounding of the interpolation only.
          expect(reduction).toBeGreaterThanOrEqual(low - 1e-9 * Math.abs(low));
          expect(reduction).toBeLessThanOrEqual(high + 1e-9);
        },
      ),
      { seed: 1, numRuns: 1000 },
    );
  });
});
