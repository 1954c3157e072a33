import { checkFlow } from './check-device.ts';
import { refuseInput } from './check-number.ts';
import type { PourSeries } from './drain-device.ts';
import { enlarge, type PourBuffer, pourBuffer } from './pour-buffer.ts';
import { checkGroup, daysOf, type PourGroup } from './pour-group.ts';
import type { RandomStream } from './random-stream.ts';

/**
 * Pours spread evenly: the window is split into equal parts, and a pour starts at each middle.
 *
 * @param group its `spread` is not looked at
 * @param days whole days from 00:00 of a Monday, second 0
 * @throws {BenchError} simulation-input, also when `poursPerDay` is not whole
 * @example
 * const glasses = { weekdays: Array(7).fill(true), fromS: 0, toS: 400, poursPerDay: 2,
 *   volumeL: 0.25, spread: 'even' } as const;
 * evenPours(glasses, 1).atS // [100, 300]
 */
export function evenPours(group: PourGroup, days: number): PourSeries {
  checkGroup(group);
  return series(group, (buffer) => fillEven(buffer, group, daysOf(group, days)));
}

/** The times of `evenPours` on days that begin at the given seconds. */
export function fillEven(buffer: PourBuffer, group: PourGroup, midnights: Float64Array): void {
  const count = wholePours(group);
  const partS = (group.toS - group.fromS) / count;
  buffer.count = 0;
  for (const midnightS of midnights) {
    for (let part = 0; part < count; part++) {
      add(buffer, midnightS + group.fromS + (part + 0.5) * partS);
    }
  }
}

/**
 * Pours one right after the other from the start of the window, past its end where they must.
 *
 * @param group its `spread` is not looked at
 * @param days whole days from 00:00 of a Monday, second 0
 * @param cleanFlowLPerMin gives the pours their duration; without it they all start together
 * @throws {BenchError} simulation-input, also when `poursPerDay` is not whole
 * @example
 * const carafe = { weekdays: Array(7).fill(true), fromS: 0, toS: 400, poursPerDay: 2,
 *   volumeL: 1, spread: 'together' } as const;
 * togetherPours(carafe, 1, 2).atS // [0, 30]
 */
export function togetherPours(
  group: PourGroup,
  days: number,
  cleanFlowLPerMin?: number,
): PourSeries {
  checkGroup(group);
  checkFlow(cleanFlowLPerMin);
  return series(group, (buffer) =>
    fillTogether(buffer, group, daysOf(group, days), cleanFlowLPerMin),
  );
}

/** The times of `togetherPours` on days that begin at the given seconds. */
export function fillTogether(
  buffer: PourBuffer,
  group: PourGroup,
  midnights: Float64Array,
  cleanFlowLPerMin: number | undefined,
): void {
  const count = wholePours(group);
  const pourS = cleanFlowLPerMin === undefined ? 0 : (group.volumeL * 60) / cleanFlowLPerMin;
  let freeS = 0;
  buffer.count = 0;
  for (const midnightS of midnights) {
    // A row of pours longer than a day holds up the next day's.
    const firstS = Math.max(midnightS + group.fromS, freeS);
    for (let pour = 0; pour < count; pour++) add(buffer, firstS + pour * pourS);
    freeS = firstS + count * pourS;
  }
}

/**
 * Pours at random: a Poisson process within the window, with a mean of `poursPerDay` on each day.
 *
 * The gaps are drawn from the exponential distribution until one leaves the window, which makes the
 * number of pours Poisson and their times uniform.
 * @param group its `spread` is not looked at
 * @param days whole days from 00:00 of a Monday, second 0
 * @param random the stream to draw from; one number per pour and one more per day
 * @throws {BenchError} simulation-input
 * @example
 * const glasses = { weekdays: Array(7).fill(true), fromS: 25_200, toS: 79_200, poursPerDay: 6.5,
 *   volumeL: 0.25, spread: 'random' } as const;
 * randomPours(glasses, 365, randomStream(1)).atS.length // near 6.5 × 365 = 2372.5
 */
export function randomPours(group: PourGroup, days: number, random: RandomStream): PourSeries {
  checkGroup(group);
  return series(group, (buffer) => fillRandom(buffer, group, daysOf(group, days), random));
}

/** The times of `randomPours` on days that begin at the given seconds. */
export function fillRandom(
  buffer: PourBuffer,
  group: PourGroup,
  midnights: Float64Array,
  random: RandomStream,
): void {
  const { fromS, toS, poursPerDay } = group;
  buffer.count = 0;
  // No pours make the gap infinite; it must not meet a gap of 0 then.
  if (poursPerDay === 0) return;
  const meanGapS = (toS - fromS) / poursPerDay;
  for (const midnightS of midnights) {
    let clockS = fromS + exponential(random, meanGapS);
    while (clockS < toS) {
      add(buffer, midnightS + clockS);
      clockS += exponential(random, meanGapS);
    }
  }
}

function add(buffer: PourBuffer, atS: number): void {
  if (buffer.count === buffer.atS.length) enlarge(buffer);
  buffer.atS[buffer.count++] = atS;
}

/** 1 − fraction is never 0, so that the logarithm is finite. */
function exponential(random: RandomStream, mean: number): number {
  return -Math.log(1 - random.nextFraction()) * mean;
}

function wholePours(group: PourGroup): number {
  if (!Number.isSafeInteger(group.poursPerDay)) {
    refuseInput(
      `poursPerDay is ${group.poursPerDay}`,
      'give a whole number of pours, or spread them at random',
    );
  }
  return group.poursPerDay;
}

function series(group: PourGroup, fill: (buffer: PourBuffer) => void): PourSeries {
  const buffer = pourBuffer();
  fill(buffer);
  const atS = buffer.atS.slice(0, buffer.count);
  return { atS, volumeL: new Float64Array(atS.length).fill(group.volumeL) };
}
