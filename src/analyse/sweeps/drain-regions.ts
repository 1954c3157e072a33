import type { DrainRegionRow } from '../../model/index.ts';
import { STANDARD } from '../../model/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import { type DeviceDraws, ranged } from '../drain-uncertainty/index.ts';
import { isOneSided } from './break-even-range.ts';
import { type DailyDrain, dailyDrain } from './daily-pours.ts';

export interface RegionGrid {
  readonly poursL: readonly number[];
  /** Whole numbers from 1. */
  readonly perDay: readonly number[];
  readonly days: number;
  /** Null: even pours; else the seed of pours at random. */
  readonly seed: number | null;
  readonly confidence: number;
}

/** A device in a state that can be compared, with the draws of its figures. */
export interface Contender {
  readonly drain: DeviceDrain;
  /** Null: no draws, so nothing is told apart. */
  readonly inputs: DeviceDraws | null;
}

/**
 * Which device drains least at each pour size and number of pours a day.
 *
 * Every cell plays its pours through every device. The one with the lowest estimate is named; it is
 * told apart from another where the central part of the draws of their difference lies on one side of
 * 0. No allowance is made for looking at many cells.
 * @param contenders devices with a drain line; a tank needs its refill model. Where it cannot give
 *   the water of a cell it stays out of it
 * @returns cells by pour size, then pours a day; none without a device that can be played. Yields the
 *   done part between cells
 */
export function* regionSteps(
  contenders: readonly Contender[],
  grid: RegionGrid,
): Generator<{ readonly done: number }, DrainRegionRow[]> {
  const cells = grid.poursL.flatMap((pourL) => grid.perDay.map((perDay) => ({ pourL, perDay })));
  const rows: DrainRegionRow[] = [];
  for (const [at, { pourL, perDay }] of cells.entries()) {
    rows.push(...regionOf(contenders, grid, pourL, perDay));
    yield { done: (at + 1) / cells.length };
  }
  return rows;
}

function regionOf(
  contenders: readonly Contender[],
  grid: RegionGrid,
  pourL: number,
  perDay: number,
): DrainRegionRow[] {
  const at = { pourL, perDay, days: grid.days, seed: grid.seed };
  const played = contenders.flatMap(({ drain, inputs }) => {
    if (drain.model === null) return [];
    const daily = dailyDrain(drain, drain.model, at, inputs);
    return daily.estimate === null ? [] : { drain, daily, estimate: daily.estimate };
  });
  const least = played.reduce<(typeof played)[number] | null>(
    (lowest, one) => (lowest === null || one.estimate < lowest.estimate ? one : lowest),
    null,
  );
  if (least === null) return [];
  const others = played.filter(
    (one) => one !== least && !isApart(one.daily, least.daily, grid.confidence),
  );
  const hasDraws = least.daily.draws.length > 0;
  return [
    {
      pour_mL: pourL * 1000,
      pours_per_day: perDay,
      device: least.drain.device.values.device,
      variant: least.drain.variant,
      total_drain_ratio: ranged(least.estimate, least.daily.draws, grid.confidence),
      told_apart: hasDraws ? others.length === 0 : null,
      not_told_apart_from: hasDraws ? others.map(({ drain }) => nameOf(drain)) : [],
    },
  ];
}

function isApart(a: DailyDrain, b: DailyDrain, confidence: number): boolean {
  return isOneSided(
    b.draws.length,
    (draw) => (a.draws[draw] as number) - (b.draws[draw] as number),
    confidence,
  );
}

function nameOf({ device, variant }: DeviceDrain): string {
  const name = device.values.device;
  return variant === STANDARD ? name : `${name} (${variant})`;
}
