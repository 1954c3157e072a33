import {
  type Bench,
  type Interval,
  intervalOf,
  type LabResult,
  type NondetectBound,
  resultAt,
} from '../model/index.ts';
import { arithmeticMean, sampleSd } from '../statistics/index.ts';
import type { SideState } from './reduction-bounds.ts';
import type { UncertainSide } from './reduction-statement.ts';
import { type CensoredSummary, summariseCensored } from './replicates/index.ts';
import {
  combineUncertainties,
  isCounted,
  readingsOf,
  standardUncertainty,
  type Uncertainty,
} from './uncertainty/index.ts';

/** Feed or product of a reduction: the results that went in and what they say together. */
export interface Side extends UncertainSide {
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
 * and after (`span`) are not averaged: the interval reaches over both. Replicates that scatter more
 * than the uncertainty of their results says are as uncertain as they scatter.
 * @param uncertaintyOf the uncertainty of a result, by its index
 * @returns null without results
 */
export function joinResults(
  bench: Bench,
  indices: readonly number[],
  how: 'mean' | 'span',
  uncertaintyOf: (index: number) => Uncertainty,
): Side | null {
  const results = indices.map((index) => resultAt(bench.results, index));
  if (results.length === 0) return null;
  const bound = bench.settings.nondetect_bound;
  const joined = joinFigures(
    results.map((result, at) => ({
      result,
      uncertainty: uncertaintyOf(indices[at] ?? -1),
      isCount: isCount(bench, indices[at] ?? -1),
    })),
    how,
    bound,
  );
  return {
    ...joined,
    atDetectionLimit: (how === 'mean' ? meanOf : spanOf)(intervals(results, 'detection')),
    results: indices,
    samples: indices.map((index) => sampleName(bench, index)),
    method: methodOf(results, how, bound),
  };
}

/** Results of one side with how far each may scatter, joined; at least one. */
export function joinFigures(
  figures: readonly {
    readonly result: LabResult;
    readonly uncertainty: Uncertainty;
    readonly isCount: boolean;
  }[],
  how: 'mean' | 'span',
  bound: NondetectBound,
): UncertainSide {
  const results = figures.map(({ result }) => result);
  const join = how === 'mean' ? meanOf : spanOf;
  const interval = join(intervals(results, bound));
  const parts = figures.map(({ result, uncertainty, isCount: counts }) => {
    const readings = readingsOf(result, counts);
    const size = Number.isFinite(readings.high) ? readings.high : readings.low;
    return { readings, uncertainty, size };
  });
  const states = new Set(results.map((result) => result.kind));
  const isPoint = states.size === 1 && states.has('quantified') && interval.low === interval.high;
  const uncertainty = combineUncertainties(parts, how);
  const [first] = results;
  const mostProbable = first?.kind === 'mostProbable' && results.length === 1 ? first : null;
  return {
    ...(mostProbable === null ? {} : { mostProbable }),
    interval,
    readings: join(parts.map(({ readings }) => readings)),
    state: states.has('mostProbable') ? stateOfInterval(interval) : stateOf(states, isPoint),
    estimate: isPoint ? interval.low : null,
    uncertainty: isPoint ? atLeastScatter(uncertainty, results, interval.low) : uncertainty,
    isDecisionBound: bound === 'detection' && states.has('notDetected'),
  };
}

function stateOf(kinds: ReadonlySet<LabResult['kind']>, isPoint: boolean): SideState['state'] {
  if (kinds.has('aboveRange')) return 'aboveRange';
  if (kinds.size === 1 && kinds.has('notDetected')) return 'notDetected';
  return isPoint ? 'quantified' : 'between';
}

/** No tube grew: nothing bounds it from below; every tube grew: nothing from above. */
function stateOfInterval({ low, high }: Interval): SideState['state'] {
  if (high === Number.POSITIVE_INFINITY) return 'aboveRange';
  return low === 0 ? 'notDetected' : 'between';
}

/** The standard error of replicates replaces a smaller uncertainty of their mean. */
function atLeastScatter(
  uncertainty: Uncertainty,
  results: readonly LabResult[],
  mean: number,
): Uncertainty {
  const values = results.flatMap((result) => (result.kind === 'quantified' ? result.value : []));
  if (values.length < 2 || !(mean > 0)) return uncertainty;
  const standardError = sampleSd(values) / Math.sqrt(values.length);
  if (standardError <= standardUncertainty(uncertainty, mean)) return uncertainty;
  return { ...uncertainty, relative: standardError / mean, additive: 0, counting: 0 };
}

function isCount(bench: Bench, index: number): boolean {
  const analyte = bench.results.analytes[bench.results.analyte[index] ?? -1];
  return analyte !== undefined && isCounted(analyte);
}

function intervals(results: readonly LabResult[], bound: NondetectBound): Interval[] {
  return results.map((result) => {
    const interval = intervalOf(result, bound);
    if (interval === null) throw new RangeError('a missing result has no interval');
    return interval;
  });
}

function meanOf(all: readonly Interval[]): Interval {
  const [first] = all;
  if (all.length === 1 && first !== undefined) return first;
  const mean = (pick: (interval: Interval) => number): number => {
    const ends = all.map(pick);
    return ends.every(Number.isFinite) ? arithmeticMean(ends) : Number.POSITIVE_INFINITY;
  };
  return { low: mean((interval) => interval.low), high: mean((interval) => interval.high) };
}

function spanOf(all: readonly Interval[]): Interval {
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
  const words = isBounded ? `${joined}; not detected: bounded by the ${bound} limit` : joined;
  const [first] = results;
  if (first?.kind === 'mostProbable' && results.length === 1) return tubeWords(first);
  const summary = how === 'mean' ? summariseCensored(intervals(results, 'detection')) : null;
  return summary === null ? words : `${words}; ${summaryWords(summary)}`;
}

function tubeWords({ value, tubes }: Extract<LabResult, { kind: 'mostProbable' }>): string {
  const number =
    value === null
      ? 'most probable number'
      : `most probable number ${Number(value.toPrecision(3))}`;
  return `${number}, exact limits of the tubes: ${tubes} grew`;
}

/** The means that take non-detects into account, beside the bounds that decide. */
function summaryWords(summary: CensoredSummary): string {
  const { n, censored, kaplanMeier, robustRos, lognormalMle } = summary;
  const digits = (value: number): string => String(Number(value.toPrecision(3)));
  return [
    `mean of ${n} with ${censored} not quantified: Kaplan-Meier ${digits(kaplanMeier.low)} to ${digits(kaplanMeier.high)}`,
    ...(robustRos === null ? [] : [`robust regression on order statistics ${digits(robustRos)}`]),
    ...(lognormalMle === null ? [] : [`lognormal likelihood ${digits(lognormalMle)}`]),
  ].join(', ');
}
