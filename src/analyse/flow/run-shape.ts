import { leastSquaresLine } from '../../statistics/index.ts';
import type { PourRun } from '../pour-flow.ts';
import { pooledFlow, type Stretch, withoutRush } from './run-parts.ts';

/** The first rush when the tap opens, beside the flow after it. */
export interface FirstRush {
  readonly runs: number;
  /** Mean length of the first split, seconds. */
  readonly seconds: number;
  readonly flowLPerMin: number;
  readonly afterLPerMin: number;
}

/** Flow of the first splits against that of the rest of the same runs; null where none was split. */
export function firstRush(runs: readonly PourRun[]): FirstRush | null {
  const found = runs.flatMap((run) => {
    const { rush, rest } = withoutRush(run);
    return rush === null ? [] : { rush, rest };
  });
  const flow = pooledFlow(found.map(({ rush }) => rush));
  const after = pooledFlow(found.flatMap(({ rest }) => rest));
  if (flow === null || after === null) return null;
  const seconds = found.reduce((sum, { rush }) => sum + rush.timeS, 0) / found.length;
  return { runs: found.length, seconds, flowLPerMin: flow, afterLPerMin: after };
}

/**
 * Share by which the flow at the end of a run lies below that at its start, the rush left out.
 *
 * First and last stretches of all runs are pooled. Negative where the flow grows.
 * @returns null without a run of two stretches
 */
export function declineAlongRun(runs: readonly PourRun[]): number | null {
  const ends = runs.flatMap((run): { first: Stretch; last: Stretch }[] => {
    const { rest } = withoutRush(run);
    const [first] = rest;
    const last = rest.at(-1);
    return first === undefined || last === undefined || first === last ? [] : [{ first, last }];
  });
  const first = pooledFlow(ends.map((end) => end.first));
  const last = pooledFlow(ends.map((end) => end.last));
  return first === null || last === null || first === 0 ? null : 1 - last / first;
}

/** The steady flow of cumulative readings and the time lost before it. */
export interface SettledFlow {
  readonly flowLPerMin: number;
  /** Seconds without water at the start, by the line; negative where the start is faster. */
  readonly lagS: number;
  readonly readings: number;
}

/**
 * Slope of cumulative volume against time, by least squares over each run of three or more readings;
 * the mean of the runs.
 *
 * Unlike the last reading over its time it is not moved by a slow or fast start.
 */
export function settledFlow(runs: readonly PourRun[]): SettledFlow | null {
  const lines = runs.flatMap((run) => {
    const readings = run.pours.filter(({ row }) => row.values.reading === 'cumulative');
    const x = readings.map(({ timeS }) => timeS);
    if (new Set(x).size < 3) return [];
    const line = leastSquaresLine({ x, y: readings.map(({ volume }) => volume.volumeL) });
    return line.slope > 0 ? line : [];
  });
  if (lines.length === 0) return null;
  const mean = (of: (line: (typeof lines)[number]) => number): number =>
    lines.reduce((sum, line) => sum + of(line), 0) / lines.length;
  return {
    flowLPerMin: mean(({ slope }) => slope) * 60,
    lagS: mean(({ slope, intercept }) => -intercept / slope),
    readings: lines.reduce((sum, { n }) => sum + n, 0),
  };
}
