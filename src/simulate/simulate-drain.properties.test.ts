import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DrainDevice, FlushRule, FlushTrigger } from './drain-device.ts';
import { randomStream } from './random-stream.ts';
import { simulateDrain } from './simulate-drain.ts';

const END_S = 50_000;
const HORIZON = { endS: END_S, clockAtStartS: 70_000, recordFlushes: true };

/** Devices and pours at odd moments, so that no two events meet by chance. */
function draw(seed: number) {
  const { nextFraction } = randomStream(seed);
  const between = (low: number, high: number) => low + (high - low) * nextFraction();
  const triggers: FlushTrigger[] = ['idle', 'idle', 'interval', 'start', 'produced', 'power-on'];
  const flushRules = triggers.map((trigger, row): FlushRule => {
    const rule = { rule: `${trigger} ${row}`, trigger, volumeL: between(0, 2) };
    const fromS = between(0, 86_400);
    return {
      ...rule,
      afterS: between(200, 9000),
      afterL: between(0.5, 5),
      repeat: nextFraction() < 0.5,
      drainFraction: between(0, 1),
      water: nextFraction() < 0.3 ? 'clean' : 'feed',
      minIntervalS: nextFraction() < 0.5 ? between(0, 3000) : 0,
      ...(nextFraction() < 0.5
        ? { quiet: { fromS, toS: between(0, 86_400), mode: 'defer' as const } }
        : {}),
    };
  });
  const gaps = Array.from({ length: 20 }, () => between(1, 5000));
  const atS: number[] = [];
  for (const gapS of gaps) atS.push((atS.at(-1) ?? 0) + gapS);
  const pours = { atS, volumeL: gaps.map(() => between(0.05, 2)) };
  const device: DrainDevice = { drainRatio: between(0, 4), perStartL: between(0, 0.2), flushRules };
  return { device, pours, between };
}

const SEEDS = { seed: 1, numRuns: 300 };

describe('simulateDrain, properties', () => {
  it('drains at least the ratio times the clean volume', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { device, pours } = draw(seed);
        const played = simulateDrain(device, pours, HORIZON);
        expect(played.totalDrainL).toBeGreaterThanOrEqual(device.drainRatio * played.cleanL);
        expect(played.recovery).toBeLessThanOrEqual(1 / (1 + device.drainRatio));
      }),
      SEEDS,
    );
  });

  it('drains at most one flush per pour more, for an idle rule that does not repeat', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { pours, between } = draw(seed);
        const volumeL = between(0, 2);
        const rule: FlushRule = { rule: 'i', trigger: 'idle', afterS: between(0, 5000), volumeL };
        const device = { drainRatio: between(0, 4), flushRules: [rule] };
        const { cleanL, totalDrainL } = simulateDrain(device, pours, { endS: 1e6 });
        const producingL = device.drainRatio * cleanL;
        // The last flush always comes; 1e-9 L allows for the rounding of the sum.
        expect(totalDrainL).toBeGreaterThanOrEqual(producingL + volumeL - 1e-9);
        expect(totalDrainL).toBeLessThanOrEqual(producingL + volumeL * pours.atS.length + 1e-9);
      }),
      SEEDS,
    );
  });

  it('does not depend on the order of the rules when no two are due at one instant', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { device, pours } = draw(seed);
        const turned = { ...device, flushRules: device.flushRules.toReversed() };
        const a = simulateDrain(device, pours, HORIZON);
        const b = simulateDrain(turned, pours, HORIZON);
        expect(b.flushes).toEqual(a.flushes);
        expect(b.flushDrainL).toBeCloseTo(a.flushDrainL, 9);
      }),
      SEEDS,
    );
  });

  it('doubles the drain while producing with the ratio, and leaves the flushes alone', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { device, pours } = draw(seed);
        const single = { ...device, perStartL: 0, flushRules: device.flushRules.map(feedOnly) };
        const once = simulateDrain(single, pours, HORIZON);
        const twice = simulateDrain(
          { ...single, drainRatio: 2 * single.drainRatio },
          pours,
          HORIZON,
        );
        expect(twice.producingDrainL).toBe(2 * once.producingDrainL);
        expect(twice.flushDrainL).toBe(once.flushDrainL);
        expect(twice.flushes).toEqual(once.flushes);
      }),
      SEEDS,
    );
  });

  it('does not change with a rule of 0 L where no rule looks at the last flush', () => {
    fc.assert(
      fc.property(fc.integer(), fc.nat(5), fc.nat(6), (seed, kind, place) => {
        const { device, pours } = draw(seed);
        const flushRules = device.flushRules.map(
          (rule): FlushRule => ({ ...rule, minIntervalS: 0 }),
        );
        const extra = { ...flushRules[kind], rule: 'nothing', volumeL: 0 } as FlushRule;
        const more = flushRules.toSpliced(place, 0, extra);
        const { flushCounts, flushes, ...without } = simulateDrain(
          { ...device, flushRules },
          pours,
          HORIZON,
        );
        const added = simulateDrain({ ...device, flushRules: more }, pours, HORIZON);
        expect(added).toMatchObject(without);
        expect(added.flushes?.filter(({ rule }) => rule !== 'nothing')).toEqual(flushes);
        expect(added.flushCounts).toMatchObject(flushCounts);
      }),
      SEEDS,
    );
  });

  it('goes on from a shorter horizon: its flushes are the first ones of a longer one', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { device, pours, between } = draw(seed);
        const endS = between(0, END_S);
        const long = simulateDrain(device, pours, HORIZON).flushes ?? [];
        const short = simulateDrain(device, pours, { ...HORIZON, endS }).flushes ?? [];
        expect(short).toEqual(long.filter(({ atS }) => atS <= endS));
      }),
      SEEDS,
    );
  });
});

function feedOnly({ water: _, ...rule }: FlushRule): FlushRule {
  return rule;
}
