import { checkDevice } from './check-device.ts';
import { checkNumber, ZERO_OR_MORE } from './check-number.ts';
import { compileFlushRules } from './compile-flush-rules.ts';
import type { DrainDevice, Horizon, PourSeries } from './drain-device.ts';
import { startFlushPlay } from './flush-play.ts';
import { playPours } from './play-pours.ts';

/** What each of many years came to: one column a figure, one entry a year. */
export interface PlayedYears {
  /** Clean litres delivered. */
  readonly cleanL: Float64Array;
  /** Starts of production. */
  readonly starts: Float64Array;
  /** Executed flushes, by row of the device's rules. */
  readonly flushes: readonly Float64Array[];
}

export interface YearPlayer {
  readonly played: PlayedYears;
  /**
   * Plays one year.
   * @param year its entry in the columns
   * @throws {BenchError} as `simulateDrain`
   */
  play(year: number, pours: PourSeries): void;
}

/**
 * Plays many years of one device by the rules of `simulateDrain`, keeping counts instead of volumes:
 * what drains is then a sum over the counts for any drain ratio, drain per start and flush volume,
 * none of which moves a flush in time.
 *
 * @param horizon as for `simulateDrain`; flushes are not recorded
 * @param years how many entries the columns have
 * @throws {BenchError} simulation-input
 */
export function yearPlayer(device: DrainDevice, horizon: Horizon, years: number): YearPlayer {
  checkDevice(device);
  const endS = checkNumber('endS', horizon.endS, ZERO_OR_MORE);
  const clockS = checkNumber('clockAtStartS', horizon.clockAtStartS ?? 0, ZERO_OR_MORE);
  const rules = compileFlushRules(device);
  const { cleanFlowLPerMin } = device;
  const secondsPerL = cleanFlowLPerMin === undefined ? 0 : 60 / cleanFlowLPerMin;
  const played = {
    cleanL: new Float64Array(years),
    starts: new Float64Array(years),
    flushes: device.flushRules.map(() => new Float64Array(years)),
  };
  return {
    played,
    play: (year, pours) => {
      const play = startFlushPlay(rules, clockS, null);
      const { cleanL, starts } = playPours(play, pours, secondsPerL, endS);
      played.cleanL[year] = cleanL;
      played.starts[year] = starts;
      for (const [row, column] of played.flushes.entries()) column[year] = play.counts[row] ?? 0;
    },
  };
}
