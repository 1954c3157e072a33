import { checkFlow } from './check-device.ts';
import { refuseInput } from './check-number.ts';
import type { PourSeries } from './drain-device.ts';
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
  const count = wholePours(group);
  const partS = (group.toS - group.fromS) / count;
  return series(
    group,
    daysOf(group, days).flatMap((midnightS) =>
      Array.from({ length: count }, (_, part) => midnightS + group.fromS + (part + 0.5) * partS),
    ),
  );
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
  const count = wholePours(group);
  const pourS = cleanFlowLPerMin === undefined ? 0 : (group.volumeL * 60) / cleanFlowLPerMin;
  const atS: number[] = [];
  let freeS = 0;
  for (const midnightS of daysOf(group, days)) {
    // A row of pours longer than a day holds up the next day's.
    const firstS = Math.max(midnightS + group.fromS, freeS);
    for (let pour = 0; pour < count; pour++) atS.push(firstS + pour * pourS);
    freeS = firstS + count * pourS;
  }
  return series(group, atS);
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
  const { fromS, toS, poursPerDay } = group;
  const midnights = daysOf(group, days);
  // No pours make the gap infinite; it must not meet a gap of 0 then.
  if (poursPerDay === 0) return series(group, []);
  const meanGapS = (toS - fromS) / poursPerDay;
  // Room for the mean and some standard deviations; grows when a year is busier still.
  const mean = poursPerDay * midnights.length;
  let atS = new Float64Array(Math.ceil(mean + 5 * Math.sqrt(mean) + 16));
  let count = 0;
  for (const midnightS of midnights) {
    let clockS = fromS + exponential(random, meanGapS);
    while (clockS < toS) {
      if (count === atS.length) atS = enlarged(atS);
      atS[count++] = midnightS + clockS;
      clockS += exponential(random, meanGapS);
    }
  }
  return series(group, atS.subarray(0, count));
}

/** 1 − fraction is never 0, so that the logarithm is finite. */
function exponential(random: RandomStream, mean: number): number {
  return -Math.log(1 - random.nextFraction()) * mean;
}

function enlarged(column: Float64Array): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(column.length * 2);
  larger.set(column);
  return larger;
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

function series(group: PourGroup, atS: ArrayLike<number>): PourSeries {
  return {
    atS: Float64Array.from(atS),
    volumeL: new Float64Array(atS.length).fill(group.volumeL),
  };
}
