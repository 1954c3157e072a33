import {
  type Bench,
  type Interval,
  intervalOf,
  type LabResult,
  type NondetectBound,
  resultAt,
} from '../model/index.ts';
import type { SideState } from './reduction-bounds.ts';

/** Feed or product of a reduction: the results that went in and what they say together. */
export interface Side extends SideState {
  /** The figure where every result was quantified and one value stands for the side. */
  readonly estimate: number | null;
  /** The interval when every non-detect is bounded by its detection limit. */
  readonly atDetectionLimit: Interval;
  /** Indices into the table of results. */
  readonly results: readonly number[];
  readonly samples: readonly string[];
  readonly method: string;
}

/**
 * Joins the results of one side.
 *
 * Several results of one event are replicates: their arithmetic mean, bound by bound. Feeds before
 * and after (`span`) are not averaged: the interval reaches over both.
 * @returns null without results
 */
export function joinResults(
  bench: Bench,
  indices: readonly number[],
  how: 'mean' | 'span',
): Side | null {
  const results = indices.map((index) => resultAt(bench.results, index));
  if (results.length === 0) return null;
  const join = how === 'mean' ? meanInterval : spanInterval;
  const bound = bench.settings.nondetect_bound;
  const interval = join(results, bound);
  const states = new Set(results.map((result) => result.kind));
  const isPoint = states.size === 1 && states.has('quantified') && interval.low === interval.high;
  return {
    interval,
    atDetectionLimit: join(results, 'detection'),
    state: stateOf(states, isPoint),
    estimate: isPoint ? interval.low : null,
    results: indices,
    samples: indices.map((index) => sampleName(bench, index)),
    method: methodOf(results, how, bound),
  };
}

function stateOf(kinds: ReadonlySet<LabResult['kind']>, isPoint: boolean): SideState['state'] {
  if (kinds.has('aboveRange')) return 'aboveRange';
  if (kinds.size === 1 && kinds.has('notDetected')) return 'notDetected';
  return isPoint ? 'quantified' : 'between';
}

function intervals(results: readonly LabResult[], bound: NondetectBound): Interval[] {
  return results.map((result) => {
    const interval = intervalOf(result, bound);
    if (interval === null) throw new RangeError('a missing result has no interval');
    return interval;
  });
}

function meanInterval(results: readonly LabResult[], bound: NondetectBound): Interval {
  const all = intervals(results, bound);
  const first = all[0];
  if (all.length === 1 && first !== undefined) return first;
  const mean = (pick: (interval: Interval) => number): number =>
    all.reduce((sum, interval) => sum + pick(interval), 0) / all.length;
  return { low: mean((interval) => interval.low), high: mean((interval) => interval.high) };
}

function spanInterval(results: readonly LabResult[], bound: NondetectBound): Interval {
  const all = intervals(results, bound);
  return {
    low: Math.min(...all.map((interval) => interval.low)),
    high: Math.max(...all.map((interval) => interval.high)),
  };
}

function sampleName(bench: Bench, index: number): string {
  const row = bench.tables.samples[bench.results.sample[index] ?? -1];
  return row?.values.sample ?? '';
}

function methodOf(
  results: readonly LabResult[],
  how: 'mean' | 'span',
  bound: NondetectBound,
): string {
  const joined =
    how === 'span'
      ? 'span of the feeds before and after'
      : results.length === 1
        ? 'one result'
        : `arithmetic mean of ${results.length} results`;
  const isBounded = results.some((result) => result.kind === 'notDetected');
  return isBounded ? `${joined}; not detected: bounded by the ${bound} limit` : joined;
}
