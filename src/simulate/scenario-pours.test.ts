import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PourGroup } from './pour-group.ts';
import { scenarioPours } from './scenario-pours.ts';
import { simulateDrain } from './simulate-drain.ts';

const DAILY = Array<boolean>(7).fill(true);
const CARAFE: PourGroup = {
  weekdays: DAILY,
  fromS: 0,
  toS: 60,
  poursPerDay: 1,
  volumeL: 1,
  spread: 'together',
};

describe('scenarioPours', () => {
  it('gives the example of its description', () => {
    const options = { days: 1, seed: 1, cleanFlowLPerMin: 2 };
    expect([...scenarioPours([CARAFE, CARAFE], options).atS]).toEqual([0, 30]);
  });

  it('is empty without groups', () => {
    expect(scenarioPours([], { days: 5, seed: 1 })).toEqual({
      atS: new Float64Array(0),
      volumeL: new Float64Array(0),
    });
  });

  it('merges groups in order of time, ties in the order of the groups', () => {
    const glasses: PourGroup = {
      ...CARAFE,
      toS: 400,
      poursPerDay: 2,
      volumeL: 0.25,
      spread: 'even',
    };
    const bottle: PourGroup = { ...CARAFE, fromS: 100, toS: 101, volumeL: 0.5 };
    const { atS, volumeL } = scenarioPours([bottle, glasses, CARAFE], { days: 1, seed: 1 });
    expect([...atS]).toEqual([0, 100, 100, 300]);
    expect([...volumeL]).toEqual([1, 0.5, 0.25, 0.25]);
  });

  it('lets a pour wait for the one that runs, whatever its group', () => {
    const glass: PourGroup = { ...CARAFE, fromS: 10, volumeL: 0.5 };
    const { atS } = scenarioPours([CARAFE, glass], { days: 1, seed: 1, cleanFlowLPerMin: 1 });
    expect([...atS]).toEqual([0, 60]);
  });

  it('draws each random group from a stream of its own', () => {
    const random: PourGroup = { ...CARAFE, toS: 80_000, poursPerDay: 5, spread: 'random' };
    const other: PourGroup = { ...random, volumeL: 9 };
    const alone = scenarioPours([random], { days: 30, seed: 4 });
    const both = scenarioPours([random, other], { days: 30, seed: 4 });
    const ofFirst = [...both.atS].filter((_, index) => both.volumeL[index] === 1);
    expect(ofFirst).toEqual([...alone.atS]);
    const ofOther = [...both.atS].filter((_, index) => both.volumeL[index] === 9);
    expect(ofOther).not.toEqual(ofFirst);
  });

  it('refuses a flow that is not above 0 and a seed that is not whole', () => {
    const random: PourGroup = { ...CARAFE, spread: 'random' };
    expect(() => scenarioPours([], { days: 1, seed: 1, cleanFlowLPerMin: -1 })).toThrow('is -1');
    expect(() => scenarioPours([random], { days: 1, seed: 0.5 })).toThrow('seed is 0.5');
  });

  it('always gives pours the simulation accepts, of the whole volume', () => {
    const group = fc.record({
      weekdays: fc.array(fc.boolean(), { minLength: 7, maxLength: 7 }),
      fromS: fc.integer({ min: 0, max: 80_000 }),
      toS: fc.integer({ min: 80_001, max: 86_400 }),
      poursPerDay: fc.integer({ min: 0, max: 20 }),
      volumeL: fc.double({ min: 0, max: 5, noNaN: true }),
      spread: fc.constantFrom('even' as const, 'together' as const, 'random' as const),
    });
    fc.assert(
      fc.property(
        fc.array(group, { maxLength: 4 }),
        fc.integer(),
        fc.double({ min: 0.05, max: 5, noNaN: true }),
        (groups, seed, cleanFlowLPerMin) => {
          const pours = scenarioPours(groups, { days: 9, seed, cleanFlowLPerMin });
          const device = { drainRatio: 1, cleanFlowLPerMin, flushRules: [] };
          const played = simulateDrain(device, pours, { endS: 1e9 });
          const volumeL = pours.volumeL.reduce((sum, litres) => sum + litres, 0);
          expect(played.cleanL).toBeCloseTo(volumeL, 6);
        },
      ),
      { seed: 1, numRuns: 300 },
    );
  });
});
