import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BenchError } from '../findings/index.ts';
import {
  constantPressureRatio,
  levelAfter,
  refillTank,
  type StorageTank,
  tankFigures,
  tankLevels,
  tankPressureKPa,
} from './tank-refill.ts';

const TANK: StorageTank = {
  shellL: 14,
  prechargeKPa: 48,
  stopKPa: 276,
  restartKPa: 248,
  feedKPa: 414,
  osmoticKPa: 34,
  openFlowLPerMin: 0.197,
  rejectFlowLPerMin: 0.591,
};

describe('the pressure in a storage tank', () => {
  it('is the pre-charge when the tank is empty and the stop pressure when it is full', () => {
    expect(tankPressureKPa(TANK, 0)).toBeCloseTo(48, 10);
    expect(tankPressureKPa(TANK, tankLevels(TANK).stopL)).toBeCloseTo(276, 9);
  });

  it.each([-1, 14, Number.NaN])('is refused for %s litres in a shell of 14', (litres) => {
    expect(() => tankPressureKPa(TANK, litres)).toThrow(BenchError);
  });
});

describe('filling a storage tank', () => {
  it('takes what small steps of pressure and flow add up to', () => {
    const figures = tankFigures(TANK);
    const steps = 200_000;
    let seconds = 0;
    for (let i = 0; i < steps; i++) {
      const level = (6 * (i + 0.5)) / steps;
      const net = 414 - 34 - tankPressureKPa(TANK, level);
      seconds += 6 / steps / (figures.permeability * net);
    }
    // The midpoint rule is good to 1e-9 here.
    expect(refillTank(TANK, 0, 6).seconds / seconds).toBeCloseTo(1, 8);
  });

  it('takes no time and has no ratio from a level to itself', () => {
    expect(refillTank(TANK, 3, 3)).toEqual({ seconds: 0, cleanL: 0, drainL: 0, ratio: null });
  });

  it('drains nothing where the device rejects nothing', () => {
    expect(refillTank({ ...TANK, rejectFlowLPerMin: 0 }, 0, 3).ratio).toBe(0);
  });

  it('drains more for each litre the fuller the tank is', () => {
    const ratios = [0, 2, 4, 6].map((from) => refillTank(TANK, from, from + 1).ratio ?? 0);
    expect(ratios).toEqual([...ratios].sort((a, b) => a - b));
    expect(new Set(ratios).size).toBe(4);
  });

  it('comes to the level whose filling takes just that time', () => {
    const level = fc.double({ min: 0, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(level, level, (a, b) => {
        const { stopL } = tankLevels(TANK);
        const [from = 0, to = 0] = [a * stopL, b * stopL].sort((x, y) => x - y);
        const { seconds } = refillTank(TANK, from, to);
        expect(levelAfter(tankFigures(TANK), from, seconds)).toBeCloseTo(to, 9);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('ends at the stop level however long it goes on', () => {
    expect(levelAfter(tankFigures(TANK), 0, 1e9)).toBe(tankLevels(TANK).stopL);
  });

  it('meets the drain of an open tank where no pressure stands against it', () => {
    expect(constantPressureRatio(TANK)).toBeCloseTo(3, 12);
    expect(constantPressureRatio(TANK, 380)).toBeNull();
  });

  it.each([
    ['backwards', () => refillTank(TANK, 3, 2)],
    ['beyond what the membrane can press in', () => refillTank(TANK, 0, 13.9)],
    ['to a stop pressure it cannot reach', () => tankLevels({ ...TANK, stopKPa: 380 })],
    ['from a restart above the stop', () => tankLevels({ ...TANK, restartKPa: 276 })],
    ['from a restart below the pre-charge', () => tankLevels({ ...TANK, restartKPa: 40 })],
    ['without a shell', () => tankLevels({ ...TANK, shellL: 0 })],
    ['with a flow that is no number', () => tankLevels({ ...TANK, openFlowLPerMin: Number.NaN })],
  ])('is refused %s', (_what, fill) => {
    expect(fill).toThrow(BenchError);
  });
});
