import { describe, expect, it } from 'vitest';
import { BenchError } from '../findings/index.ts';
import type { DrainDevice, FlushRule, Horizon } from './drain-device.ts';
import { simulateDrain } from './simulate-drain.ts';

const DAY_S = 86_400;
const IDLE: FlushRule = { rule: 'after use', trigger: 'idle', afterS: 600, volumeL: 1.4 };

/** Pours as [time, litres]. Returns the result with flushes as "rule@time". */
function play(
  device: Partial<DrainDevice>,
  pours: readonly (readonly [number, number])[],
  horizon: Partial<Horizon> = {},
) {
  const result = simulateDrain(
    { drainRatio: 0.5, flushRules: [], ...device },
    { atS: pours.map(([atS]) => atS), volumeL: pours.map(([, volumeL]) => volumeL) },
    { endS: DAY_S, recordFlushes: true, ...horizon },
  );
  return { ...result, fired: result.flushes?.map(({ rule, atS }) => `${rule}@${atS}`) };
}

const NONE = { atS: [], volumeL: [] };

describe('simulateDrain, totals', () => {
  it('gives the example of its description', () => {
    const result = simulateDrain(
      { drainRatio: 0.5, flushRules: [IDLE] },
      { atS: [0, 300], volumeL: [0.25, 0.25] },
      { endS: DAY_S },
    );
    expect(result).toEqual({
      cleanL: 0.5,
      producingDrainL: 0.25,
      flushDrainL: 1.4,
      totalDrainL: 1.65,
      flushCounts: { 'after use': 1 },
      totalDrainRatio: 3.3,
      recovery: 0.5 / 2.15,
    });
  });

  it('has no ratio and no recovery when nothing is poured, and still drains', () => {
    const standby: FlushRule = { rule: 'standby', trigger: 'interval', afterS: 3600, volumeL: 1 };
    const result = play({ flushRules: [standby] }, []);
    expect(result).toMatchObject({ cleanL: 0, totalDrainL: 24, totalDrainRatio: null });
    expect(result.recovery).toBeNull();
    expect(play({}, [[0, 0]])).toMatchObject({ cleanL: 0, totalDrainRatio: null, recovery: null });
  });

  it('drains nothing and recovers everything without ratio and rules', () => {
    expect(play({ drainRatio: 0 }, [[5, 2]])).toMatchObject({
      totalDrainL: 0,
      totalDrainRatio: 0,
      recovery: 1,
    });
  });

  it('drains the per-start volume once per pour, also for a pour of 0 L', () => {
    const pours = [
      [0, 1],
      [60, 0],
      [120, 1],
    ] as const;
    expect(play({ perStartL: 0.2 }, pours).producingDrainL).toBeCloseTo(1.6, 12);
  });

  it('turns -0 into 0', () => {
    const result = play({ drainRatio: -0, perStartL: -0 }, [[-0, -0]], { endS: 0 });
    for (const value of [result.cleanL, result.producingDrainL, result.totalDrainL]) {
      expect(Object.is(value, 0)).toBe(true);
    }
  });

  it('adds a million small pours without drift', () => {
    const atS = Float64Array.from({ length: 1_000_000 }, (_, k) => k);
    const volumeL = new Float64Array(atS.length).fill(0.1);
    const result = simulateDrain(
      { drainRatio: 1, flushRules: [] },
      { atS, volumeL },
      { endS: 1e6 },
    );
    // A plain sum is off by 1e-6 here; the nearest doubles to 100,000 are 1.5e-11 apart.
    expect(Math.abs(result.cleanL - 100_000)).toBeLessThan(1e-10);
  });

  it('takes any array-like list of numbers', () => {
    const device: DrainDevice = { drainRatio: 1, flushRules: [IDLE] };
    const lists = [
      [0, 700],
      Float32Array.of(0, 700),
      Int32Array.of(0, 700),
      { length: 2, 0: 0, 1: 700 },
    ];
    const drains = lists.map(
      (atS) => simulateDrain(device, { atS, volumeL: [1, 1] }, { endS: 1000 }).totalDrainL,
    );
    expect(drains).toEqual([3.4, 3.4, 3.4, 3.4]);
  });

  it('changes none of its inputs and gives the same result again', () => {
    const device: DrainDevice = { drainRatio: 1, flushRules: [IDLE] };
    const pours = { atS: Float64Array.of(0, 900), volumeL: Float64Array.of(1, 2) };
    const copy = structuredClone({ device, pours });
    const first = simulateDrain(device, pours, { endS: DAY_S });
    expect({ device, pours }).toEqual(copy);
    expect(simulateDrain(device, pours, { endS: DAY_S })).toEqual(first);
  });

  it('lists flushes only when asked to', () => {
    expect('flushes' in simulateDrain({ drainRatio: 1, flushRules: [] }, NONE, { endS: 1 })).toBe(
      false,
    );
    expect(play({}, []).flushes).toEqual([]);
  });

  it('counts rules of one name together, names of object properties included', () => {
    const flushRules: FlushRule[] = [
      { rule: '__proto__', trigger: 'power-on', volumeL: 1 },
      { rule: '__proto__', trigger: 'power-on', volumeL: 1 },
      { rule: 'constructor', trigger: 'idle', afterS: 1, volumeL: 1 },
    ];
    const { flushCounts } = play({ flushRules }, []);
    expect(Object.entries(flushCounts)).toEqual([
      ['__proto__', 2],
      ['constructor', 0],
    ]);
  });
});

describe('simulateDrain, power-on and the horizon', () => {
  it('fires power-on rules first, in row order, whatever their least interval', () => {
    const flushRules: FlushRule[] = [
      { rule: 'start', trigger: 'start', volumeL: 1 },
      { rule: 'b', trigger: 'power-on', volumeL: 1, minIntervalS: 100 },
      { rule: 'a', trigger: 'power-on', volumeL: 1, minIntervalS: 100 },
    ];
    expect(play({ flushRules }, [[0, 1]], { endS: 0 }).fired).toEqual(['b@0', 'a@0', 'start@0']);
  });

  it('lets a power-on flush count for the least interval of other rules', () => {
    const flushRules: FlushRule[] = [
      { rule: 'on', trigger: 'power-on', volumeL: 1 },
      { ...IDLE, minIntervalS: 700 },
    ];
    expect(play({ flushRules }, [[0, 1]]).fired).toEqual(['on@0']);
    expect(play({ flushRules }, [[100, 1]]).fired).toEqual(['on@0', 'after use@700']);
  });

  it('counts a pour at the horizon in full and leaves out one after it', () => {
    const pours = [
      [100, 1],
      [101, 1],
    ] as const;
    expect(play({}, pours, { endS: 100 }).cleanL).toBe(1);
    expect(play({}, pours, { endS: 99.999_999_5 }).cleanL).toBe(1);
    expect(play({}, pours, { endS: 99 }).cleanL).toBe(0);
  });

  it('does not fire an interval that waits for a pour past the horizon', () => {
    const grid: FlushRule = { rule: 'grid', trigger: 'interval', afterS: 100, volumeL: 1 };
    const device = { cleanFlowLPerMin: 1, flushRules: [grid] };
    expect(play(device, [[90, 1]], { endS: 149 }).fired).toEqual([]);
    expect(play(device, [[90, 1]], { endS: 150 }).fired).toEqual(['grid@150']);
  });

  it('fires every repeat of a stretch of years without a pour', () => {
    const standby: FlushRule = { ...IDLE, afterS: 3600, repeat: true, anchor: 'power-on' };
    const hours = 24 * 365 * 20;
    const result = simulateDrain({ drainRatio: 1, flushRules: [standby] }, NONE, {
      endS: hours * 3600,
    });
    expect(result.flushCounts).toEqual({ 'after use': hours });
  });
});

describe('simulateDrain, far horizons', () => {
  it('ends for a grid whose points lie beyond what doubles tell apart to a microsecond', () => {
    const grid: FlushRule = { rule: 'grid', trigger: 'interval', afterS: 1e10 / 3, volumeL: 1 };
    const { flushCounts } = play({ flushRules: [grid] }, [], { endS: 1e15 });
    expect(flushCounts).toEqual({ grid: 300_000 });
  });
});

describe('simulateDrain, water of a flush', () => {
  it('drains the stated share and counts a flush that recirculates', () => {
    const half: FlushRule = { ...IDLE, drainFraction: 0.5 };
    const none: FlushRule = { ...IDLE, rule: 'round', drainFraction: 0 };
    const result = play({ flushRules: [half, none] }, [[0, 1]]);
    expect(result.flushDrainL).toBe(0.7);
    expect(result.flushCounts).toEqual({ 'after use': 1, round: 1 });
  });

  it('drains a clean flush and what making it drains, and delivers none of it', () => {
    const clean: FlushRule = { ...IDLE, volumeL: 2, water: 'clean' };
    const byVolume: FlushRule = { rule: 'volume', trigger: 'produced', afterL: 1.5, volumeL: 1 };
    const result = play({ drainRatio: 3, flushRules: [clean, byVolume] }, [[0, 1]]);
    expect(result).toMatchObject({ cleanL: 1, producingDrainL: 3, flushDrainL: 8 });
    expect(result.flushCounts).toEqual({ 'after use': 1, volume: 0 });
  });

  it('drains what making a clean flush drains even when the product recirculates', () => {
    const round: FlushRule = { ...IDLE, volumeL: 2, water: 'clean', drainFraction: 0 };
    expect(play({ drainRatio: 3, flushRules: [round] }, [[0, 1]]).flushDrainL).toBe(6);
  });
});

describe('simulateDrain, pours it refuses', () => {
  const codeOf = (work: () => unknown): string => {
    try {
      work();
    } catch (thrown) {
      if (thrown instanceof BenchError) return `${thrown.code}: ${thrown.message}`;
      throw thrown;
    }
    return 'nothing';
  };

  it('names the index of a pour that overlaps the earlier one', () => {
    const device = { cleanFlowLPerMin: 1 };
    const pours = [
      [0, 1],
      [60, 1],
      [119, 1],
    ] as const;
    expect(codeOf(() => play(device, pours))).toMatch(/^pours-overlap: pour at index 2 /);
    expect(codeOf(() => play({}, pours))).toBe('nothing');
  });

  it('takes a pour that overlaps by less than a microsecond', () => {
    const pours = [
      [0, 1],
      [59.999_999_5, 1],
    ] as const;
    expect(codeOf(() => play({ cleanFlowLPerMin: 1 }, pours))).toBe('nothing');
  });

  it('names the index of a pour out of order, also after the horizon', () => {
    const pours = [
      [10, 1],
      [30, 1],
      [20, 1],
    ] as const;
    expect(codeOf(() => play({}, pours, { endS: 5 }))).toMatch(
      /^pours-unordered: pour at index 2 /,
    );
  });

  it.each([
    ['a negative time', [-1, 1]],
    ['a time that is not a number', [Number.NaN, 1]],
    ['an endless time', [Number.POSITIVE_INFINITY, 1]],
    ['a negative volume', [0, -0.1]],
    ['a volume that is not a number', [0, Number.NaN]],
    ['an endless volume', [0, Number.POSITIVE_INFINITY]],
  ] as const)('names the index of a pour with %s', (_, pour) => {
    expect(codeOf(() => play({}, [[0, 1], pour]))).toMatch(
      /^simulation-input: pour at index 1 |^pours-unordered/,
    );
    expect(codeOf(() => play({}, [pour]))).toMatch(/^simulation-input: pour at index 0 /);
  });

  it('refuses text in the place of numbers, and lists of two lengths', () => {
    const device: DrainDevice = { drainRatio: 1, flushRules: [] };
    const text = { atS: ['1'] as unknown as number[], volumeL: [1] };
    expect(codeOf(() => simulateDrain(device, text, { endS: 1 }))).toMatch(/^simulation-input/);
    const uneven = { atS: [1, 2], volumeL: [1] };
    expect(codeOf(() => simulateDrain(device, uneven, { endS: 1 }))).toBe(
      'simulation-input: the pours have 2 times and 1 volumes',
    );
  });

  it.each([
    ['endS', { endS: Number.NaN }],
    ['endS', { endS: -1 }],
    ['endS', { endS: Number.POSITIVE_INFINITY }],
    ['clockAtStartS', { clockAtStartS: Number.NaN }],
    ['clockAtStartS', { clockAtStartS: -3600 }],
  ])('refuses a horizon whose %s is no usable number', (name, horizon) => {
    expect(codeOf(() => play({}, [], horizon))).toMatch(`simulation-input: ${name} is `);
  });

  it('refuses volumes too large to add up instead of giving NaN', () => {
    const huge = [
      [0, 1e308],
      [1, 1e308],
    ] as const;
    expect(codeOf(() => play({ drainRatio: 0 }, huge))).toMatch(/^simulation-input: the volumes/);
  });
});
