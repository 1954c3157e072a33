import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinPassages, passageOf, productBounds } from './product-bounds.ts';

const fraction = fc.double({ min: 0, max: 1, noNaN: true });
const level = fc.double({ min: 0, max: 1e6, noNaN: true });
const interval = (value: fc.Arbitrary<number>) =>
  fc.tuple(value, value).map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) }));
/** A point of an interval: its ends included. */
const within = ({ low, high }: { low: number; high: number }, share: number) =>
  Math.min(high, low + share * (high - low));

describe('the passage behind a reduction', () => {
  it('is what the reduction leaves, end by end', () => {
    expect(passageOf({ interval_low: 0.75, interval_high: 0.875 })).toEqual({
      low: 0.125,
      high: 0.25,
    });
  });

  it('may be nothing where complete removal is possible', () => {
    expect(passageOf({ interval_low: 0.9, interval_high: null }).low).toBe(0);
    expect(passageOf({ interval_low: 0.9, interval_high: 1.2 }).low).toBe(0);
  });

  it('has no upper end where nothing bounds the reduction from below', () => {
    expect(passageOf({ interval_low: null, interval_high: null }).high).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  it('exceeds 1 where the product may lie above the feed', () => {
    expect(passageOf({ interval_low: -0.5, interval_high: 0 })).toEqual({ low: 1, high: 1.5 });
  });
});

describe('passages of several events', () => {
  it('reach from the lowest to the highest, whatever their order', () => {
    const events = [
      { low: 0.1, high: 0.2 },
      { low: 0, high: 0.05 },
      { low: 0.15, high: 0.3 },
    ];
    expect(joinPassages(events)).toEqual({ low: 0, high: 0.3 });
    expect(joinPassages([...events].reverse())).toEqual({ low: 0, high: 0.3 });
  });

  it('are those of the event where there is one or all are equal', () => {
    const one = { low: 0.1, high: 0.2 };
    expect(joinPassages([one])).toEqual(one);
    expect(joinPassages([one, one, one])).toEqual(one);
  });

  it('need an event', () => {
    expect(() => joinPassages([])).toThrow(RangeError);
  });
});

describe('bounds of the product with another feed', () => {
  it('are the feed times the passage, end by end', () => {
    expect(productBounds({ low: 90, high: 110 }, { low: 0, high: 0.02 })).toEqual({
      low: 0,
      high: 2.2,
    });
  });

  it('are nothing for a feed of nothing', () => {
    expect(productBounds({ low: 0, high: 0 }, { low: 0.1, high: 0.2 })).toEqual({
      low: 0,
      high: 0,
    });
  });

  it('are refused where an end is unknown or negative', () => {
    const passage = { low: 0, high: 0.1 };
    expect(() => productBounds({ low: 1, high: Number.POSITIVE_INFINITY }, passage)).toThrow();
    expect(() => productBounds({ low: -1, high: 1 }, passage)).toThrow();
    expect(() => productBounds({ low: Number.NaN, high: 1 }, passage)).toThrow();
    expect(() =>
      productBounds({ low: 1, high: 1 }, { low: 0, high: Number.POSITIVE_INFINITY }),
    ).toThrow();
  });

  it('hold the product of every true feed and true passage inside what was stated', () => {
    fc.assert(
      fc.property(
        interval(level),
        fc.array(interval(fraction), { minLength: 1, maxLength: 5 }),
        fraction,
        fraction,
        fraction,
        (feed, events, event, atFeed, atPassage) => {
          const tested = events[Math.min(events.length - 1, Math.floor(event * events.length))];
          if (tested === undefined) return;
          const product = within(feed, atFeed) * within(tested, atPassage);
          const bounds = productBounds(feed, joinPassages(events));
          expect(product).toBeGreaterThanOrEqual(bounds.low);
          expect(product).toBeLessThanOrEqual(bounds.high);
        },
      ),
      { seed: 1, numRuns: 500 },
    );
  });

  it('hold a constant release beside a constant share, between two levels that were tested', () => {
    const positive = fc.double({ min: 0.001, max: 1000, noNaN: true });
    fc.assert(
      fc.property(positive, positive, fraction, level, fraction, (a, b, share, release, at) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const passages = [low, high].map((feed) => {
          const passage = (share * feed + release) / feed;
          return { low: passage, high: passage };
        });
        const feed = within({ low, high }, at);
        const product = share * feed + release;
        const bounds = productBounds({ low: feed, high: feed }, joinPassages(passages));
        // Rounding of the division and the product: a few units in the last place, of the smallest
        // doubles too.
        expect(product).toBeGreaterThanOrEqual(bounds.low * (1 - 1e-12) - 1e-300);
        expect(product).toBeLessThanOrEqual(bounds.high * (1 + 1e-12) + 1e-300);
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it('never narrow where the feed is known less well', () => {
    fc.assert(
      fc.property(interval(level), interval(fraction), level, level, (feed, passage, down, up) => {
        const wider = { low: Math.max(0, feed.low - down), high: feed.high + up };
        const before = productBounds(feed, passage);
        const after = productBounds(wider, passage);
        expect(after.low).toBeLessThanOrEqual(before.low);
        expect(after.high).toBeGreaterThanOrEqual(before.high);
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});
