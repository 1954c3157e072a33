import { type DrainDevice, type PourGroup, scenarioPours } from '../../simulate/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import {
  type DeviceDraws,
  type DeviceYears,
  type DrawnUse,
  deviceYears,
  measuredTank,
} from '../drain-uncertainty/index.ts';

const DAY_S = 86_400;

/** A shortfall of less than this share is rounding. */
const SHORT_BY = 1e-9;

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
 * @returns no estimate where a tank cannot give so much: its ratio would be that of other pours
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
  const askedL = pours.volumeL.reduce((sum, litres) => sum + litres, 0);
  const played = (figures: DeviceDraws): DeviceYears => {
    const years = deviceYears(model, figures, { endS: at.days * DAY_S }, 1);
    years.play(0, pours);
    return years;
  };
  const measured = played(measuredFigures(drain, model)).of(0);
  const isShort = drain.tank !== null && measured.cleanL < askedL * (1 - SHORT_BY);
  if (measured.cleanL <= 0 || isShort) return { estimate: null, draws: new Float64Array(0) };
  const drawn = inputs === null ? null : played(inputs);
  const draws = Float64Array.from({ length: inputs?.ratio.length ?? 0 }, (_, draw) =>
    drawn === null ? 0 : ratioOf(drawn.of(draw)),
  );
  return { estimate: ratioOf(measured), draws };
}

function ratioOf({ cleanL, producingL, flushL }: DrawnUse): number {
  return (producingL + flushL) / cleanL;
}

/** The measured figures as a single draw. */
function measuredFigures({ flushVolumes, tank }: DeviceDrain, model: DrainDevice): DeviceDraws {
  return {
    ratio: Float64Array.of(model.drainRatio),
    perStartL: Float64Array.of(model.perStartL ?? 0),
    flushL: flushVolumes.map(({ volumeL }) => Float64Array.of(volumeL)),
    tank: tank === null ? null : measuredTank(tank),
  };
}
