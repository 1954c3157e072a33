import type { ReductionFact, UncertainSide } from '../../analyse/index.ts';
import { meanSide, type ReductionSummary } from '../reduction-summary.ts';

/** What two devices made of the feeds that both were tested on. */
export interface SharedProducts {
  readonly feed: UncertainSide;
  readonly productA: UncertainSide;
  readonly productB: UncertainSide;
  /** One entry an event with one feed for both. */
  readonly events: readonly SharedEvent[];
}

export interface SharedEvent {
  readonly event: string;
  readonly feed: UncertainSide;
  readonly productA: UncertainSide;
  readonly productB: UncertainSide;
  /** True where feeds before and after bracket the products: each may have had another water. */
  readonly isSpan: boolean;
  /** How far the figures of the feed lie apart, as a fraction of the feed. */
  readonly feedMove: number;
}

/**
 * Brings two devices together on the events that both have with the very same feed.
 * @returns null without such an event: a reduction on another feed is another question
 */
export function sharedProducts(a: ReductionSummary, b: ReductionSummary): SharedProducts | null {
  const byFeed = new Map(b.facts.map((fact) => [feedKey(fact), fact]));
  const events = a.facts.flatMap((first): SharedEvent[] => {
    const second = byFeed.get(feedKey(first));
    const { feed, product } = first;
    if (feed === null || product === null || !second?.product) return [];
    const size = Number.isFinite(feed.interval.high) ? feed.interval.high : feed.interval.low;
    return [
      {
        event: first.row.event,
        feed,
        productA: product,
        productB: second.product,
        isSpan: first.feedJoin === 'span',
        feedMove: size > 0 ? first.feedRange / size : 0,
      },
    ];
  });
  const feed = meanSide(events.map((one) => one.feed));
  const productA = meanSide(events.map((one) => one.productA));
  const productB = meanSide(events.map((one) => one.productB));
  if (feed === null || productA === null || productB === null) return null;
  return { feed, productA, productB, events };
}

function feedKey({ row, feed }: ReductionFact): string {
  return JSON.stringify([row.event, row.kind, row.feed.sample, feed?.results]);
}
