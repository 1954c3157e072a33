import {
  type DrainDevice,
  type Horizon,
  type PourSeries,
  simulateTank,
  yearPlayer,
} from '../../simulate/index.ts';
import { tankDrainL } from '../tank/index.ts';
import type { DeviceDraws } from './device-draws.ts';

/** Where the water of one draw went, over the whole of the year it uses. */
export interface DrawnUse {
  /** The year, an entry of the pour factors. */
  readonly year: number;
  readonly cleanL: number;
  readonly producingL: number;
  readonly flushL: number;
  /** Executed flushes, and seconds of filling a tank (0 without one). */
  readonly flushes: number;
  readonly fillingS: number;
}

/** A device that is played through years of a household, then asked what each draw came to. */
export interface DeviceYears {
  /** @throws {BenchError} as `simulateDrain` */
  play(year: number, pours: PourSeries): void;
  /** Only after all years were played. */
  of(draw: number): DrawnUse;
  /** Draws so far apart share clean water, flushes and filling: they differ in drained litres only. */
  readonly period: number;
  /** Executed flushes of a draw by rule. */
  flushesOf(draw: number): Readonly<Record<string, number>>;
}

/**
 * Plays years for all draws of a device at once.
 *
 * A fixed ratio moves no flush in time, so a year is played once and every draw that uses it is a sum
 * over its counts. The figures of a tank do move its fillings: each of the tanks drawn is played
 * through one year, in turn, and a draw takes one tank with its year.
 * @param years how many years there are
 */
export function deviceYears(
  model: DrainDevice,
  inputs: DeviceDraws,
  horizon: Horizon,
  years: number,
): DeviceYears {
  const player = yearPlayer(model, horizon, years);
  const { played } = player;
  const { tank } = inputs;
  const tanks = tank?.tanks ?? [];
  const drawnL = new Float64Array(tanks.length);
  const refillL = new Float64Array(tanks.length);
  const fillingS = new Float64Array(tanks.length);
  const tankOf = (draw: number): number => draw % tanks.length;
  const yearOf = (draw: number): number => (tank === null ? draw : tankOf(draw)) % years;
  return {
    period: tank === null ? years : tanks.length,
    play: (year, pours) => {
      player.play(year, pours);
      for (let at = year; at < tanks.length; at += years) {
        const each = tanks[at];
        if (each === undefined) break;
        const played = simulateTank(each, pours, { endS: horizon.endS });
        drawnL[at] = played.drawnL;
        refillL[at] = tankDrainL(played);
        fillingS[at] = played.fillingS;
      }
    },
    of: (draw) => {
      const year = yearOf(draw);
      const ratio = inputs.ratio[draw] as number;
      let flushL = 0;
      let flushes = 0;
      for (const [row, rule] of model.flushRules.entries()) {
        const times = played.flushes[row]?.[year] ?? 0;
        const volumeL = inputs.flushL[row]?.[draw] ?? rule.volumeL;
        // Product that a flush spends has to be made, which drains too.
        const making = rule.water === 'clean' ? ratio : 0;
        flushL += times * volumeL * ((rule.drainFraction ?? 1) + making);
        flushes += times;
      }
      if (tank !== null) {
        const at = tankOf(draw);
        return {
          year,
          cleanL: drawnL[at] as number,
          producingL: (refillL[at] as number) * (tank.rejectFactor[draw] as number),
          flushL,
          flushes,
          fillingS: fillingS[at] as number,
        };
      }
      const cleanL = played.cleanL[year] as number;
      const startsL = (inputs.perStartL[draw] as number) * (played.starts[year] as number);
      return { year, cleanL, producingL: ratio * cleanL + startsL, flushL, flushes, fillingS: 0 };
    },
    flushesOf: (draw) => {
      const counts: Record<string, number> = {};
      for (const [row, { rule }] of model.flushRules.entries()) {
        counts[rule] = (counts[rule] ?? 0) + (played.flushes[row]?.[yearOf(draw)] ?? 0);
      }
      return counts;
    },
  };
}
