import { describe, expect, it } from 'vitest';
import type { DrainDevice, FlushRule } from './drain-device.ts';
import { breakEvenPourL, isolatedPourDrain, isolatedPourRatio } from './isolated-pour.ts';
import { simulateDrain } from './simulate-drain.ts';

const IDLE: FlushRule = { rule: 'after use', trigger: 'idle', afterS: 600, volumeL: 1.5 };

describe('isolatedPourDrain', () => {
  it('gives the example of its description', () => {
    expect(
      isolatedPourDrain({
        drainRatio: 0.5,
        flushRules: [{ rule: 'after use', trigger: 'idle', afterS: 600, volumeL: 1.4 }],
      }),
    ).toEqual({ ratio: 0.5, fixedL: 1.4, excludedRules: [] });
  });

  it('is the drain ratio alone for a device without rules and per-start drain', () => {
    const plain = isolatedPourDrain({ drainRatio: 3, flushRules: [] });
    expect(plain).toEqual({ ratio: 3, fixedL: 0, excludedRules: [] });
  });

  it('adds per-start, start and idle drain per pour, and volume rules per litre', () => {
    const device: DrainDevice = {
      drainRatio: 1,
      perStartL: 0.25,
      flushRules: [
        IDLE,
        { rule: 'first water', trigger: 'start', afterS: 60, volumeL: 0.5, drainFraction: 0.5 },
        { rule: 'by volume', trigger: 'produced', afterL: 4, volumeL: 1 },
        { rule: 'reservoir', trigger: 'dump', afterL: 8, volumeL: 2 },
      ],
    };
    expect(isolatedPourDrain(device)).toEqual({ ratio: 1.5, fixedL: 2, excludedRules: [] });
  });

  it('names the rules that spend water without a pour, in row order', () => {
    const flushRules: FlushRule[] = [
      { rule: 'on', trigger: 'power-on', volumeL: 1 },
      { ...IDLE, rule: 'standby', repeat: true },
      { rule: 'clock', trigger: 'interval', afterS: 60, volumeL: 1 },
      { rule: 'daily dump', trigger: 'dump', afterS: 60, volumeL: 1 },
      { rule: 'dump', trigger: 'dump', afterL: 60, volumeL: 0 },
    ];
    const isolated = isolatedPourDrain({ drainRatio: 1, flushRules });
    // Of the repeating rule the first flush counts.
    expect(isolated.fixedL).toBe(1.5);
    expect(isolated.excludedRules).toEqual(['on', 'standby', 'clock', 'daily dump']);
  });

  it('adds what making the product of a clean flush drains', () => {
    const clean: FlushRule = { ...IDLE, water: 'clean', drainFraction: 0 };
    expect(isolatedPourDrain({ drainRatio: 2, flushRules: [clean] }).fixedL).toBe(3);
    expect(isolatedPourDrain({ drainRatio: 2, flushRules: [{ ...IDLE, water: 'clean' }] }).fixedL)
      // 1.5 L of product to drain, and 2 L drained for each of them.
      .toBe(4.5);
  });

  it('agrees with a simulated pour that has a day before and after it', () => {
    const device: DrainDevice = {
      drainRatio: 2.3,
      perStartL: 0.1,
      cleanFlowLPerMin: 1.5,
      flushRules: [
        { ...IDLE, water: 'clean' },
        { rule: 'first water', trigger: 'start', afterS: 60, volumeL: 0.5, water: 'clean' },
      ],
    };
    const line = isolatedPourDrain(device);
    for (const pourL of [0.1, 0.25, 1, 10]) {
      const pours = { atS: [86_400], volumeL: [pourL] };
      const played = simulateDrain(device, pours, { endS: 3 * 86_400 });
      expect(played.totalDrainRatio).toBeCloseTo(isolatedPourRatio(line, pourL), 12);
    }
  });

  it('refuses a device it cannot use', () => {
    const flushRules = [{ ...IDLE, volumeL: Number.NaN }];
    expect(() => isolatedPourDrain({ drainRatio: 1, flushRules })).toThrow('volumeL is NaN');
  });
});

describe('isolatedPourRatio', () => {
  it('gives the example of its description', () => {
    expect(isolatedPourRatio({ ratio: 0.5, fixedL: 1.5 }, 0.25)).toBe(6.5);
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a pour of %d L', (pourL) => {
    expect(() => isolatedPourRatio({ ratio: 1, fixedL: 1 }, pourL)).toThrow(`pourL is ${pourL}`);
  });
});

describe('breakEvenPourL', () => {
  it('gives the example of its description, in either order of the devices', () => {
    const a = { ratio: 1, fixedL: 0.25 };
    const b = { ratio: 0.5, fixedL: 1.5 };
    expect(breakEvenPourL(a, b)).toBe(2.5);
    expect(breakEvenPourL(b, a)).toBe(2.5);
  });

  it('is null where one device drains less at every size', () => {
    expect(breakEvenPourL({ ratio: 0.5, fixedL: 1 }, { ratio: 0.4, fixedL: 0.5 })).toBeNull();
    expect(breakEvenPourL({ ratio: 0.5, fixedL: 1 }, { ratio: 0.5, fixedL: 0.5 })).toBeNull();
    expect(breakEvenPourL({ ratio: 0.4, fixedL: 1 }, { ratio: 0.5, fixedL: 1 })).toBeNull();
  });

  it('is null where both drain the same at every size', () => {
    expect(breakEvenPourL({ ratio: 0.5, fixedL: 1 }, { ratio: 0.5, fixedL: 1 })).toBeNull();
  });

  it('refuses figures that are not numbers', () => {
    expect(() => breakEvenPourL({ ratio: Number.NaN, fixedL: 1 }, { ratio: 1, fixedL: 1 })).toThrow(
      'ratio is NaN',
    );
  });
});
