import type { ReductionFact, StatementOptions } from '../../analyse/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { type ReductionSummary, summariseReductions } from '../reduction-summary.ts';
import {
  comparePair,
  type DevicePair,
  devicePair,
  type Margin,
  type PairVerdict,
} from './compare-pair.ts';
import { notToldApartGroups } from './group-letters.ts';

export interface TellingOptions extends StatementOptions {
  /** Within it devices count as equivalent; a number is a difference of reductions, a fraction. */
  readonly margin: Margin | number;
}

/** A pair of devices with what can be said of their difference. */
export interface JudgedPair extends DevicePair, PairVerdict {}

/** The devices of one analyte on feeds of one kind, compared two by two. */
export interface AnalyteComparison {
  readonly analyte: Analyte;
  readonly kind: 'natural' | 'spiked';
  /** Tested devices, the one whose product holds least first. */
  readonly devices: readonly ReductionSummary[];
  /** In the order of the bench; those that cannot be compared too, with the reason. */
  readonly pairs: readonly JudgedPair[];
  /** Pairs with a shared feed: the comparisons that the confidence is shared among. */
  readonly comparisons: number;
  /** Level of the interval of one pair, so that all of them hold together at the confidence. */
  readonly adjustedConfidence: number;
  /** Groups in which no two were told apart; indices into `devices`. A device may be in several. */
  readonly groups: readonly (readonly number[])[];
}

/**
 * Which devices differ on which analyte, at the confidence of the bench over all pairs of that
 * analyte and kind of feed.
 *
 * The confidence is shared out evenly (Bonferroni), so that verdict and printed interval always
 * agree and all intervals of an analyte hold together, however the pairs hang together. Compared are
 * devices on the events that both have with one feed; natural and spiked feeds are never mixed.
 * Devices without a shared feed are not comparable, and count as not told apart. Analytes with fewer
 * than two tested devices are left out.
 * Source: Bonferroni's inequality; derived in docs/methods.md.
 */
export function tellApart(
  facts: readonly ReductionFact[],
  options: TellingOptions,
): AnalyteComparison[] {
  return byAnalyteAndKind(facts, options).flatMap((summaries) => {
    const [first] = summaries;
    return first === undefined || summaries.length < 2 ? [] : comparison(first, summaries, options);
  });
}

function byAnalyteAndKind(
  facts: readonly ReductionFact[],
  options: StatementOptions,
): ReductionSummary[][] {
  const groups = new Map<string, ReductionSummary[]>();
  for (const kind of ['natural', 'spiked'] as const) {
    const own = facts.filter(({ row }) => row.kind === kind);
    for (const summary of summariseReductions(own, options)) {
      if (summary.outcome === 'untested') continue;
      const key = `${summary.analyte.key}\t${kind}`;
      const group = groups.get(key) ?? [];
      groups.set(key, group);
      group.push(summary);
    }
  }
  return [...groups.values()];
}

function comparison(
  { analyte, kind }: ReductionSummary,
  summaries: readonly ReductionSummary[],
  options: TellingOptions,
): AnalyteComparison {
  const pairs = summaries.flatMap((a, at) => summaries.slice(at + 1).map((b) => devicePair(a, b)));
  const comparisons = pairs.filter(({ shared }) => shared !== null).length;
  const adjustedConfidence = 1 - (1 - options.confidence) / Math.max(1, comparisons);
  const margin: Margin =
    typeof options.margin === 'number' ? { kind: 'points', value: options.margin } : options.margin;
  const judged = pairs.map(
    (pair): JudgedPair => ({ ...pair, ...comparePair(pair, options, adjustedConfidence, margin) }),
  );
  const wins = (one: ReductionSummary): number =>
    judged.reduce((sum, pair) => sum + scoreOf(pair, one), 0);
  const scores = new Map(summaries.map((one) => [one, wins(one)]));
  const devices = [...summaries].sort(
    (first, second) => (scores.get(second) ?? 0) - (scores.get(first) ?? 0),
  );
  const apart = judged
    .filter(({ verdict }) => verdict === 'differ')
    .map(({ a, b }): [number, number] => [devices.indexOf(a), devices.indexOf(b)]);
  return {
    analyte,
    kind,
    devices,
    pairs: judged,
    comparisons,
    adjustedConfidence,
    groups: notToldApartGroups(devices.length, apart),
  };
}

/** 1 for each device whose product was told to hold more, -1 for each that holds less. */
function scoreOf({ a, b, lower }: JudgedPair, one: ReductionSummary): number {
  if (lower === null || (a !== one && b !== one)) return 0;
  return (lower === 'a') === (a === one) ? 1 : -1;
}
