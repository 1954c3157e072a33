import {
  type ReductionFact,
  riseProbability,
  type StatementOptions,
  type UncertainSide,
  widenedSide,
} from '../../analyse/index.ts';
import { normalQuantile } from '../../statistics/index.ts';
import { meanSide, type ReductionSummary } from '../reduction-summary.ts';

/** Two devices on the feeds that both were tested on. */
export interface DevicePair {
  readonly a: ReductionSummary;
  readonly b: ReductionSummary;
  readonly productA: UncertainSide;
  readonly productB: UncertainSide;
  readonly feed: UncertainSide;
  /** Events of one feed that both share. */
  readonly events: number;
}

export interface PairVerdict {
  /** Two-sided p-value that the products differ; 1 where bounds alone stand against bounds. */
  readonly p: number;
  /** The device whose product holds less; null where neither reads lower. */
  readonly lower: 'a' | 'b' | null;
  /** The largest difference of the two reductions that the results leave open, a fraction. */
  readonly largestDifference: number;
  /** False where an assumed uncertainty enters. */
  readonly firm: boolean;
}

/**
 * Brings two devices together on the events that both have with the very same feed.
 * @returns null without such an event: a reduction on another feed is another question
 */
export function sharedPair(a: ReductionSummary, b: ReductionSummary): DevicePair | null {
  const shared = a.facts.flatMap((first) => {
    const second = b.facts.find((fact) => feedKey(fact) === feedKey(first));
    return first.feed === null || first.product === null || !second?.product
      ? []
      : { feed: first.feed, productA: first.product, productB: second.product };
  });
  const feed = meanSide(shared.map((one) => one.feed));
  const productA = meanSide(shared.map((one) => one.productA));
  const productB = meanSide(shared.map((one) => one.productB));
  if (feed === null || productA === null || productB === null) return null;
  return { a, b, feed, productA, productB, events: shared.length };
}

function feedKey({ row, feed }: ReductionFact): string {
  return JSON.stringify([row.event, row.kind, row.feed.sample, feed?.results]);
}

/**
 * Compares the products of two devices on one feed: what both share cancels, so the feed's own
 * uncertainty does not blur the difference.
 *
 * Two bounds are never compared, whatever their limits; a figure is told from a bound only where it
 * lies above it.
 * @param comparisons pairs compared on this analyte; the largest difference holds for all of them
 */
export function comparePair(
  pair: DevicePair,
  options: StatementOptions,
  comparisons: number,
): PairVerdict {
  const { productA, productB, feed } = pair;
  const hasFigure = productA.estimate !== null || productB.estimate !== null;
  const aAbove = hasFigure ? (riseProbability(productB, productA, options) ?? 1) : 1;
  const bAbove = hasFigure ? (riseProbability(productA, productB, options) ?? 1) : 1;
  const sides = [productA, productB].filter((side) => side.estimate !== null);
  return {
    p: Math.min(1, 2 * Math.min(aAbove, bAbove)),
    lower: aAbove === bAbove ? null : aAbove < bAbove ? 'b' : 'a',
    largestDifference: largestDifference(pair, feed, options, comparisons),
    firm: sides.every((side) => side.uncertainty.from !== 'assumed'),
  };
}

/** From the limits of both products, over the smallest feed. */
function largestDifference(
  { productA, productB }: DevicePair,
  feed: UncertainSide,
  { confidence }: StatementOptions,
  comparisons: number,
): number {
  const multiplier = normalQuantile(1 - (1 - confidence) / (2 * Math.max(1, comparisons)));
  const a = widenedSide(productA, multiplier);
  const b = widenedSide(productB, multiplier);
  const lowestFeed = widenedSide(feed, multiplier).low;
  if (!(lowestFeed > 0)) return Number.POSITIVE_INFINITY;
  return Math.max(a.high - b.low, b.high - a.low) / lowestFeed;
}
