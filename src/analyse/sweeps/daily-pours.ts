import {
  type DrainDevice,
  type PourGroup,
  scenarioPours,
  yearPlayer,
} from '../../simulate/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import { drainOfDraw } from '../drain-uncertainty/drain-of-draw.ts';
import type { DeviceDraws } from '../drain-uncertainty/index.ts';

const DAY_S = 86_400;

/** Pours of one size, so many every day, spread evenly from 07:00 to 22:00. */
export function evenGroup(pourL: number, perDay: number): PourGroup {
  return {
    weekdays: Array<boolean>(7).fill(true),
    fromS: 7 * 3600,
    toS: 22 * 3600,
    poursPerDay: perDay,
    volumeL: pourL,
    spread: 'even',
  };
}

/** Total drain ratio of a device at one pour size and number of pours a day. */
export interface DailyDrain {
  readonly estimate: number | null;
  /** One a draw; empty without draws. */
  readonly draws: Float64Array;
}

/**
 * Plays so many even pours a day through a device, with its measured figures and with each draw of
 * them.
 *
 * @param perDay a whole number from 1
 * @param inputs null: no draws
 * @throws {BenchError} simulation-input
 */
export function dailyDrain(
  drain: DeviceDrain,
  model: DrainDevice,
  at: { readonly pourL: number; readonly perDay: number; readonly days: number },
  inputs: DeviceDraws | null,
): DailyDrain {
  const { cleanFlowLPerMin } = model;
  const pours = scenarioPours([evenGroup(at.pourL, at.perDay)], {
    days: at.days,
    seed: 0,
    ...(cleanFlowLPerMin === undefined ? {} : { cleanFlowLPerMin }),
  });
  const player = yearPlayer(model, { endS: at.days * DAY_S }, 1);
  player.play(0, pours);
  const { played } = player;
  const cleanL = played.cleanL[0] ?? 0;
  if (cleanL <= 0) return { estimate: null, draws: new Float64Array(0) };
  const ratioOf = (figures: DeviceDraws, draw: number): number => {
    const { producingL, flushL } = drainOfDraw(model, figures, draw, played, 0);
    return (producingL + flushL) / cleanL;
  };
  const draws = new Float64Array(inputs?.ratio.length ?? 0);
  if (inputs !== null) for (let i = 0; i < draws.length; i++) draws[i] = ratioOf(inputs, i);
  return { estimate: ratioOf(measured(drain, model), 0), draws };
}

/** The measured figures as a single draw. */
function measured({ flushVolumes }: DeviceDrain, model: DrainDevice): DeviceDraws {
  return {
    ratio: Float64Array.of(model.drainRatio),
    perStartL: Float64Array.of(model.perStartL ?? 0),
    flushL: flushVolumes.map(({ volumeL }) => Float64Array.of(volumeL)),
  };
}
