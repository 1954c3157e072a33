import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type PourGroup,
  randomStream,
  scenarioPours,
  scenarioYears,
  simulateDrain,
} from './index.ts';
import { yearPlayer } from './play-years.ts';

const DAILY = Array<boolean>(7).fill(true);
const GLASSES: PourGroup = {
  weekdays: DAILY,
  fromS: 25_200,
  toS: 79_200,
  poursPerDay: 9,
  volumeL: 0.25,
  spread: 'random',
};
const CARAFE: PourGroup = { ...GLASSES, poursPerDay: 2, volumeL: 1.5, spread: 'together' };
const DEVICE = {
  drainRatio: 0.8,
  perStartL: 0.02,
  cleanFlowLPerMin: 1.5,
  flushRules: [
    { rule: 'rinse', trigger: 'idle', afterS: 600, volumeL: 1.2 },
    { rule: 'by volume', trigger: 'produced', afterL: 20, volumeL: 2 },
    { rule: 'half day', trigger: 'interval', afterS: 43_200, volumeL: 0.7, water: 'clean' },
  ],
} as const;
const DAYS = 28;
const HORIZON = { endS: DAYS * 86_400 };

describe('years played one after the other', () => {
  it('come to what each comes to when it is simulated alone', () => {
    const years = scenarioYears([GLASSES, CARAFE], { days: DAYS });
    const player = yearPlayer(DEVICE, HORIZON, 3);
    for (const seed of [0, 1, 2]) {
      years.draw((group) => randomStream(seed, group));
      player.play(seed, years.pours(DEVICE.cleanFlowLPerMin));
    }
    const { cleanL, starts, flushes } = player.played;
    for (const seed of [0, 1, 2]) {
      const pours = scenarioPours([GLASSES, CARAFE], {
        days: DAYS,
        seed,
        cleanFlowLPerMin: DEVICE.cleanFlowLPerMin,
      });
      const alone = simulateDrain(DEVICE, pours, HORIZON);
      expect(cleanL[seed]).toBe(alone.cleanL);
      expect(starts[seed]).toBe(pours.atS.length);
      expect(flushes.map((column) => column[seed])).toEqual(Object.values(alone.flushCounts));
    }
  });

  it('do not depend on the year drawn before', () => {
    const years = scenarioYears([GLASSES], { days: DAYS });
    const of = (seed: number) => {
      years.draw((group) => randomStream(seed, group));
      return [...years.pours(2).atS];
    };
    const first = of(1);
    of(2);
    expect(of(1)).toEqual(first);
  });

  it('hold more water in proportion when every pour is larger', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 3, noNaN: true }), (factor) => {
        const years = scenarioYears([GLASSES, CARAFE], { days: 7 });
        const litres = (pourFactor: number) => {
          years.draw((group) => randomStream(5, group), pourFactor);
          return years.pours().volumeL.reduce((sum, pourL) => sum + pourL, 0);
        };
        const usual = litres(1);
        expect(Math.abs(litres(factor) / usual - factor)).toBeLessThan(1e-9);
      }),
      { seed: 1, numRuns: 50 },
    );
  });

  it('have no pour on days away, and the others as before where pours are not random', () => {
    const even: PourGroup = { ...GLASSES, poursPerDay: 2, spread: 'even' };
    const away = [{ fromDay: 2, days: 3 }];
    const all = [...scenarioPours([even], { days: 7, seed: 1 }).atS];
    const left = [...scenarioPours([even], { days: 7, seed: 1, away }).atS];
    expect(left).toEqual(all.filter((atS) => atS < 86_400 || atS >= 4 * 86_400));
    expect(left).toHaveLength(8);
  });

  it('refuse a stay away that is not counted in whole days from 1', () => {
    for (const away of [
      { fromDay: 0, days: 1 },
      { fromDay: 1, days: 0.5 },
      { fromDay: NaN, days: 1 },
    ]) {
      expect(() => scenarioPours([GLASSES], { days: 7, seed: 1, away: [away] })).toThrow(/away/);
    }
  });

  it('without a pour hold no clean water, and the flushes of the clock only', () => {
    const player = yearPlayer(DEVICE, HORIZON, 1);
    const years = scenarioYears([], { days: DAYS });
    years.draw((group) => randomStream(1, group));
    player.play(0, years.pours(1.5));
    expect(player.played.cleanL[0]).toBe(0);
    expect(player.played.flushes.map((column) => column[0])).toEqual([0, 0, 2 * DAYS]);
  });
});
