import {
  type DrainDevice,
  type Pours,
  recovery,
  type SimulatedDrain,
  type SimulatedTank,
  simulateTank,
  totalDrainRatio,
} from '../../simulate/index.ts';
import type { DeviceTank } from './device-tank.ts';

/** A tank device in a scenario: what the tank did, and the water of the device as a whole. */
export interface PlayedTank {
  readonly tank: SimulatedTank;
  readonly drain: SimulatedDrain;
}

/**
 * The water of a tank device in a scenario.
 *
 * Flushes are those of the flush rules, played as for any device; the drain of production is that of
 * the refills, with equal tank level at both ends. What the tank could not give is not delivered.
 * @param flushed the device played with its flush rules, its production at the ratio of a filling
 */
export function playTank(
  { tank }: Pick<DeviceTank, 'tank'>,
  pours: Pours,
  endS: number,
  flushed: SimulatedDrain,
): PlayedTank {
  const played = simulateTank(tank, pours, { endS });
  const producingDrainL = tankDrainL(played);
  const totalDrainL = producingDrainL + flushed.flushDrainL;
  return {
    tank: played,
    drain: {
      ...flushed,
      cleanL: played.drawnL,
      producingDrainL,
      totalDrainL,
      totalDrainRatio: totalDrainRatio(played.drawnL, totalDrainL),
      recovery: recovery(played.drawnL, totalDrainL),
    },
  };
}

/** Drain of the refills with equal tank level at both ends, litres. */
export function tankDrainL({ drainL, levelDrainL }: SimulatedTank): number {
  return Math.max(0, drainL + levelDrainL);
}

/** The drain model of a tank device: production at the ratio of a filling, no drain per start. */
export function tankDrainModel(
  tank: DeviceTank,
  rest: Omit<DrainDevice, 'drainRatio' | 'perStartL'>,
): DrainDevice {
  return { ...rest, drainRatio: tank.cycleRatio, perStartL: 0 };
}
