import { arithmeticMean, sampleSd } from '../../statistics/index.ts';
import type { Instruments } from '../drain-uncertainty/index.ts';
import type { PourRun } from '../pour-flow.ts';
import { type FigureRange, rangeOf, type SeenScatter } from './flow-range.ts';
import { type PooledFlow, pooledFlow } from './pooled-flow.ts';
import { joined, type Stretch, withoutRush } from './run-parts.ts';

/** The first rush when the tap opens, beside the flow after it. */
export interface FirstRush {
  readonly runs: number;
  /** Mean length of the first split, seconds. */
  readonly seconds: number;
  readonly flowLPerMin: number;
  readonly flow: FigureRange;
  readonly afterLPerMin: number;
  readonly after: FigureRange;
}

/** Flow of the first splits against that of the rest of the same runs; null where none was split. */
export function firstRush(
  runs: readonly PourRun[],
  instruments: Instruments,
  confidence: number,
): FirstRush | null {
  const found = runs.flatMap((run) => {
    const { rush, rest } = withoutRush(run, instruments);
    return rush === null ? [] : { rush, rest: joined(rest) };
  });
  const flow = pooledFlow(found.map(({ rush }) => rush));
  const after = pooledFlow(found.map(({ rest }) => rest));
  if (flow === null || after === null) return null;
  const range = (pooled: PooledFlow) => rangeOf(pooled.flowLPerMin, pooled.open, confidence);
  return {
    runs: found.length,
    seconds: arithmeticMean(found.map(({ rush }) => rush.timeS)),
    flowLPerMin: flow.flowLPerMin,
    flow: range(flow),
    afterLPerMin: after.flowLPerMin,
    after: range(after),
  };
}

/** Share by which the flow falls along a run. */
export interface Decline {
  readonly share: number;
  readonly range: FigureRange;
}

interface RunEnds {
  readonly first: Stretch;
  readonly last: Stretch;
  /** The two follow each other: one stop, and between cumulative readings one reading, is of both. */
  readonly areNeighbours: boolean;
  readonly isCumulative: boolean;
}

/**
 * Share by which the flow at the end of a run lies below that at its start, the rush left out.
 *
 * First and last stretches of all runs are pooled. Negative where the flow grows. What the vessel is
 * off cancels as far as both ends were measured in the same one; a stop between two neighbours
 * lengthens the one and shortens the other, and counts double.
 * @returns null without a run of two stretches
 */
export function declineAlongRun(
  runs: readonly PourRun[],
  instruments: Instruments,
  confidence: number,
): Decline | null {
  const ends = runs.flatMap((run): RunEnds[] => {
    const { rest } = withoutRush(run, instruments);
    const [first] = rest;
    const last = rest.at(-1);
    if (first === undefined || last === undefined || first === last) return [];
    const isCumulative = run.pours.some(({ row }) => row.values.reading === 'cumulative');
    return [{ first, last, areNeighbours: rest.length === 2, isCumulative }];
  });
  const firsts = ends.map((end) => end.first);
  const lasts = ends.map((end) => end.last);
  const first = pooledFlow(firsts);
  const last = pooledFlow(lasts);
  if (first === null || last === null) return null;
  const ratio = last.flowLPerMin / first.flowLPerMin;
  const own = ratio * Math.sqrt(variance(firsts) + variance(lasts) + sharedStops(ends));
  const shared = ratio * Math.abs(sharedRelative(lasts) - sharedRelative(firsts));
  const parts = { scatter: ratioScatter(ends), own, shared };
  return { share: 1 - ratio, range: rangeOf(1 - ratio, parts, confidence) };
}

function total(parts: readonly Stretch[], of: (part: Stretch) => number): number {
  return parts.reduce((sum, part) => sum + of(part), 0);
}

/** Relative variance of a pooled flow by its readings and stops. */
function variance(parts: readonly Stretch[]): number {
  const volumeL = total(parts, (part) => part.volumeL);
  const timeS = total(parts, (part) => part.timeS);
  return (
    total(parts, (part) => part.readingVariance) / volumeL ** 2 +
    total(parts, (part) => part.timeVariance) / timeS ** 2
  );
}

function sharedRelative(parts: readonly Stretch[]): number {
  return total(parts, (part) => part.sharedL) / total(parts, (part) => part.volumeL);
}

/**
 * What stops and readings of both ends add to the relative variance of their ratio: twice the
 * covariance, which is half the variance of a time with two stops, and the variance of the reading.
 */
function sharedStops(ends: readonly RunEnds[]): number {
  const both = ends.filter(({ areNeighbours }) => areNeighbours);
  const firsts = ends.map(({ first }) => first);
  const lasts = ends.map(({ last }) => last);
  const stops = both.reduce((sum, { first }) => sum + first.timeVariance / 2, 0);
  const readings = both.reduce(
    (sum, { first, isCumulative }) => sum + (isCumulative ? first.readingVariance : 0),
    0,
  );
  const times = total(firsts, (part) => part.timeS) * total(lasts, (part) => part.timeS);
  const volumes = total(firsts, (part) => part.volumeL) * total(lasts, (part) => part.volumeL);
  return (2 * stops) / times + (2 * readings) / volumes;
}

/** Scatter of the mean over the runs of last flow over first flow. */
function ratioScatter(ends: readonly RunEnds[]): SeenScatter | null {
  if (ends.length < 2) return null;
  const flow = ({ volumeL, timeS }: Stretch) => volumeL / timeS;
  const sd = sampleSd(ends.map(({ first, last }) => flow(last) / flow(first)));
  return { u: sd / Math.sqrt(ends.length), degreesOfFreedom: ends.length - 1 };
}
