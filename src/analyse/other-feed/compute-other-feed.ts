import type { Bench, Interval, OtherFeedAssumption, OtherFeedRow } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { studentTQuantile } from '../../statistics/index.ts';
import { levelVerdicts } from '../level-verdict.ts';
import { addedByStage } from '../minerals/index.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import type { Side } from '../reduction-side.ts';
import { widenedSide } from '../reduction-statement.ts';
import { eventConditions } from './event-conditions.ts';
import type { FeedWater } from './feed-water.ts';
import { joinPassages, productBounds } from './product-bounds.ts';
import { refusals } from './refusals.ts';
import { type TestedPoint, testedPoints } from './tested-points.ts';
import { type FeedStanding, feedStanding } from './tested-range.ts';
import { type TestedRanges, testedRanges } from './tested-ranges.ts';

/** A device in one state of its settings. */
export interface DeviceState {
  readonly device: string;
  readonly variant: string;
}

export interface OtherFeedFact {
  readonly row: OtherFeedRow;
  readonly analyte: Analyte;
}

/**
 * Bounds of the product water of every device with another feed, analyte by analyte of that feed.
 *
 * The passage (1 - reduction) of all events together, from the lowest to the highest, times the other
 * feed, ends by ends. Refused wherever the feed, its pH, its dissolved solids or the volume asked for
 * lies outside what that device, state and analyte was tested at; and where a share of the feed says
 * nothing: a rise, or what a mineral stage adds.
 * @param facts all reductions of the bench
 * @param states in the order of the rows
 * @param throughputL volume the devices are to have treated; null where none is asked for
 */
export function computeOtherFeed(
  bench: Bench,
  facts: readonly ReductionFact[],
  feed: FeedWater,
  states: readonly DeviceState[],
  throughputL: number | null,
): OtherFeedFact[] {
  const conditionsOf = eventConditions(bench);
  const isAdded = addedByStage(bench);
  const tested = testedFacts(facts);
  return states.flatMap(({ device, variant }) =>
    feed.analytes.map(({ analyte, side }): OtherFeedFact => {
      const own = tested.get(factKey(device, variant, analyte.key)) ?? [];
      const points = testedPoints(bench, own, conditionsOf);
      const used = points.filter(({ isUsed }) => isUsed);
      const ranges = testedRanges(used, feed);
      const reported = { reported: side.interval, isFigure: side.estimate !== null };
      const standing = ranges.feed === null ? null : feedStanding(reported, ranges.feed);
      const isElsewhere = states.some(
        (other) =>
          other.device === device && tested.has(factKey(device, other.variant, analyte.key)),
      );
      const asked = {
        isAddedByStage: isAdded(device, analyte.key),
        throughputL,
        isTestedInOtherState: isElsewhere,
      };
      const [reason = null, ...also] = refusals(points, ranges, standing, feed, asked);
      const limits = feedLimits(bench, side);
      const bound = reason === null ? boundOf(used, limits, standing) : null;
      return {
        analyte,
        row: {
          device,
          variant,
          analyte: analyte.key,
          unit: analyte.unit,
          feed: publishedFeed(side, limits),
          asked: {
            ph: feed.ph,
            tds: askedSolids(feed, ranges),
            throughput_L: throughputL,
          },
          tested: publishedTested(bench, points, ranges),
          passage: bound?.passage ?? NOTHING,
          product: bound?.product ?? NOTHING,
          outcome: bound === null ? 'refused' : 'bounded',
          reason,
          also,
          assumptions: bound === null ? [] : assumptionsOf(analyte, used, standing),
          firm: bound !== null && isFirm(used, side),
          reference_levels:
            bound === null
              ? []
              : levelVerdicts(analyte, bound.product, bench.settings.reference_levels ?? []),
          findings:
            reason === 'ph-not-stated' || reason === 'tds-not-stated'
              ? ['feed-condition-missing']
              : [],
        },
      };
    }),
  );
}

const NOTHING = { low: null, high: null } as const;

/** Events that compared feed and product, by device, state and analyte. */
function testedFacts(facts: readonly ReductionFact[]): ReadonlyMap<string, ReductionFact[]> {
  const groups = new Map<string, ReductionFact[]>();
  for (const fact of facts) {
    if (fact.feed === null || fact.product === null) continue;
    const key = factKey(fact.row.device, fact.row.variant, fact.row.analyte);
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push(fact);
  }
  return groups;
}

function factKey(device: string, variant: string, analyte: string): string {
  return [device, variant, analyte].join('\t');
}

/** The limits of the true feed; a non-detect spends the confidence on its one end. */
function feedLimits({ settings }: Bench, side: Side): Interval {
  const { confidence } = settings;
  const isOneEnded = side.state === 'notDetected';
  const level = isOneEnded ? confidence : (1 + confidence) / 2;
  return widenedSide(side, studentTQuantile(level, side.uncertainty.degreesOfFreedom));
}

function boundOf(
  used: readonly TestedPoint[],
  feed: Interval,
  standing: FeedStanding | null,
): { readonly passage: Interval; readonly product: Interval } {
  const joined = joinPassages(used.map(({ passage }) => passage));
  // Below the range only the upper end carries over: a smaller feed gives no larger product.
  const passage = standing === 'reaches-below' ? { ...joined, low: 0 } : joined;
  return { passage, product: productBounds(feed, passage) };
}

/** Measures of many substances together that the table of analytes does not list as sums. */
const MIXED: readonly string[] = ['conductivity', 'total-hardness', 'total-alkalinity'];

/** True for a figure of many substances together, each of which passes in its own way. */
function isMixed({ kind, members, key }: Analyte): boolean {
  return kind === 'aggregate' || members.length > 0 || MIXED.includes(key);
}

function assumptionsOf(
  analyte: Analyte,
  used: readonly TestedPoint[],
  standing: FeedStanding | null,
): OtherFeedAssumption[] {
  return [
    'passage-between',
    ...(standing === 'reaches-below' ? (['monotone'] as const) : []),
    ...(isMixed(analyte) ? (['same-mix'] as const) : []),
    ...(used.some(({ fact }) => fact.row.kind === 'spiked') ? (['spiked-feed'] as const) : []),
  ];
}

/** False where an assumed uncertainty, or a bound without confidence, carries the statement. */
function isFirm(used: readonly TestedPoint[], feed: Side): boolean {
  const isFeedFirm = feed.state === 'notDetected' || feed.uncertainty.from !== 'assumed';
  return (
    isFeedFirm &&
    !feed.isDecisionBound &&
    used.every(({ fact: { row } }) => row.firm && row.reduction.confidence !== null)
  );
}

function askedSolids({ solids }: FeedWater, ranges: TestedRanges): number | null {
  const measure = ranges.solids?.measure;
  return measure === undefined ? null : (solids.get(measure) ?? null);
}

function publishedFeed(side: Side, limits: Interval): OtherFeedRow['feed'] {
  return {
    low: limits.low,
    high: finiteOrNull(limits.high),
    estimate: side.estimate,
    reported_low: side.interval.low,
    reported_high: finiteOrNull(side.interval.high),
    uncertainty_from: side.uncertainty.from === 'stated' ? 'stated' : 'assumed',
  };
}

function publishedTested(
  bench: Bench,
  points: readonly TestedPoint[],
  { feed, ph, solids, throughputL }: TestedRanges,
): OtherFeedRow['tested'] {
  return {
    feed: published(feed),
    ph: published(ph),
    tds: {
      measure: solids?.measure ?? null,
      unit: bench.analytes.byKey(solids?.measure ?? '')?.unit ?? null,
      ...published(solids?.range ?? null),
    },
    throughput_L: published(throughputL),
    events: points.map(({ fact, feed: own, passage, conditions, isUsed }) => ({
      event: fact.row.event,
      kind: fact.row.kind,
      outcome: fact.row.outcome,
      used: isUsed,
      feed_low: finiteOrNull(own.reported.low),
      feed_high: finiteOrNull(own.reported.high),
      passage_low: finiteOrNull(passage.low),
      passage_high: finiteOrNull(passage.high),
      ph: published(conditions.ph),
      throughput_L: conditions.throughputL,
    })),
  };
}

function published(interval: Interval | null): { low: number | null; high: number | null } {
  return interval === null
    ? NOTHING
    : { low: finiteOrNull(interval.low), high: finiteOrNull(interval.high) };
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
