import { checkFlow } from './check-device.ts';
import type { PourSeries } from './drain-device.ts';
import { type PourBuffer, pourBuffer } from './pour-buffer.ts';
import { checkGroup, type DaysAway, daysOf, type PourGroup } from './pour-group.ts';
import { type RandomStream, randomStream } from './random-stream.ts';
import { fillEven, fillRandom, fillTogether } from './spread-pours.ts';

/** How a scenario is played. */
export interface ScenarioOptions {
  /** Whole days from 00:00 of a Monday, second 0. */
  readonly days: number;
  /** A whole number; only `random` groups draw from it, each from a stream of its own. */
  readonly seed: number;
  /** Gives pours their duration; left out: they take no time and none has to wait. */
  readonly cleanFlowLPerMin?: number;
  /** Days without any pour; left out: none. */
  readonly away?: readonly DaysAway[];
}

/**
 * The pours of a scenario: those of its groups in order of time, ties in the order of the groups.
 *
 * Pours wait for each other: one that would overlap starts when the earlier one ends. A pour held up
 * like this may start after its window, and even after the last day.
 *
 * @param groups may be empty
 * @throws {BenchError} simulation-input
 * @example
 * const carafe = { weekdays: Array(7).fill(true), fromS: 0, toS: 60, poursPerDay: 1, volumeL: 1,
 *   spread: 'together' } as const;
 * scenarioPours([carafe, carafe], { days: 1, seed: 1, cleanFlowLPerMin: 2 }).atS // [0, 30]
 */
export function scenarioPours(groups: readonly PourGroup[], options: ScenarioOptions): PourSeries {
  const { days, seed, cleanFlowLPerMin, away } = options;
  const years = scenarioYears(groups, { days, ...(away === undefined ? {} : { away }) });
  years.draw((group) => randomStream(seed, group));
  return years.pours(cleanFlowLPerMin);
}

/** A scenario whose years are drawn again and again into the same columns. */
export interface ScenarioYears {
  /**
   * Draws a year.
   * @param streamOf the stream each random group draws from, by index of the group
   * @param pourFactor every pour of the year is this many times as large; left out: 1
   */
  draw(streamOf: (group: number) => RandomStream, pourFactor?: number): void;
  /**
   * The pours of the year last drawn, for a device of this flow. The columns are filled anew by the
   * next call.
   */
  pours(cleanFlowLPerMin?: number): PourSeries;
}

/**
 * Years of a scenario, for playing many of them: what a year costs is its pours, and no new memory.
 *
 * @throws {BenchError} simulation-input
 */
export function scenarioYears(
  groups: readonly PourGroup[],
  options: Pick<ScenarioOptions, 'days' | 'away'>,
): ScenarioYears {
  for (const group of groups) checkGroup(group);
  const midnights = groups.map((group) => daysOf(group, options.days, options.away));
  const parts = groups.map(() => pourBuffer());
  const merged = { atS: pourBuffer(), volumeL: pourBuffer() };
  let scaled = groups;
  for (const [index, group] of groups.entries()) {
    if (group.spread === 'even') fillEven(bufferAt(parts, index), group, daysAt(midnights, index));
  }
  return {
    draw: (streamOf, pourFactor = 1) => {
      scaled = groups.map((group) => ({ ...group, volumeL: group.volumeL * pourFactor }));
      for (const [index, group] of groups.entries()) {
        if (group.spread !== 'random') continue;
        fillRandom(bufferAt(parts, index), group, daysAt(midnights, index), streamOf(index));
      }
    },
    pours: (cleanFlowLPerMin) => {
      checkFlow(cleanFlowLPerMin);
      for (const [index, group] of scaled.entries()) {
        if (group.spread !== 'together') continue;
        const buffer = bufferAt(parts, index);
        fillTogether(buffer, group, daysAt(midnights, index), cleanFlowLPerMin);
      }
      return mergeInTime(parts, scaled, merged, cleanFlowLPerMin);
    },
  };
}

function bufferAt(parts: readonly PourBuffer[], index: number): PourBuffer {
  return parts[index] as PourBuffer;
}

function daysAt(midnights: readonly Float64Array[], index: number): Float64Array {
  return midnights[index] as Float64Array;
}

/**
 * Merges lists that are each in order of time; of pours at one instant the first list's goes first.
 * A pour that would overlap waits for the end of the one before it.
 */
function mergeInTime(
  parts: readonly PourBuffer[],
  groups: readonly PourGroup[],
  merged: { readonly atS: PourBuffer; readonly volumeL: PourBuffer },
  cleanFlowLPerMin: number | undefined,
): PourSeries {
  const total = parts.reduce((sum, part) => sum + part.count, 0);
  for (const column of [merged.atS, merged.volumeL]) {
    if (column.atS.length < total) column.atS = new Float64Array(Math.ceil(total * 1.2));
  }
  const { atS } = merged.atS;
  const volumeL = merged.volumeL.atS;
  const secondsPerL = cleanFlowLPerMin === undefined ? 0 : 60 / cleanFlowLPerMin;
  const waits = cleanFlowLPerMin !== undefined;
  const litres = Float64Array.from(groups, (group) => group.volumeL);
  const counts = Int32Array.from(parts, (part) => part.count);
  const taken = new Int32Array(parts.length);
  const partCount = parts.length;
  // When each list goes on; kept apart so that choosing the next pour reads one column.
  const headS = Float64Array.from(parts, (part) =>
    part.count > 0 ? (part.atS[0] as number) : Number.POSITIVE_INFINITY,
  );
  let freeS = 0;
  for (let index = 0; index < total; index++) {
    let earliest = 0;
    let firstS = headS[0] as number;
    for (let part = 1; part < partCount; part++) {
      const partS = headS[part] as number;
      if (partS < firstS) {
        firstS = partS;
        earliest = part;
      }
    }
    const pourL = litres[earliest] as number;
    const startS = waits && freeS > firstS ? freeS : firstS;
    atS[index] = startS;
    volumeL[index] = pourL;
    freeS = startS + pourL * secondsPerL;
    const next = (taken[earliest] as number) + 1;
    taken[earliest] = next;
    headS[earliest] =
      next < (counts[earliest] as number)
        ? ((parts[earliest] as PourBuffer).atS[next] as number)
        : Number.POSITIVE_INFINITY;
  }
  return { atS: atS.subarray(0, total), volumeL: volumeL.subarray(0, total) };
}
