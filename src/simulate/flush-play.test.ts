import { describe, expect, it } from 'vitest';
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

describe('flush rules, idle rules', () => {
  it('arm at power-on only when anchored there, and a pour cancels that', () => {
    const anchored: FlushRule = { ...IDLE, anchor: 'power-on' };
    expect(play({ flushRules: [IDLE] }, []).fired).toEqual([]);
    expect(play({ flushRules: [anchored] }, []).fired).toEqual(['after use@600']);
    expect(play({ flushRules: [anchored] }, [[599, 1]]).fired).toEqual(['after use@1199']);
    expect(play({ flushRules: [{ ...IDLE, anchor: 'pour' }] }, []).fired).toEqual([]);
  });

  it('flush at the end of every pour when they wait 0 s', () => {
    const atOnce: FlushRule = { ...IDLE, afterS: 0 };
    const pours = [
      [10, 1],
      [10, 1],
      [20, 1],
    ] as const;
    expect(play({ flushRules: [atOnce] }, pours).fired).toEqual([
      'after use@10',
      'after use@10',
      'after use@20',
    ]);
  });

  it('repeat from the firing, also from one that was dropped', () => {
    const flushRules: FlushRule[] = [
      { ...IDLE, repeat: true, minIntervalS: 700 },
      { rule: 'other', trigger: 'interval', afterS: 500, volumeL: 1 },
    ];
    // Due at 600 and 1200: 100 s and 200 s after the other rule.
    expect(play({ flushRules }, [[0, 1]], { endS: 1400 }).fired).toEqual([
      'other@500',
      'other@1000',
    ]);
  });

  it('repeat from the end of quiet hours when deferred', () => {
    const quiet = { fromS: 500, toS: 1000, mode: 'defer' } as const;
    const rule: FlushRule = { ...IDLE, repeat: true, quiet };
    expect(play({ flushRules: [rule] }, [[0, 1]], { endS: 2300 }).fired).toEqual([
      'after use@1000',
      'after use@1600',
      'after use@2200',
    ]);
  });
});

describe('flush rules, interval rules', () => {
  const GRID: FlushRule = { rule: 'grid', trigger: 'interval', afterS: 100, volumeL: 1 };
  const SINCE: FlushRule = { ...GRID, rule: 'since', anchor: 'last-flush' };

  it('fire once after a pour that covered several points, and go on along the grid', () => {
    const device = { cleanFlowLPerMin: 1, flushRules: [GRID] };
    expect(play(device, [[50, 4.5]], { endS: 450 }).fired).toEqual(['grid@320', 'grid@400']);
  });

  it('fire once where the end of the pour is itself a point of the grid', () => {
    const device = { cleanFlowLPerMin: 1, flushRules: [GRID] };
    expect(play(device, [[50, 2.5]], { endS: 300 }).fired).toEqual(['grid@200', 'grid@300']);
  });

  it('keep the grid when quiet hours defer them, and lose the points passed', () => {
    const quiet = { fromS: 90, toS: 250, mode: 'defer' } as const;
    expect(play({ flushRules: [{ ...GRID, quiet }] }, [], { endS: 450 }).fired).toEqual([
      'grid@250',
      'grid@300',
      'grid@400',
    ]);
  });

  it('count from the last flush of any rule when anchored there', () => {
    const start: FlushRule = { rule: 'start', trigger: 'start', volumeL: 1 };
    const fired = play({ flushRules: [SINCE, start] }, [[130, 1]], { endS: 340 }).fired;
    expect(fired).toEqual(['since@100', 'start@130', 'since@230', 'since@330']);
  });

  it('anchored at the last flush, are called off by a flush while they wait', () => {
    const byVolume: FlushRule = { rule: 'volume', trigger: 'produced', afterL: 1, volumeL: 1 };
    const device = { cleanFlowLPerMin: 1, flushRules: [SINCE, byVolume] };
    // Due at 100, inside the pour; the volume flush at its end comes first.
    expect(play(device, [[80, 1]], { endS: 250 }).fired).toEqual(['volume@140', 'since@240']);

    const quiet = { fromS: 90, toS: 200, mode: 'defer' } as const;
    const idle: FlushRule = { ...IDLE, afterS: 50 };
    const held = { flushRules: [{ ...SINCE, quiet }, idle] };
    expect(play(held, [[70, 1]], { endS: 230 }).fired).toEqual(['after use@120', 'since@220']);
  });

  it('anchored at the last flush, are due again one interval after a dropped firing', () => {
    const quiet = { fromS: 90, toS: 150, mode: 'skip' } as const;
    expect(play({ flushRules: [{ ...SINCE, quiet }] }, [], { endS: 310 }).fired).toEqual([
      'since@200',
      'since@300',
    ]);
  });

  it('go by row order also where rounding sets their due times a hair apart', () => {
    const tenths: FlushRule = { ...GRID, rule: 'tenths', afterS: 0.1 };
    const once: FlushRule = { ...GRID, rule: 'once', afterS: 0.3 };
    // 3 × 0.1 is larger than 0.3 by 6e-17.
    const fired = play({ flushRules: [tenths, once] }, [], { endS: 0.35 }).flushes;
    expect(fired?.map(({ rule }) => rule)).toEqual(['tenths', 'tenths', 'tenths', 'once']);
  });

  it('come before idle rules at one instant, then go by row order', () => {
    const idle: FlushRule = { ...IDLE, rule: 'idle', anchor: 'power-on' };
    const flushRules = [
      idle,
      { ...GRID, rule: 'b', afterS: 600 },
      { ...GRID, rule: 'a', afterS: 300 },
    ];
    expect(play({ flushRules }, [], { endS: 600 }).fired).toEqual([
      'a@300',
      'b@600',
      'a@600',
      'idle@600',
    ]);
  });
});

describe('flush rules, rules by volume', () => {
  const BY_VOLUME: FlushRule = { rule: 'volume', trigger: 'produced', afterL: 1, volumeL: 0.5 };

  it('reach their mark through rounding errors: ten pours of 0.1 L are a litre', () => {
    const pours = Array.from({ length: 30 }, (_, k) => [k, 0.1] as const);
    expect(play({ flushRules: [BY_VOLUME] }, pours).fired).toEqual([
      'volume@9',
      'volume@19',
      'volume@29',
    ]);
  });

  it('owe a dropped flush until it is allowed', () => {
    const rule: FlushRule = { ...BY_VOLUME, minIntervalS: 100 };
    const result = play({ flushRules: [rule] }, [
      [0, 1],
      [50, 1.5],
      [99, 0],
      [100, 0],
      [300, 0.5],
    ]);
    expect(result.fired).toEqual(['volume@0', 'volume@100', 'volume@300']);
    expect(result.flushCounts).toEqual({ volume: 3 });
  });

  it('book the flushes of one pour as one record and count them all', () => {
    const result = play({ flushRules: [BY_VOLUME] }, [[0, 3.5]]);
    expect(result).toMatchObject({ fired: ['volume@0'], flushCounts: { volume: 3 } });
    expect(result.flushDrainL).toBe(1.5);
  });

  it('leave out a pour that ends after the horizon', () => {
    const device = { cleanFlowLPerMin: 1, flushRules: [BY_VOLUME] };
    expect(play(device, [[0, 1]], { endS: 59 }).flushCounts).toEqual({ volume: 0 });
    expect(play(device, [[0, 1]], { endS: 60 }).flushCounts).toEqual({ volume: 1 });
  });

  it('dump a reservoir by litres like produced rules, and by hours on a grid from power-on', () => {
    const byLitres: FlushRule = { rule: 'litres', trigger: 'dump', afterL: 2, volumeL: 3 };
    const byHours: FlushRule = { rule: 'hours', trigger: 'dump', afterS: 3600, volumeL: 3 };
    const pours = [
      [0, 1],
      [1000, 1],
    ] as const;
    const result = play({ flushRules: [byHours, byLitres] }, pours, { endS: 7200 });
    expect(result.fired).toEqual(['litres@1000', 'hours@3600', 'hours@7200']);
    expect(result.flushDrainL).toBe(9);
  });

  it('are not concerned by quiet hours; a timed dump is', () => {
    const quiet = { fromS: 0, toS: 50_000, mode: 'skip' } as const;
    const flushRules: FlushRule[] = [
      { ...BY_VOLUME, quiet },
      { rule: 'litres', trigger: 'dump', afterL: 1, volumeL: 3, quiet },
      { rule: 'hours', trigger: 'dump', afterS: 20_000, volumeL: 3, quiet },
      { rule: 'start', trigger: 'start', volumeL: 1, quiet },
      { rule: 'on', trigger: 'power-on', volumeL: 1, quiet },
    ];
    expect(play({ flushRules }, [[5, 1]], { endS: 60_000 }).fired).toEqual([
      'on@0',
      'start@5',
      'volume@5',
      'litres@5',
      'hours@60000',
    ]);
  });
});

describe('flush rules, start rules', () => {
  it('measure the pause from the end of the last pour, the first from power-on', () => {
    const rule: FlushRule = { rule: 'start', trigger: 'start', afterS: 100, volumeL: 0.2 };
    const device = { cleanFlowLPerMin: 1, flushRules: [rule] };
    const pours = [
      [100, 1],
      [259, 1],
      [419, 1],
    ] as const;
    expect(play(device, pours).fired).toEqual(['start@100', 'start@419']);
  });

  it('without a pause set off at every pour', () => {
    const rule: FlushRule = { rule: 'start', trigger: 'start', volumeL: 0.2 };
    const pours = [
      [0, 1],
      [0, 1],
    ] as const;
    expect(play({ flushRules: [rule] }, pours).flushCounts).toEqual({ start: 2 });
  });
});

describe('flush rules, quiet hours and least intervals', () => {
  it('do not look at the clock again for a deferred flush that a pour holds up', () => {
    const grid: FlushRule = {
      rule: 'grid',
      trigger: 'interval',
      afterS: 100,
      volumeL: 1,
      quiet: { fromS: 360, toS: 300, mode: 'defer' },
    };
    // Put off from 100 to 300, held by a pour from 250 to 550, when it is quiet again.
    const device = { cleanFlowLPerMin: 1, flushRules: [grid] };
    expect(play(device, [[250, 5]], { endS: 3000 }).fired).toEqual(['grid@550']);
  });

  it('all day let a deferred flush wait for midnight and drop a skipped one', () => {
    const quiet = { fromS: 0, toS: DAY_S } as const;
    const deferred: FlushRule = { ...IDLE, quiet: { ...quiet, mode: 'defer' } };
    const skipped: FlushRule = { ...IDLE, quiet: { ...quiet, mode: 'skip' } };
    const horizon = { endS: 2 * DAY_S, clockAtStartS: 3600 };
    expect(play({ flushRules: [deferred] }, [[0, 1]], horizon).fired).toEqual(['after use@82800']);
    expect(play({ flushRules: [skipped] }, [[0, 1]], horizon).fired).toEqual([]);
  });

  it('look at the least interval when a deferred flush really fires', () => {
    const flushRules: FlushRule[] = [
      { ...IDLE, quiet: { fromS: 500, toS: 1000, mode: 'defer' }, minIntervalS: 200 },
      { rule: 'grid', trigger: 'interval', afterS: 900, volumeL: 1 },
    ];
    expect(play({ flushRules }, [[0, 1]], { endS: 1500 }).fired).toEqual(['grid@900']);
  });

  it('allow a flush exactly one least interval after the last', () => {
    const rule: FlushRule = { ...IDLE, minIntervalS: 900 };
    const pours = [
      [0, 1],
      [900, 1],
      [1799.5, 1],
    ] as const;
    // The third would come 899.5 s after the second.
    expect(play({ flushRules: [rule] }, pours).fired).toEqual(['after use@600', 'after use@1500']);
  });

  it('take the clock at power-on modulo a day', () => {
    const rule: FlushRule = { ...IDLE, quiet: { fromS: 4200, toS: 4300, mode: 'skip' } };
    const at = (clockAtStartS: number) => play({ flushRules: [rule] }, [[0, 1]], { clockAtStartS });
    expect(at(3600).fired).toEqual([]);
    expect(at(3600 + 3 * DAY_S).fired).toEqual([]);
    expect(at(0).fired).toEqual(['after use@600']);
  });
});
