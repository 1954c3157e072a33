import {
  combineUncertainties,
  type ReductionFact,
  type ReductionStatement,
  type ReplicatePair,
  type ReplicatePairs,
  replicatePairs,
  riseLevel,
  riseProbability,
  type StatementOptions,
  stateReduction,
  type UncertainSide,
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
  /** False where assumed uncertainty carries the judgement. */
  readonly firm: boolean;
  /**
   * Of an estimate the ends of its interval, else bounds. Fractions: low null where unbounded, high
   * null where complete removal is possible.
   */
  readonly low: number | null;
  readonly estimate: number | null;
  readonly high: number | null;
  /** The lowest lower end of any single event; null where one has none. */
  readonly worstLow: number | null;
  /** How far the product lies above the feed, canonical unit; only for a rise. */
  readonly rise: { readonly atLeast: number; readonly isExact: boolean } | null;
  /** What the events say by their own scatter; null for one event. */
  readonly replicates: ReplicatePairs | null;
  /** Every event of the kind, also those that say nothing. */
  readonly facts: readonly ReductionFact[];
}

const USUAL: StatementOptions = { confidence: 0.95, correlation: 0 };

/**
 * Sums up the events of every device, variant and analyte.
 *
 * Events are replicates of the same question: the headline is the ratio of arithmetic means over
 * the pairs, bound by bound, beside the worst pair. From three pairs of figures its interval comes
 * from their own scatter. Natural and spiked feeds are never mixed: natural pairs go first, and
 * spiked ones stand where there is no natural pair. A pair that leaves everything open, from no
 * reduction to a complete one, stays out of the headline where another pair says something: a feed
 * that held too little hides nothing that another feed shows.
 * @param options confidence and correlation of the bench
 */
export function summariseReductions(
  facts: readonly ReductionFact[],
  options: StatementOptions = USUAL,
): ReductionSummary[] {
  const groups = new Map<string, ReductionFact[]>();
  for (const fact of facts) {
    const key = [fact.row.device, fact.row.variant, fact.row.analyte].join('\t');
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push(fact);
  }
  return [...groups.values()].flatMap((group) => {
    const first = group[0];
    return first === undefined ? [] : summarise(group, first, options);
  });
}

function summarise(
  group: readonly ReductionFact[],
  first: ReductionFact,
  options: StatementOptions,
): ReductionSummary {
  const tested = group.filter((fact) => fact.row.outcome !== 'untested');
  const natural = tested.filter((fact) => fact.row.kind === 'natural');
  const used = natural.length > 0 ? natural : tested;
  const telling = used.filter((fact) => !isSilent(fact));
  const told = telling.length > 0 ? telling : used;
  const pairs = told.flatMap(({ feed, product }): ReplicatePair[] =>
    feed === null || product === null ? [] : [{ feed, product }],
  );
  const feed = meanSide(pairs.map((pair) => pair.feed));
  const product = meanSide(pairs.map((pair) => pair.product));
  const replicates = pairs.length > 1 ? replicatePairs(pairs, options.confidence) : null;
  const statement = statementOf(told, { feed, product, replicates }, options);
  const lows = told.map(({ row: { reduction } }) => reduction.interval_low);
  return {
    device: first.row.device,
    variant: first.row.variant,
    analyte: first.analyte,
    kind: used[0]?.row.kind ?? first.row.kind,
    outcome: statement.outcome,
    firm: told.length > 0 && told.every((fact) => fact.row.firm),
    low: statement.estimate === null ? statement.low : statement.intervalLow,
    estimate: statement.estimate,
    high: statement.estimate === null ? statement.high : statement.intervalHigh,
    worstLow: lows.length > 0 && lows.every((low) => low !== null) ? Math.min(...lows) : null,
    rise:
      statement.outcome === 'rise' && feed !== null && product !== null
        ? {
            atLeast: product.interval.low - feed.interval.high,
            isExact: feed.estimate !== null && product.estimate !== null,
          }
        : null,
    replicates,
    facts: used.length > 0 ? used : group,
  };
}

/** True where the pair leaves everything open: no reduction, and a complete one. */
function isSilent({ row: { outcome, product } }: ReductionFact): boolean {
  return outcome === 'untestable' && product.low === 0;
}

/**
 * What is said over the events. A rise needs the mean to rise and one event to have been called a
 * rise over the whole bench. Paired numbers speak through their own scatter.
 */
function statementOf(
  used: readonly ReductionFact[],
  means: {
    readonly feed: UncertainSide | null;
    readonly product: UncertainSide | null;
    readonly replicates: ReplicatePairs | null;
  },
  options: StatementOptions,
): ReductionStatement {
  const { feed, product, replicates } = means;
  const hasRise = used.some((fact) => fact.row.outcome === 'rise');
  const p = riseProbability(feed, product, options);
  const isRise = hasRise && p !== null && (used.length === 1 || p <= riseLevel(options.confidence));
  const statement = stateReduction(feed, product, options, isRise);
  const paired = replicates?.ofMeans ?? null;
  if (paired === null || statement.estimate === null) return statement;
  const { low, high } = paired;
  const outcome = low !== null && low > 0 ? 'measured' : 'not-shown';
  return {
    ...statement,
    outcome: statement.outcome === 'rise' ? 'rise' : low === null ? 'untestable' : outcome,
    intervalLow: low,
    intervalHigh: high,
  };
}

/** The mean of sides of several events, bound by bound; null without any. */
export function meanSide(sides: readonly UncertainSide[]): UncertainSide | null {
  const [first] = sides;
  if (first === undefined) return null;
  if (sides.length === 1) return first;
  const mean = (pick: (side: UncertainSide) => Interval): Interval => ({
    low: sides.reduce((sum, side) => sum + pick(side).low, 0) / sides.length,
    high: sides.reduce((sum, side) => sum + pick(side).high, 0) / sides.length,
  });
  const states = new Set(sides.map((side) => side.state));
  const interval = mean((side) => side.interval);
  return {
    interval,
    readings: mean((side) => side.readings),
    estimate: sides.every((side) => side.estimate !== null) ? interval.low : null,
    uncertainty: combineUncertainties(
      sides.map(({ uncertainty, readings: { low, high } }) => ({
        uncertainty,
        size: Number.isFinite(high) ? high : low,
      })),
      'mean',
    ),
    isDecisionBound: sides.some((side) => side.isDecisionBound),
    state: states.has('aboveRange') ? 'aboveRange' : states.size === 1 ? first.state : 'between',
  };
}
