import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestTrip, rankTrips, type TripOption } from './rank-trips.ts';

function option(group: string, device: string, cost: number, settles: string[]): TripOption {
  return { group, feedCost: 10, device, cost, settles };
}

/** Every set of samples: one option a device and group at most, one feed a group. */
function everyChoice(options: readonly TripOption[]) {
  return Array.from({ length: 2 ** options.length }, (_, mask) => {
    const chosen = options.filter((_one, at) => (mask >> at) & 1);
    const places = chosen.map(({ group, device }) => `${group} ${device}`);
    const feeds = new Map(chosen.map(({ group, feedCost }) => [group, feedCost]));
    return {
      isPossible: new Set(places).size === places.length && chosen.length > 0,
      cost:
        chosen.reduce((sum, { cost }) => sum + cost, 0) +
        [...feeds.values()].reduce((sum, cost) => sum + cost, 0),
      settles: new Set(chosen.flatMap(({ settles }) => settles)).size,
    };
  }).filter(({ isPossible, settles }) => isPossible && settles > 0);
}

describe('the trip that settles most for its money', () => {
  it('does not exist where nothing is settled', () => {
    expect(bestTrip([], new Set(), new Set())).toBeNull();
    expect(bestTrip([option('a', 'one', 5, ['x'])], new Set(['x']), new Set())).toBeNull();
  });

  it('takes a second device along because the feed is shared', () => {
    const options = [option('a', 'one', 10, ['x']), option('a', 'two', 10, ['y'])];
    expect(bestTrip(options, new Set(), new Set())).toMatchObject({
      cost: 30,
      settles: ['x', 'y'],
    });
  });

  it('leaves out a device that would make each verdict dearer', () => {
    const options = [option('a', 'one', 10, ['x', 'y']), option('a', 'two', 100, ['z'])];
    expect(bestTrip(options, new Set(), new Set())?.settles).toEqual(['x', 'y']);
  });

  it('does not pay a feed twice', () => {
    const options = [option('a', 'one', 10, ['x'])];
    expect(bestTrip(options, new Set(), new Set(['a']))?.cost).toBe(10);
  });

  it('takes one of two sample counts of a device', () => {
    const options = [option('a', 'one', 10, ['x']), option('a', 'one', 20, ['x', 'y'])];
    expect(bestTrip(options, new Set(), new Set())).toMatchObject({
      cost: 30,
      settles: ['x', 'y'],
    });
  });

  it('keeps to a budget', () => {
    const options = [option('a', 'one', 10, ['x']), option('a', 'two', 12, ['y'])];
    expect(bestTrip(options, new Set(), new Set(), 20)?.settles).toEqual(['x']);
    expect(bestTrip(options, new Set(), new Set(), 19)).toBeNull();
  });

  // Verdicts belong to devices, so options of two devices never settle the same one.
  const optionArbitrary = fc
    .record({
      group: fc.constantFrom('a', 'b', 'c'),
      device: fc.constantFrom('one', 'two', 'three'),
      cost: fc.integer({ min: 1, max: 40 }),
      verdicts: fc.uniqueArray(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 3 }),
    })
    .map(({ group, device, cost, verdicts }) => ({
      group,
      device,
      cost,
      feedCost: { a: 5, b: 17, c: 40 }[group],
      settles: verdicts.map((at) => `${device} ${at}`),
    }));
  const optionsArbitrary = fc.array(optionArbitrary, { minLength: 1, maxLength: 9 });

  it('has the best ratio of all choices of samples over all groups', () => {
    fc.assert(
      fc.property(optionsArbitrary, (options) => {
        const trip = bestTrip(options, new Set(), new Set());
        const best = Math.max(...everyChoice(options).map(({ settles, cost }) => settles / cost));
        // Sums of whole numbers; one division each.
        expect((trip?.settles.length ?? 0) / (trip?.cost ?? 1)).toBeCloseTo(best, 12);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('in a row of trips settles everything that can be settled, never for a better rate later', () => {
    fc.assert(
      fc.property(optionsArbitrary, (options) => {
        const union = (list: readonly TripOption[]) =>
          new Set(list.flatMap(({ settles }) => settles));
        const trips = rankTrips(options, (all) => union(all.flatMap((one) => one.options)));
        expect(new Set(trips.flatMap(({ settles }) => settles))).toEqual(union(options));
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('keeps the sum of trips within a budget', () => {
    fc.assert(
      fc.property(optionsArbitrary, fc.integer({ min: 1, max: 120 }), (options, budget) => {
        const confirm = (all: readonly { readonly options: readonly TripOption[] }[]) =>
          new Set(all.flatMap((one) => one.options.flatMap(({ settles }) => settles)));
        const trips = rankTrips(options, confirm, budget);
        expect(trips.reduce((sum, { cost }) => sum + cost, 0)).toBeLessThanOrEqual(budget);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('is dropped where judging anew shows that it adds nothing', () => {
    expect(rankTrips([option('a', 'one', 5, ['x'])], () => new Set())).toEqual([]);
  });
});
