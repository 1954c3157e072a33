import {
  type DrainDevice,
  type Horizon,
  type PourGroup,
  randomStream,
  scenarioYears,
} from '../../simulate/index.ts';
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

/** Years of pours at random that are played. */
const RANDOM_YEARS = 40;

/** Streams of one year, as for scenarios. */
const STREAMS_OF_YEAR = 1024;

/** Pours of one size, so many every day from 07:00 to 22:00. */
export interface DailyPours {
  readonly pourL: number;
  /** A whole number from 1; of random pours their mean. */
  readonly perDay: number;
  readonly days: number;
  /** Null: evenly spread; else the seed of pours at random. */
  readonly seed: number | null;
}

/** Total drain ratio of a device at one pour size and number of pours a day. */
export interface DailyDrain {
  readonly estimate: number | null;
  /** One a draw; empty without draws. */
  readonly draws: Float64Array;
}

/**
 * Plays so many pours a day through a device, with its measured figures and with each draw of them.
 *
 * Pours at random are Poisson, played for forty years: the estimate is that of all of them together,
 * and each draw takes one of the years in turn.
 * @param inputs null: no draws
 * @returns no estimate where a tank cannot give so much: its ratio would be that of other pours
 * @throws {BenchError} simulation-input
 */
export function dailyDrain(
  drain: DeviceDrain,
  model: DrainDevice,
  at: DailyPours,
  inputs: DeviceDraws | null,
): DailyDrain {
  const years = at.seed === null ? 1 : RANDOM_YEARS;
  const household = scenarioYears([dailyGroup(at)], { days: at.days });
  const measured = deviceYears(model, measuredFigures(drain, model, years), horizonOf(at), years);
  const drawn = inputs === null ? null : deviceYears(model, inputs, horizonOf(at), years);
  let askedL = 0;
  for (let year = 0; year < years; year++) {
    const stream = (year + 1) * STREAMS_OF_YEAR;
    household.draw((group) => randomStream(at.seed ?? 0, stream + group));
    const pours = household.pours(model.cleanFlowLPerMin);
    askedL += pours.volumeL.reduce((sum, litres) => sum + litres, 0);
    measured.play(year, pours);
    drawn?.play(year, pours);
  }
  const { cleanL, drainL } = together(measured, years);
  const isShort = drain.tank !== null && cleanL < askedL * (1 - SHORT_BY);
  if (cleanL <= 0 || isShort) return { estimate: null, draws: new Float64Array(0) };
  const draws = Float64Array.from({ length: inputs?.ratio.length ?? 0 }, (_, draw) =>
    drawn === null ? 0 : ratioOf(drawn.of(draw)),
  );
  return { estimate: drainL / cleanL, draws };
}

function dailyGroup({ pourL, perDay, seed }: DailyPours): PourGroup {
  return {
    weekdays: Array<boolean>(7).fill(true),
    fromS: 7 * 3600,
    toS: 22 * 3600,
    poursPerDay: perDay,
    volumeL: pourL,
    spread: seed === null ? 'even' : 'random',
  };
}

function horizonOf({ days }: DailyPours): Horizon {
  return { endS: days * DAY_S };
}

function together(
  played: DeviceYears,
  years: number,
): { readonly cleanL: number; readonly drainL: number } {
  let cleanL = 0;
  let drainL = 0;
  for (let year = 0; year < years; year++) {
    const use = played.of(year);
    cleanL += use.cleanL;
    drainL += use.producingL + use.flushL;
  }
  return { cleanL, drainL };
}

function ratioOf({ cleanL, producingL, flushL }: DrawnUse): number {
  return (producingL + flushL) / cleanL;
}

/** The measured figures, once for each year. */
function measuredFigures(
  { flushVolumes, tank }: DeviceDrain,
  model: DrainDevice,
  years: number,
): DeviceDraws {
  const column = (value: number): Float64Array => new Float64Array(years).fill(value);
  return {
    ratio: column(model.drainRatio),
    perStartL: column(model.perStartL ?? 0),
    flushL: flushVolumes.map(({ volumeL }) => column(volumeL)),
    tank: tank === null ? null : measuredTank(tank, years),
  };
}
