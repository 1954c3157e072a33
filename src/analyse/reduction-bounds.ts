import type { Interval, ReductionOutcome } from '../model/index.ts';

/** Bounds of a reduction as fractions. */
export interface ReductionBounds {
  /** -Infinity where nothing bounds the reduction from below. */
  readonly low: number;
  /** 1 where complete removal is possible. */
  readonly high: number;
}

/**
 * Bounds of the reduction between a feed and a product, by interval arithmetic.
 *
 * The reduction 1 - product/feed falls when the product rises and rises when the feed rises, so its
 * extremes stand at opposite corners: `1 - product.high/feed.low` and `1 - product.low/feed.high`.
 * Nothing is assumed about a distribution, and nothing stands in for a non-detect.
 *
 * @param feed interval from 0 upward; `high` may be Infinity (above range)
 * @param product interval from 0 upward
 * @returns fractions, at most 1; `low` equals `high` only where both sides are single figures
 * Edge cases: a feed that may be zero bounds nothing from below (-Infinity), except that a product
 * of exactly zero is a reduction of 1; a product that may be zero leaves 1 possible.
 * Source: interval arithmetic, derived in docs/methods.md.
 * Checked by: tests/outside-checks/reductions/
 * @example reductionBounds({ low: 50, high: 50 }, { low: 0, high: 5 }) // { low: 0.9, high: 1 }
 */
export function reductionBounds(feed: Interval, product: Interval): ReductionBounds {
  return { low: 1 - passage(product.high, feed.low), high: 1 - passage(product.low, feed.high) };
}

function passage(product: number, feed: number): number {
  if (product === 0) return 0;
  if (feed === 0 || product === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY;
  return product / feed;
}

/** What is known of one side, for the choice of the outcome. */
export interface SideState {
  readonly interval: Interval;
  /**
   * `quantified`: one figure; `notDetected`; `aboveRange`; `between`: any other interval, such as
   * detected and not quantified, or the span of two feeds.
   */
  readonly state: 'quantified' | 'notDetected' | 'between' | 'aboveRange';
}

/**
 * The one outcome of a pair: the first that holds, in this order.
 *
 * `untested`: a side is missing. `rise`: the product lies above the feed. `untestable`: a side is
 * censored and the lower bound is not above 0. `not-shown`: the bounds hold 0. `at-least`: the
 * product was not detected, or the feed was above range. `between`: another censored side.
 * `measured`: both quantified.
 */
export function outcomeOf(feed: SideState | null, product: SideState | null): ReductionOutcome {
  if (feed === null || product === null) return 'untested';
  if (product.interval.low > feed.interval.high) return 'rise';
  const bounds = reductionBounds(feed.interval, product.interval);
  const isCensored = feed.state !== 'quantified' || product.state !== 'quantified';
  if (isCensored && !(bounds.low > 0)) return 'untestable';
  if (bounds.low <= 0 && bounds.high >= 0) return 'not-shown';
  if (product.state === 'notDetected' || feed.state === 'aboveRange') return 'at-least';
  return isCensored ? 'between' : 'measured';
}

/**
 * Bounds of the log10 reduction, `log10(feed/product)`.
 * @returns null where a bound is infinite or undefined
 */
export function logReductionBounds(
  feed: Interval,
  product: Interval,
): { readonly low: number | null; readonly high: number | null } {
  const log = (numerator: number, denominator: number): number | null => {
    const value = Math.log10(numerator / denominator);
    return Number.isFinite(value) ? value : null;
  };
  return { low: log(feed.low, product.high), high: log(feed.high, product.low) };
}
