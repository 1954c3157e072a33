import type { StatementOptions, UncertainSide } from '../../analyse/index.ts';
import type { ReductionSummary } from '../reduction-summary.ts';
import {
  type ComparedFigure,
  type ComparedPassages,
  comparedPassages,
} from './passage-interval.ts';
import { type SharedEvent, type SharedProducts, sharedProducts } from './shared-products.ts';

/** How far two devices may lie apart and still count as equivalent. */
export type Margin =
  /** Reductions differ by no more than this fraction. */
  | { readonly kind: 'points'; readonly value: number }
  /** What passes differs by no more than this factor, above 1. */
  | { readonly kind: 'ratio'; readonly value: number };

export type PairVerdictWord = 'differ' | 'equivalent' | 'not-told-apart' | 'not-comparable';

/** Two devices that were tested for one analyte on feeds of one kind. */
export interface DevicePair {
  readonly a: ReductionSummary;
  readonly b: ReductionSummary;
  /** Null where no event has one feed for both. */
  readonly shared: SharedProducts | null;
}

export interface PairVerdict {
  readonly verdict: PairVerdictWord;
  /** Why nothing, or nothing more, can be said. */
  readonly reason: string | null;
  /** The device whose product held less; null unless they differ. */
  readonly lower: 'a' | 'b' | null;
  /** Null without a shared feed. */
  readonly passages: ComparedPassages | null;
  /** True where the results leave no difference beyond the margin, whether or not they differ. */
  readonly isWithinMargin: boolean;
  /** False where an assumed uncertainty enters. */
  readonly firm: boolean;
}

export function devicePair(a: ReductionSummary, b: ReductionSummary): DevicePair {
  return { a, b, shared: sharedProducts(a, b) };
}

/**
 * What can be said of two devices.
 *
 * They differ where the interval of their difference leaves out 0, at least one product is a figure,
 * and neither a feed that moved nor an event that points the other way takes that back. Two bounds
 * are never ranked, whatever their limits. They are equivalent where the interval lies within the
 * margin.
 * @param level of the one interval, raised for the number of comparisons
 */
export function comparePair(
  { shared }: DevicePair,
  options: StatementOptions,
  level: number,
  margin: Margin,
): PairVerdict {
  const nothing = { lower: null, isWithinMargin: false, firm: false } as const;
  if (shared === null) {
    const reason = 'no event has one feed for both';
    return { ...nothing, verdict: 'not-comparable', reason, passages: null };
  }
  const isSpan = shared.events.some((event) => event.isSpan);
  const passages = comparedPassages({ ...shared, isSpan }, options, level);
  const { productA, productB } = shared;
  const isWithinMargin = within(passages, margin);
  const figures = [productA, productB].filter((side) => side.estimate !== null);
  const said = { passages, isWithinMargin, firm: figures.every(isKnown) };
  const lower =
    figures.length === 0 ? null : lowerOf(isSpan ? passages.difference : passages.product);
  const doubt = lower === null ? null : doubtOf(shared, lower, options, passages.product);
  if (lower !== null && doubt === null) return { ...said, verdict: 'differ', reason: null, lower };
  if (isWithinMargin) return { ...said, verdict: 'equivalent', reason: doubt, lower: null };
  if (figures.length === 0 && !haveOneLimit(productA, productB)) {
    const reason = 'two bounds at different limits';
    return { ...said, verdict: 'not-comparable', reason, lower: null };
  }
  const reason = figures.length === 0 ? 'two bounds are not ranked' : doubt;
  return { ...said, verdict: 'not-told-apart', reason, lower: null };
}

function isKnown(side: UncertainSide): boolean {
  return side.uncertainty.from !== 'assumed';
}

/** The device that lets less through, where the interval leaves out 0. */
function lowerOf({ low, high }: ComparedFigure): 'a' | 'b' | null {
  if (low !== null && low > 0) return 'b';
  return high !== null && high < 0 ? 'a' : null;
}

function within({ difference, ratio }: ComparedPassages, margin: Margin): boolean {
  const { low, high } = margin.kind === 'points' ? difference : ratio;
  if (low === null || high === null) return false;
  const { value } = margin;
  return margin.kind === 'points'
    ? low >= -value && high <= value
    : low >= 1 / value && high <= value;
}

/** What speaks against a difference that the interval shows; null where nothing does. */
function doubtOf(
  { events, productA, productB }: SharedProducts,
  lower: 'a' | 'b',
  options: StatementOptions,
  product: ComparedFigure,
): string | null {
  const opposes = (event: SharedEvent): boolean => {
    const own = lowerOf(comparedPassages(event, options, options.confidence).product);
    const isFigure = event.productA.estimate !== null || event.productB.estimate !== null;
    return isFigure && own !== null && own !== lower;
  };
  if (events.some(opposes)) return 'the events point different ways';
  const move = Math.max(...events.map(({ feedMove }) => feedMove));
  const larger = Math.max(productA.estimate ?? 0, productB.estimate ?? 0);
  const gap = product.estimate ?? (lower === 'a' ? product.high : product.low) ?? 0;
  return Math.abs(gap) <= move * larger ? 'the feed moved by more than the difference' : null;
}

function haveOneLimit(a: UncertainSide, b: UncertainSide): boolean {
  return a.state === 'aboveRange' || b.state === 'aboveRange'
    ? a.interval.low === b.interval.low && a.interval.high === b.interval.high
    : a.interval.high === b.interval.high;
}
