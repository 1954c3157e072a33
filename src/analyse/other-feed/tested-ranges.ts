import { type Interval, SOLIDS } from '../../model/index.ts';
import { spanOfAll } from './event-conditions.ts';
import type { FeedWater } from './feed-water.ts';
import type { TestedPoint } from './tested-points.ts';
import { testedRange } from './tested-range.ts';

/** A measure of dissolved solids. */
export type SolidsMeasure = (typeof SOLIDS)[number];

/** What a device was tested at, over the events that tested something; null where it is not known. */
export interface TestedRanges {
  readonly feed: Interval | null;
  readonly ph: Interval | null;
  /** The measure that more of the events state, of those the other feed states. */
  readonly solids: { readonly measure: SolidsMeasure; readonly range: Interval } | null;
  readonly throughputL: Interval | null;
}

/**
 * The ranges of a device, state and analyte. Natural and spiked feeds make one range.
 *
 * @param points those whose passage is bounded
 */
export function testedRanges(points: readonly TestedPoint[], feed: FeedWater): TestedRanges {
  const conditions = points.map((point) => point.conditions);
  return {
    feed: testedRange(points.map((point) => point.feed)),
    ph: spanOfAll(conditions.map(({ ph }) => ph)),
    solids: solidsOf(points, feed),
    throughputL: spanOfAll(
      conditions.map(({ throughputL }) =>
        throughputL === null ? null : { low: throughputL, high: throughputL },
      ),
    ),
  };
}

function solidsOf(points: readonly TestedPoint[], feed: FeedWater): TestedRanges['solids'] {
  let chosen: { readonly measure: SolidsMeasure; readonly spans: readonly Interval[] } | null =
    null;
  for (const measure of SOLIDS) {
    const spans = points.flatMap(({ conditions }) => conditions.solids.get(measure) ?? []);
    const isStated = feed.solids.size === 0 || feed.solids.has(measure);
    if (isStated && spans.length > (chosen?.spans.length ?? 0)) chosen = { measure, spans };
  }
  if (chosen === null) return null;
  const range = spanOfAll(chosen.spans);
  return range === null ? null : { measure: chosen.measure, range };
}
