import { describe, expect, it } from 'vitest';
import { BenchError } from '../findings/index.ts';
import { isolatedTankRatio, simulateTank, tankCycleRatio } from './tank-play.ts';
import { refillTank, type StorageTank, tankLevels } from './tank-refill.ts';

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
const { stopL, restartL } = tankLevels(TANK);
const play = (atS: number[], volumeL: number[], endS: number) =>
  simulateTank(TANK, { atS, volumeL }, { endS });

describe('drawing from a storage tank', () => {
  it('costs nothing and has no ratio when nothing is drawn', () => {
    const run = play([], [], 86_400);
    expect(run).toMatchObject({ drawnL: 0, madeL: 0, drainL: 0, starts: 0, levelDrainL: 0 });
    expect(run.drainPerDrawn).toBeNull();
    expect(run.equalLevelRatio).toBeNull();
  });

  it('does not start a filling for a draw above the restart level, and still books its water', () => {
    const draw = (stopL - restartL) / 2;
    const run = play([0], [draw], 86_400);
    expect(run).toMatchObject({ starts: 0, drainL: 0, madeL: 0, drainPerMade: null });
    expect(run.drainPerDrawn).toBe(0);
    expect(run.equalLevelRatio).toBeCloseTo(tankCycleRatio(TANK), 10);
  });

  it('fills to the stop level again after a larger draw', () => {
    const run = play([0], [3], 86_400);
    expect(run.endL).toBe(stopL);
    expect(run.drainL).toBeCloseTo(refillTank(TANK, stopL - 3, stopL).drainL, 9);
    expect(run.madeL).toBeCloseTo(3, 12);
    expect(run.levelDrainL).toBe(0);
  });

  it('finishes on paper a filling that the horizon cuts off', () => {
    const run = play([0], [3], 600);
    expect(run.isFillingAtEnd).toBe(true);
    expect(run.fillingS).toBe(600);
    const whole = refillTank(TANK, stopL - 3, stopL).drainL;
    expect(run.drainL + run.levelDrainL).toBeCloseTo(whole, 9);
  });

  it('falls short by what is asked for faster than it is made', () => {
    const run = play([0, 60], [stopL, 1], 60);
    // In a minute the empty tank takes in a little less than the flow into an open one.
    const made = 1 - run.shortfallL;
    expect(made).toBeGreaterThan(0.1);
    expect(made).toBeLessThan(0.197);
    expect(run.drawnL).toBeCloseTo(stopL + made, 12);
  });

  it('makes what it gives when the level ends where it began', () => {
    const atS = Array.from({ length: 50 }, (_, i) => i * 5000);
    const run = play(atS, Array(50).fill(0.8), 60 * 5000);
    expect(run.startL + run.madeL - run.drawnL).toBeCloseTo(run.endL, 9);
    expect(run.drainPerMade).toBeGreaterThan(3);
  });

  it('books the other way round for a tank that ends fuller than it began', () => {
    const run = simulateTank(TANK, { atS: [], volumeL: [] }, { endS: 86_400, startL: 1 });
    expect(run.endL).toBe(stopL);
    expect(run.levelDrainL).toBeLessThan(0);
  });

  it.each([
    ['of a negative volume', [0], [-1]],
    ['out of order', [10, 5], [1, 1]],
    ['at a time that is no number', [Number.NaN], [1]],
  ])('is refused for draws %s', (_what, atS, volumeL) => {
    expect(() => play(atS, volumeL, 100)).toThrow(BenchError);
  });
});

describe('a draw that stands alone', () => {
  it('costs a whole filling per litre up to the restart level, then less the larger it is', () => {
    const small = isolatedTankRatio(TANK, 0.1);
    expect(small).toBeCloseTo(tankCycleRatio(TANK), 10);
    expect(isolatedTankRatio(TANK, stopL - restartL)).toBeCloseTo(small ?? 0, 9);
    expect(isolatedTankRatio(TANK, 4)).toBeLessThan(isolatedTankRatio(TANK, 2) ?? 0);
  });

  it('has no ratio beyond a full tank, and is refused for no water', () => {
    expect(isolatedTankRatio(TANK, stopL + 0.01)).toBeNull();
    expect(() => isolatedTankRatio(TANK, 0)).toThrow(BenchError);
  });
});
