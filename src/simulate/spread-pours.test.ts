import { describe, expect, it } from 'vitest';
import type { PourGroup } from './pour-group.ts';
import { randomStream } from './random-stream.ts';
import { evenPours, randomPours, togetherPours } from './spread-pours.ts';

const DAY_S = 86_400;
const DAILY = Array<boolean>(7).fill(true);
const GROUP: PourGroup = {
  weekdays: DAILY,
  fromS: 25_200,
  toS: 32_400,
  poursPerDay: 4,
  volumeL: 0.25,
  spread: 'even',
};

describe('evenPours', () => {
  it('gives the example of its description', () => {
    const glasses = { ...GROUP, fromS: 0, toS: 400, poursPerDay: 2 };
    expect([...evenPours(glasses, 1).atS]).toEqual([100, 300]);
  });

  it('pours at the middle of each part of the window, every day that has pours', () => {
    const weekend = { ...GROUP, weekdays: [false, false, false, false, false, true, true] };
    const { atS, volumeL } = evenPours(weekend, 8);
    const saturday = [26_100, 27_900, 29_700, 31_500].map((clockS) => 5 * DAY_S + clockS);
    expect([...atS]).toEqual([...saturday, ...saturday.map((second) => second + DAY_S)]);
    expect([...volumeL]).toEqual(Array(8).fill(0.25));
  });

  it('puts a single pour in the middle of the window', () => {
    expect([...evenPours({ ...GROUP, poursPerDay: 1 }, 1).atS]).toEqual([28_800]);
  });

  it('is empty without pours, days or weekdays', () => {
    expect(evenPours({ ...GROUP, poursPerDay: 0 }, 3).atS).toHaveLength(0);
    expect(evenPours(GROUP, 0).atS).toHaveLength(0);
    expect(evenPours({ ...GROUP, weekdays: Array(7).fill(false) }, 7).atS).toHaveLength(0);
  });

  it('refuses part of a pour', () => {
    expect(() => evenPours({ ...GROUP, poursPerDay: 2.5 }, 1)).toThrow('poursPerDay is 2.5');
    expect(() => togetherPours({ ...GROUP, poursPerDay: 2.5 }, 1)).toThrow('poursPerDay is 2.5');
  });
});

describe('togetherPours', () => {
  it('gives the example of its description', () => {
    const carafe = { ...GROUP, fromS: 0, toS: 400, poursPerDay: 2, volumeL: 1 };
    expect([...togetherPours(carafe, 1, 2).atS]).toEqual([0, 30]);
  });

  it('starts all at the start of the window when no flow is known', () => {
    expect([...togetherPours(GROUP, 1).atS]).toEqual(Array(4).fill(25_200));
  });

  it('runs past the end of the window, and holds up the next day if it must', () => {
    const long = { ...GROUP, fromS: 0, toS: 60, poursPerDay: 3, volumeL: 600 };
    // Each pour takes 10 h at 1 L/min, the three of a day 30 h.
    expect([...togetherPours(long, 2, 1).atS].map((second) => second / 3600)).toEqual([
      0, 10, 20, 30, 40, 50,
    ]);
  });

  it('refuses a flow that is not above 0', () => {
    expect(() => togetherPours(GROUP, 1, 0)).toThrow('cleanFlowLPerMin is 0');
  });
});

describe('randomPours', () => {
  const glasses = { ...GROUP, fromS: 25_200, toS: 79_200, poursPerDay: 6.5 };

  it('gives near 6.5 × 365 pours, as its description says', () => {
    const count = randomPours(glasses, 365, randomStream(1)).atS.length;
    // Four standard deviations of a Poisson number of this mean; the seed is fixed.
    expect(Math.abs(count - 2372.5)).toBeLessThan(4 * Math.sqrt(2372.5));
  });

  it('gives the same pours for the same seed', () => {
    const draw = (seed: number) => [...randomPours(glasses, 7, randomStream(seed)).atS];
    expect(draw(5)).toEqual(draw(5));
    expect(draw(5)).not.toEqual(draw(6));
  });

  it('stays in the window and in order', () => {
    const { atS } = randomPours(glasses, 365, randomStream(2));
    for (const [index, second] of atS.entries()) {
      expect(second % DAY_S).toBeGreaterThanOrEqual(25_200);
      expect(second % DAY_S).toBeLessThan(79_200);
      expect(second).toBeGreaterThanOrEqual(atS[index - 1] ?? 0);
    }
  });

  it('has a Poisson number of pours a day, spread evenly over the window', () => {
    const days = 20_000;
    const { atS } = randomPours(glasses, days, randomStream(3));
    const perDay = new Array<number>(days).fill(0);
    const thirds = [0, 0, 0];
    for (const second of atS) {
      const day = Math.floor(second / DAY_S);
      perDay[day] = (perDay[day] ?? 0) + 1;
      const third = Math.floor((second - day * DAY_S - 25_200) / 18_000);
      thirds[third] = (thirds[third] ?? 0) + 1;
    }
    const mean = atS.length / days;
    const variance = perDay.reduce((sum, count) => sum + (count - mean) ** 2, 0) / (days - 1);
    // Four standard errors: of a Poisson mean sqrt(6.5/n), of its variance about 6.5 sqrt(2/n).
    expect(Math.abs(mean - 6.5)).toBeLessThan(4 * Math.sqrt(6.5 / days));
    expect(Math.abs(variance - 6.5)).toBeLessThan(4 * 6.5 * Math.sqrt((2 + 1 / 6.5) / days));
    for (const count of thirds) {
      expect(Math.abs(count - atS.length / 3)).toBeLessThan(4 * Math.sqrt((atS.length * 2) / 9));
    }
  });

  it('keeps every pour of a day busier than its mean', () => {
    // The stream gives the fraction 0.5 only: gaps of ln 2 means, far more pours than the mean.
    const steady = { nextUint32: () => 0, nextFraction: () => 0.5 };
    const busy = { ...glasses, poursPerDay: 1000 };
    expect(randomPours(busy, 3, steady).atS).toHaveLength(3 * Math.floor(1000 / Math.LN2));
  });

  it('is empty with a mean of 0 pours', () => {
    const none = { ...glasses, poursPerDay: 0 };
    expect(randomPours(none, 30, randomStream(1)).atS).toHaveLength(0);
    const zeros = { nextUint32: () => 0, nextFraction: () => 0 };
    expect(randomPours(none, 30, zeros).atS).toHaveLength(0);
  });
});

describe('a group of pours is refused', () => {
  it.each([
    ['weekdays has 6 entries', { weekdays: Array<boolean>(6).fill(true) }],
    ['fromS is -1', { fromS: -1 }],
    ['toS is 25200', { toS: 25_200 }],
    ['toS is 90000', { toS: 90_000 }],
    ['toS is NaN', { toS: Number.NaN }],
    ['volumeL is -0.25', { volumeL: -0.25 }],
    ['volumeL is NaN', { volumeL: Number.NaN }],
    ['poursPerDay is -1', { poursPerDay: -1 }],
    ['poursPerDay is Infinity', { poursPerDay: Number.POSITIVE_INFINITY }],
    ['spread is "thin"', { spread: 'thin' as 'even' }],
  ])('when %s', (message, part) => {
    expect(() => evenPours({ ...GROUP, ...part }, 1)).toThrow(message);
  });

  it.each([-1, 1.5, Number.NaN])('when the days are %d', (days) => {
    expect(() => evenPours(GROUP, days)).toThrow(`days is ${days}`);
  });
});
