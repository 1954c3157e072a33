import type { ReductionFact, StatementOptions } from '../../analyse/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { type ReductionSummary, summariseReductions } from '../reduction-summary.ts';
import { comparePair, type DevicePair, type PairVerdict, sharedPair } from './compare-pair.ts';
import { notToldApartGroups } from './group-letters.ts';
import { holm } from './holm.ts';

export interface TellingOptions extends StatementOptions {
  /** Reductions that differ by no more than this fraction count as equivalent. */
  readonly margin: number;
}

/** A pair of devices with what can be said of their difference. */
export interface JudgedPair extends DevicePair, PairVerdict {
  /** Adjusted for the pairs of this analyte. */
  readonly adjustedP: number;
  readonly verdict: 'told-apart' | 'equivalent' | 'not-told-apart';
}

/** The devices of one analyte, compared two by two. */
export interface AnalyteComparison {
  readonly analyte: Analyte;
  /** Devices with a shared feed, the one whose product holds least first. */
  readonly devices: readonly ReductionSummary[];
  readonly pairs: readonly JudgedPair[];
  /** Groups in which no two were told apart; indices into `devices`. A device may be in several. */
  readonly groups: readonly (readonly number[])[];
}

/**
 * Which devices differ on which analyte, at the confidence of the bench over all pairs of that
 * analyte (Holm).
 *
 * Compared are devices on the events that both have with one feed. `equivalent`: not told apart, and
 * the results leave no larger difference open than the margin. Devices without a shared feed are not
 * compared, and count as not told apart. Analytes with fewer than two such devices are left out.
 */
export function tellApart(
  facts: readonly ReductionFact[],
  options: TellingOptions,
): AnalyteComparison[] {
  const byAnalyte = new Map<string, ReductionSummary[]>();
  for (const summary of summariseReductions(facts, options)) {
    if (summary.outcome === 'untested') continue;
    const own = byAnalyte.get(summary.analyte.key) ?? [];
    byAnalyte.set(summary.analyte.key, own);
    own.push(summary);
  }
  return [...byAnalyte.values()].flatMap((summaries) => {
    const pairs = judged(sharedPairs(summaries), options);
    const [first] = summaries;
    return first === undefined || pairs.length === 0
      ? []
      : comparison(first.analyte, summaries, pairs);
  });
}

function sharedPairs(summaries: readonly ReductionSummary[]): DevicePair[] {
  return summaries.flatMap((a, at) =>
    summaries.slice(at + 1).flatMap((b) => sharedPair(a, b) ?? []),
  );
}

function judged(pairs: readonly DevicePair[], options: TellingOptions): JudgedPair[] {
  const verdicts = pairs.map((pair) => comparePair(pair, options, pairs.length));
  const adjusted = holm(verdicts.map(({ p }) => p));
  return pairs.flatMap((pair, at) => {
    const verdict = verdicts[at];
    const adjustedP = adjusted[at] ?? 1;
    if (verdict === undefined) return [];
    const isApart = verdict.lower !== null && adjustedP <= 1 - options.confidence;
    const isEquivalent = verdict.largestDifference <= options.margin;
    return {
      ...pair,
      ...verdict,
      adjustedP,
      verdict: isApart ? 'told-apart' : isEquivalent ? 'equivalent' : 'not-told-apart',
    } as const;
  });
}

function comparison(
  analyte: Analyte,
  summaries: readonly ReductionSummary[],
  pairs: readonly JudgedPair[],
): AnalyteComparison {
  const compared = summaries.filter((one) => pairs.some(({ a, b }) => a === one || b === one));
  const wins = (one: ReductionSummary): number =>
    pairs.reduce((sum, pair) => sum + scoreOf(pair, one), 0);
  const devices = [...compared].sort((first, second) => wins(second) - wins(first));
  const apart = pairs
    .filter(({ verdict }) => verdict === 'told-apart')
    .map(({ a, b }): [number, number] => [devices.indexOf(a), devices.indexOf(b)]);
  return { analyte, devices, pairs, groups: notToldApartGroups(devices.length, apart) };
}

/** 1 for each device whose product was told to hold more, -1 for each that holds less. */
function scoreOf({ a, b, lower, verdict }: JudgedPair, one: ReductionSummary): number {
  if (verdict !== 'told-apart' || (a !== one && b !== one)) return 0;
  return (lower === 'a') === (a === one) ? 1 : -1;
}
