import { checkDevice } from './check-device.ts';
import { checkNumber, refuseInput, ZERO_OR_MORE } from './check-number.ts';
import { compileFlushRules } from './compile-flush-rules.ts';
import type { DrainDevice, FlushRecord, Horizon, Pours, SimulatedDrain } from './drain-device.ts';
import { recovery, totalDrainRatio } from './drain-ratio.ts';
import { type FlushPlay, startFlushPlay } from './flush-play.ts';
import { playPours } from './play-pours.ts';
import { pourColumns } from './pour-order.ts';

/**
 * Plays pours through a device and says where the water went.
 *
 * Second 0 is power-on. A pour drains `drainRatio` × volume + `perStartL`. Flushes take no time
 * and are booked when they fire, by these rules:
 *
 * - Times closer than 1e-6 s are one instant. Order in it: end of a pour, with the flushes and dumps
 *   its volume set off; due timers, `interval` and timed `dump` before `idle`; `start` rules; the
 *   next pour. Within each of these: row order. Power-on rules come before all at second 0.
 * - `idle` is due `afterS` after the end of a pour; a pour that starts before cancels it. With
 *   `repeat` it is due again `afterS` after each due firing, executed or dropped. Anchor `power-on`
 *   arms it at second 0 as well.
 * - `interval` is due at every multiple of `afterS`. Inside a pour it waits for the end; the grid
 *   stays where it is, and points passed while waiting are lost. Anchor `last-flush`: due `afterS`
 *   after the last executed flush of any rule (before any: after power-on). Such a flush also calls
 *   off a firing that waits for a pour or for quiet hours to end; after a dropped firing it is due
 *   `afterS` later.
 * - `produced` adds up the litres of the pours; at the end of a pour all flushes owed fire together
 *   and the counter keeps the remainder. A pour that ends after the horizon is not counted. A
 *   dropped flush stays owed.
 * - `dump` with `afterL` acts like `produced`, with `afterS` like `interval` anchored at power-on.
 * - `start` fires at the start of a pour, if the pause since the last pour (before the first: since
 *   power-on) was `afterS` or longer.
 * - `power-on` fires once, at second 0, and is never dropped.
 * - `minIntervalS` drops a flush of its own rule when the last executed flush of any rule is less
 *   than that ago.
 * - `quiet` concerns `idle`, `interval` and timed `dump`, at the time the flush would fire. A
 *   deferred flush fires at `toS` without a second look at the clock; a pour still cancels an idle
 *   one; a repeat counts from the actual firing, and a grid goes on with its next point after it.
 * - A flush due at the horizon fires. A pour that starts at or before the horizon counts in full.
 * - `drainFraction` of the volume goes to drain; the flush counts even if it is 0.
 * - A flush with `water: 'clean'` spends product: its drain is `drainFraction` × volume plus
 *   `drainRatio` × volume for making it, all of it flush drain. That product is no clean water
 *   delivered: it is neither in `cleanL` nor counted by volume rules.
 *
 * @param device litres and seconds; see DrainDevice and FlushRule for each figure
 * @param pours starts in s and volumes in L, in order, not overlapping; may be empty. A pour of 0 L
 *   is a start like any other
 * @param horizon how long the device is watched, from second 0
 * @returns volumes in L; ratio and recovery null without clean water
 * @throws {BenchError} simulation-input: a figure is missing or outside its range; pours-unordered
 *   and pours-overlap: the message names the index of the pour. Pours after the horizon are checked
 *   too
 * Source: the rules are conventions of this tool; where devices differ, the anchors and modes above
 *   choose.
 * Checked by: tests/outside-checks/drain-model/
 * @example
 * simulateDrain(
 *   {
 *     drainRatio: 0.5,
 *     flushRules: [{ rule: 'after use', trigger: 'idle', afterS: 600, volumeL: 1.4 }],
 *   },
 *   { atS: [0, 300], volumeL: [0.25, 0.25] },
 *   { endS: 86_400 },
 * ).totalDrainL // 1.65: 0.5 × 0.5 L, and one flush after the second glass
 */
export function simulateDrain(device: DrainDevice, pours: Pours, horizon: Horizon): SimulatedDrain {
  checkDevice(device);
  const endS = checkNumber('endS', horizon.endS, ZERO_OR_MORE);
  const clockS = checkNumber('clockAtStartS', horizon.clockAtStartS ?? 0, ZERO_OR_MORE);
  const names = device.flushRules.map(({ rule }) => rule);
  const flushes: FlushRecord[] = [];
  const record = horizon.recordFlushes === true ? { names, flushes } : null;

  const play = startFlushPlay(compileFlushRules(device), clockS, record);
  const { cleanL, starts } = playPours(play, pourColumns(pours), secondsPerLitre(device), endS);

  const producingDrainL = device.drainRatio * cleanL + (device.perStartL ?? 0) * starts;
  const flushDrainL = flushDrain(play);
  const totalDrainL = producingDrainL + flushDrainL;
  if (!Number.isFinite(cleanL + totalDrainL)) {
    refuseInput('the volumes add up to more than a number can hold', 'check the volumes');
  }
  return {
    // Adding 0 turns -0 into 0.
    cleanL: cleanL + 0,
    producingDrainL: producingDrainL + 0,
    flushDrainL: flushDrainL + 0,
    totalDrainL: totalDrainL + 0,
    flushCounts: countsByName(names, play),
    totalDrainRatio: totalDrainRatio(cleanL, totalDrainL),
    recovery: recovery(cleanL, totalDrainL),
    ...(record === null ? {} : { flushes }),
  };
}

function secondsPerLitre({ cleanFlowLPerMin }: DrainDevice): number {
  return cleanFlowLPerMin === undefined ? 0 : 60 / cleanFlowLPerMin;
}

/** Counts are whole numbers, so that a year of flushes is one exact product per rule. */
function flushDrain(play: FlushPlay): number {
  return play.counts.reduce(
    (sumL, count, row) => sumL + count * (play.rules.drainPerFlushL[row] ?? 0),
    0,
  );
}

function countsByName(names: readonly string[], play: FlushPlay): Record<string, number> {
  const counts = new Map<string, number>();
  for (const [row, name] of names.entries()) {
    counts.set(name, (counts.get(name) ?? 0) + (play.counts[row] ?? 0));
  }
  return Object.fromEntries(counts);
}
