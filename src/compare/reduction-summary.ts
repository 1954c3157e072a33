import {
  outcomeOf,
  type ReductionFact,
  reductionBounds,
  type SideState,
} from '../analyse/index.ts';
import type { Interval, ReductionOutcome } from '../model/index.ts';
import type { Analyte } from '../reference/index.ts';

/** The one figure of a device, variant and analyte that a comparison shows. */
export interface ReductionSummary {
  readonly device: string;
  readonly variant: string;
  readonly analyte: Analyte;
  readonly kind: 'natural' | 'spiked';
  readonly outcome: ReductionOutcome;
  /** Bounds as fractions: low null where unbounded, high null where complete removal is possible. */
  readonly low: number | null;
  readonly estimate: number | null;
  readonly high: number | null;
  /** The lowest lower bound of any single event; null where one has none. */
  readonly worstLow: number | null;
  /** How far the product lies above the feed, canonical unit; only for a rise. */
  readonly rise: { readonly atLeast: number; readonly isExact: boolean } | null;
  readonly facts: readonly ReductionFact[];
}

/**
 * Sums up the events of every device, variant and analyte.
 *
 * Events are replicates of the same question: the headline is the ratio of arithmetic means over
 * the pairs, bound by bound, beside the worst pair. Natural and spiked feeds are never mixed:
 * natural pairs go first, and spiked ones stand where there is no natural pair.
 */
export function summariseReductions(facts: readonly ReductionFact[]): ReductionSummary[] {
  const groups = new Map<string, ReductionFact[]>();
  for (const fact of facts) {
    const key = [fact.row.device, fact.row.variant, fact.row.analyte].join('\t');
    const group = groups.get(key) ?? [];
    group.push(fact);
    groups.set(key, group);
  }
  return [...groups.values()].flatMap((group) => {
    const first = group[0];
    return first === undefined ? [] : summarise(group, first);
  });
}

function summarise(group: readonly ReductionFact[], first: ReductionFact): ReductionSummary {
  const tested = group.filter((fact) => fact.row.outcome !== 'untested');
  const natural = tested.filter((fact) => fact.row.kind === 'natural');
  const used = natural.length > 0 ? natural : tested;
  const feed = meanOf(used.map((fact) => fact.feed));
  const product = meanOf(used.map((fact) => fact.product));
  const common = {
    device: first.row.device,
    variant: first.row.variant,
    analyte: first.analyte,
    kind: used[0]?.row.kind ?? first.row.kind,
    outcome: outcomeOf(feed, product),
    facts: used.length > 0 ? used : group,
  };
  if (feed === null || product === null) {
    return { ...common, low: null, estimate: null, high: null, worstLow: null, rise: null };
  }
  const bounds = reductionBounds(feed.interval, product.interval);
  const isPoint = feed.state === 'quantified' && product.state === 'quantified';
  const lows = used.map((fact) => fact.row.reduction.low);
  return {
    ...common,
    low: Number.isFinite(bounds.low) ? bounds.low : null,
    estimate: isPoint ? bounds.low : null,
    high: bounds.high === 1 || !Number.isFinite(bounds.high) ? null : bounds.high,
    worstLow: lows.every((low) => low !== null) ? Math.min(...lows) : null,
    rise:
      common.outcome === 'rise'
        ? { atLeast: product.interval.low - feed.interval.high, isExact: isPoint }
        : null,
  };
}

function meanOf(sides: readonly (SideState | null)[]): SideState | null {
  const present = sides.filter((side) => side !== null);
  const first = present[0];
  if (first === undefined) return null;
  if (present.length === 1) return first;
  const mean = (pick: (interval: Interval) => number): number =>
    present.reduce((sum, side) => sum + pick(side.interval), 0) / present.length;
  const states = new Set(present.map((side) => side.state));
  return {
    interval: {
      low: mean((interval) => interval.low),
      high: mean((interval) => interval.high),
    },
    state: states.has('aboveRange') ? 'aboveRange' : states.size === 1 ? first.state : 'between',
  };
}
