import type { Interval, OtherFeedRefusal } from '../../model/index.ts';
import type { FeedWater } from './feed-water.ts';
import type { TestedPoint } from './tested-points.ts';
import { type FeedStanding, isInside } from './tested-range.ts';
import type { TestedRanges } from './tested-ranges.ts';

/** What is asked of a device, beside the feed itself. */
export interface AskedState {
  readonly isAddedByStage: boolean;
  /** Volume the device is to have treated; null where none is asked for. */
  readonly throughputL: number | null;
  /** The same analyte was tested on the device in another state of its settings. */
  readonly isTestedInOtherState: boolean;
}

/**
 * Every reason why no bound is given, in a fixed order: first what makes scaling by a passage wrong,
 * then the feed, then its conditions, then the state of the device.
 *
 * A condition that is not stated, or was not measured, cannot be shown to be inside.
 * @param points all events of the device, state and analyte
 * @param standing null where no tested range is known
 */
export function refusals(
  points: readonly TestedPoint[],
  ranges: TestedRanges,
  standing: FeedStanding | null,
  feed: FeedWater,
  asked: AskedState,
): OtherFeedRefusal[] {
  if (points.length === 0) return [asked.isTestedInOtherState ? 'other-state' : 'not-tested'];
  const found: OtherFeedRefusal[] = [];
  if (points.some(({ fact }) => fact.row.outcome === 'rise')) found.push('rise');
  if (asked.isAddedByStage) found.push('added-by-stage');
  if (!points.some(({ isUsed }) => isUsed)) return [...found, 'feed-too-low'];
  found.push(...ofFeed(standing), ...ofPh(feed.ph, ranges.ph), ...ofSolids(feed, ranges.solids));
  const { throughputL } = asked;
  if (throughputL !== null) {
    if (ranges.throughputL === null) found.push('throughput-not-logged');
    else if (!isInside(throughputL, ranges.throughputL)) found.push('throughput-outside-tested');
  }
  return found;
}

function ofFeed(standing: FeedStanding | null): OtherFeedRefusal[] {
  if (standing === null) return ['tested-feed-unclear'];
  if (standing === 'above') return ['feed-above-tested'];
  return standing === 'below' ? ['feed-below-tested'] : [];
}

function ofPh(ph: number | null, tested: Interval | null): OtherFeedRefusal[] {
  if (ph === null) return ['ph-not-stated'];
  if (tested === null) return ['ph-not-tested'];
  return isInside(ph, tested) ? [] : ['ph-outside-tested'];
}

function ofSolids({ solids }: FeedWater, tested: TestedRanges['solids']): OtherFeedRefusal[] {
  if (solids.size === 0) return ['tds-not-stated'];
  if (tested === null) return ['tds-not-tested'];
  const value = solids.get(tested.measure);
  return value !== undefined && isInside(value, tested.range) ? [] : ['tds-outside-tested'];
}
