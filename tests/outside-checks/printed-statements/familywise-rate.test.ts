import { describe, expect, it } from 'vitest';
import type { ReductionFact, UncertainSide } from '../../../src/analyse/index.ts';
import { tellApart } from '../../../src/compare/index.ts';
import { randomStream } from '../../../src/simulate/index.ts';
import { reading, reported } from './lab-readings.ts';
import { beyondChance } from './page.ts';

const SEED = 7;
const TRIALS = 1500;

/** A device tested once or more, all on the feeds of the same events. */
function fact(device: string, event: string, feed: UncertainSide, product: UncertainSide) {
  const analyte = { key: 'tracer', name: 'Tracer', unit: 'ug/L' };
  return {
    row: {
      device,
      variant: 'standard',
      event,
      kind: 'natural',
      analyte: analyte.key,
      outcome: 'measured',
      firm: true,
      feed: { sample: event },
      reduction: { interval_low: 0 },
    },
    analyte,
    feed: { ...feed, results: [event.length] },
    product,
    feedJoin: 'mean',
    feedRange: 0,
    voidSamples: [],
  } as unknown as ReductionFact;
}

interface Cell {
  readonly devices: number;
  readonly events: number;
  readonly feed: number;
  readonly products: (device: number) => number;
  readonly relative: number;
}

/** Shares of trials in which any pair is falsely called different, and falsely equivalent. */
function falseShares({ devices, events, feed, products, relative }: Cell, stream: number) {
  const random = randomStream(SEED, stream);
  const next = () => random.nextFraction();
  const read = (truth: number) =>
    reported(reading(truth, relative, 'normal', next), relative, 'reporting');
  let differ = 0;
  let unadjusted = 0;
  let equivalent = 0;
  const margin = 0.05;
  for (let trial = 0; trial < TRIALS; trial += 1) {
    const facts = Array.from({ length: events }, (_, event) => {
      const water = read(feed);
      return Array.from({ length: devices }, (_, at) =>
        fact(`d${at}`, `e${'x'.repeat(event)}`, water, read(products(at))),
      );
    }).flat();
    const judge = (confidence: number) =>
      tellApart(facts, { confidence, correlation: 0, margin })[0]?.pairs ?? [];
    const pairs = judge(0.95);
    const truthOf = (device: string): number => products(Number(device.slice(1)));
    if (
      pairs.some(({ verdict, lower, a, b }) => {
        const gap = truthOf(a.device) - truthOf(b.device);
        return verdict === 'differ' && (gap === 0 || (lower === 'a') === gap > 0);
      })
    )
      differ += 1;
    if (
      pairs.some(
        ({ isWithinMargin, a, b }) =>
          isWithinMargin && Math.abs(truthOf(a.device) - truthOf(b.device)) / feed > margin,
      )
    )
      equivalent += 1;
    // The same data without regard to the number of comparisons.
    const count = (devices * (devices - 1)) / 2;
    if (judge(1 - 0.05 * count).some(({ verdict }) => verdict === 'differ')) unadjusted += 1;
  }
  return {
    differ: differ / TRIALS,
    unadjusted: unadjusted / TRIALS,
    equivalent: equivalent / TRIALS,
  };
}

// Own simulation, no outside source; derivation in docs/methods.md. Tolerance: three standard errors
// of a share of 5 % at 1500 trials, 0.017.
const LIMIT = beyondChance(TRIALS);

describe('devices that all let the same through', () => {
  it.each([
    { devices: 2, events: 1, feed: 300, passes: 60, relative: 0.05 },
    { devices: 6, events: 1, feed: 300, passes: 60, relative: 0.05 },
    { devices: 6, events: 1, feed: 300, passes: 60, relative: 0.2 },
    { devices: 6, events: 3, feed: 300, passes: 60, relative: 0.1 },
    { devices: 6, events: 1, feed: 100, passes: 1.1, relative: 0.05 },
    { devices: 6, events: 1, feed: 100, passes: 0.9, relative: 0.1 },
    { devices: 6, events: 1, feed: 2, passes: 1.5, relative: 0.1 },
  ])(
    'are told apart in at most 5 % of trials: $devices devices, $events events, feed $feed, product $passes, $relative',
    ({ devices, events, feed, passes, relative }) => {
      const cell = { devices, events, feed, relative, products: () => passes };
      const { differ } = falseShares(cell, devices * events + Math.round(passes * relative * 100));
      expect(differ).toBeLessThanOrEqual(LIMIT);
    },
  );

  it('would be told apart in more than a fifth of trials if comparisons were not counted', () => {
    // Confidence 0.25 shared among 15 pairs is 0.95 for each: what the counting guards against.
    const cell = { devices: 6, events: 1, feed: 300, relative: 0.05, products: () => 60 };
    const { differ, unadjusted } = falseShares(cell, 99);
    expect(unadjusted).toBeGreaterThan(0.2);
    // A rule that never tells anything apart would pass the limit above.
    expect(differ).toBeGreaterThan(0.01);
  });
});

describe('devices of which some differ', () => {
  it('are called the wrong way round, or equivalent beyond the margin, in at most 5 % of trials', () => {
    const levels = [30, 30, 31, 46, 60, 60];
    const cell = {
      devices: 6,
      events: 1,
      feed: 300,
      relative: 0.05,
      products: (device: number) => levels[device] ?? 30,
    };
    const { differ, equivalent } = falseShares(cell, 5);
    expect(differ).toBeLessThanOrEqual(LIMIT);
    expect(equivalent).toBeLessThanOrEqual(LIMIT);
  });
});
