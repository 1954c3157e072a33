import { checkFlow } from './check-device.ts';
import type { PourSeries } from './drain-device.ts';
import type { PourGroup } from './pour-group.ts';
import { randomStream } from './random-stream.ts';
import { evenPours, randomPours, togetherPours } from './spread-pours.ts';

/** How a scenario is played. */
export interface ScenarioOptions {
  /** Whole days from 00:00 of a Monday, second 0. */
  readonly days: number;
  /** A whole number; only `random` groups draw from it, each from a stream of its own. */
  readonly seed: number;
  /** Gives pours their duration; left out: they take no time and none has to wait. */
  readonly cleanFlowLPerMin?: number;
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
  const { days, seed, cleanFlowLPerMin } = options;
  checkFlow(cleanFlowLPerMin);
  const merged = mergeInTime(
    groups.map((group, index) => {
      switch (group.spread) {
        case 'even':
          return evenPours(group, days);
        case 'together':
          return togetherPours(group, days, cleanFlowLPerMin);
        default:
          return randomPours(group, days, randomStream(seed, index));
      }
    }),
  );
  if (cleanFlowLPerMin !== undefined) waitInLine(merged, cleanFlowLPerMin);
  return merged;
}

/** Merges lists that are each in order of time; of pours at one instant the first list's goes first. */
function mergeInTime(parts: readonly PourSeries[]): PourSeries {
  const count = parts.reduce((sum, { atS }) => sum + atS.length, 0);
  const merged = { atS: new Float64Array(count), volumeL: new Float64Array(count) };
  const taken = new Int32Array(parts.length);
  // When each list goes on; kept apart so that choosing the next pour reads one column.
  const headS = Float64Array.from(parts, ({ atS }) => atS[0] ?? Number.POSITIVE_INFINITY);
  for (let index = 0; index < count; index++) {
    let earliest = 0;
    for (let part = 1; part < headS.length; part++) {
      if ((headS[part] as number) < (headS[earliest] as number)) earliest = part;
    }
    const { atS, volumeL } = parts[earliest] as PourSeries;
    const next = taken[earliest] as number;
    merged.atS[index] = atS[next] as number;
    merged.volumeL[index] = volumeL[next] as number;
    taken[earliest] = next + 1;
    headS[earliest] = next + 1 < atS.length ? (atS[next + 1] as number) : Number.POSITIVE_INFINITY;
  }
  return merged;
}

function waitInLine(pours: PourSeries, cleanFlowLPerMin: number): void {
  const secondsPerL = 60 / cleanFlowLPerMin;
  let freeS = 0;
  for (let index = 0; index < pours.atS.length; index++) {
    const startS = Math.max(pours.atS[index] as number, freeS);
    pours.atS[index] = startS;
    freeS = startS + (pours.volumeL[index] as number) * secondsPerL;
  }
}
