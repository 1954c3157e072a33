import type { Interval } from '../../model/index.ts';

/** A feed as reported: one figure, or an interval that the true value lies in. */
export interface ReportedFeed {
  readonly reported: Interval;
  readonly isFigure: boolean;
}

/** A feed that a device was tested with. */
export interface TestedFeed extends ReportedFeed {
  /** Uncertainty of a figure at the confidence of the bench, canonical unit. */
  readonly halfWidth: number;
}

/**
 * Share of a figure by which its uncertainty may widen the tested range at most, so that a result
 * that is known badly does not widen what was tested. Common practice, no source.
 */
export const RANGE_END_LIMIT = 0.2;

/**
 * The range of feeds a device was tested with.
 *
 * Figures reach as far as their uncertainty, which is all the range there is where one level was
 * tested. Of an interval only what is certain counts: the tested level was at most its upper and at
 * least its lower end.
 * @param feeds one or more
 * @returns null where no level is known to lie in it
 */
export function testedRange(feeds: readonly TestedFeed[]): Interval | null {
  const ends = feeds.map(({ reported, isFigure, halfWidth }): Interval => {
    if (!isFigure) return { low: reported.high, high: reported.low };
    const width = Math.min(halfWidth, RANGE_END_LIMIT * reported.high);
    return { low: reported.low - width, high: reported.high + width };
  });
  const low = Math.max(0, Math.min(...ends.map((end) => end.low)));
  const high = Math.max(...ends.map((end) => end.high));
  return low <= high ? { low, high } : null;
}

/**
 * Where a feed stands to the tested range: all of it inside; above with any part; below with all; or
 * reaching below from inside, as a non-detect whose limit lies in the range.
 */
export type FeedStanding = 'inside' | 'above' | 'below' | 'reaches-below';

export function feedStanding({ reported, isFigure }: ReportedFeed, range: Interval): FeedStanding {
  if (isAbove(reported.high, range.high)) return 'above';
  if (isAbove(range.low, reported.high)) return 'below';
  if (!isAbove(range.low, reported.low)) return 'inside';
  return isFigure ? 'below' : 'reaches-below';
}

/** True for a value within the ends, both included. */
export function isInside(value: number, range: Interval): boolean {
  return !isAbove(value, range.high) && !isAbove(range.low, value);
}

/** Larger by more than the rounding of a double: 7.42 + 0.1 is no less than 7.52. */
function isAbove(a: number, b: number): boolean {
  return a > b + 1e-9 * Math.abs(b);
}
