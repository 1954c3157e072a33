import type { Interval } from '../../model/index.ts';

/**
 * The passage behind a stated reduction: `1 - reduction`, end by end.
 *
 * @param reduction as printed, with the uncertainty of both sides; `interval_low` null where nothing
 *   bounds it from below, `interval_high` null where complete removal is possible
 * @returns `high` Infinity where nothing bounds the passage; `low` never below 0
 * @example passageOf({ interval_low: 0.9, interval_high: null }) // { low: 0, high: 0.1 }
 */
export function passageOf(reduction: {
  readonly interval_low: number | null;
  readonly interval_high: number | null;
}): Interval {
  const { interval_low: low, interval_high: high } = reduction;
  return {
    low: high === null ? 0 : Math.max(0, 1 - high),
    high: low === null ? Number.POSITIVE_INFINITY : 1 - low,
  };
}

/**
 * From the lowest to the highest passage of all events: the weakest statement, never the best event.
 *
 * @param passages one or more
 * @throws {RangeError} without any
 */
export function joinPassages(passages: readonly Interval[]): Interval {
  if (passages.length === 0) throw new RangeError('no passage to join');
  return {
    low: Math.min(...passages.map(({ low }) => low)),
    high: Math.max(...passages.map(({ high }) => high)),
  };
}

/**
 * Bounds of the product: feed times passage, by interval arithmetic. Both factors are 0 or more, so
 * the product rises with each of them.
 *
 * @param feed canonical unit, from 0 upward; ends are finite
 * @param passage fractions from 0 upward; ends are finite
 * @throws {RangeError} for an end that is negative, infinite or NaN
 * Source: interval arithmetic; passage = 1 - reduction by definition.
 * Checked by: tests/outside-checks/other-feed/
 * @example productBounds({ low: 90, high: 110 }, { low: 0, high: 0.02 }) // { low: 0, high: 2.2 }
 */
export function productBounds(feed: Interval, passage: Interval): Interval {
  for (const end of [feed.low, feed.high, passage.low, passage.high]) {
    if (!Number.isFinite(end) || end < 0) throw new RangeError(`an end of ${end}`);
  }
  return { low: feed.low * passage.low, high: feed.high * passage.high };
}
