import type { Interval, ReductionOutcome } from '../model/index.ts';
import { differenceTest, fieller, studentTCdf, studentTQuantile } from '../statistics/index.ts';
import { type ReductionBounds, reductionBounds, type SideState } from './reduction-bounds.ts';
import {
  lowerLimit,
  standardUncertainty,
  type Uncertainty,
  upperLimit,
} from './uncertainty/index.ts';

/** A side with what its results scatter. */
export interface UncertainSide extends SideState {
  /** The figure where every result was quantified and one value stands for the side. */
  readonly estimate: number | null;
  /** What the lab can have read; `interval` is what it is taken to say. */
  readonly readings: Interval;
  readonly uncertainty: Uncertainty;
  /**
   * True where a detection limit bounds a non-detect. That limit decides what is reported; it does
   * not bound the truth with any confidence, and nothing is added to it.
   */
  readonly isDecisionBound: boolean;
  /** Of a most probable number whose tubes are known: its logarithm scatters about normally. */
  readonly mostProbable?: {
    /** Null where no tube or every tube grew. */
    readonly value: number | null;
    readonly uLog: number | null;
  };
}

export interface StatementOptions {
  /** Two-sided confidence of intervals; one end alone has it one-sided. */
  readonly confidence: number;
  /** Correlation of the errors of feed and product, from 0 to below 1. */
  readonly correlation: number;
}

/** What is printed of a pair. Fractions; null where unbounded, or complete where that is possible. */
export interface ReductionStatement {
  readonly outcome: ReductionOutcome;
  /** Bounds of a censored pair, widened; `1 - product/feed` where both sides are figures. */
  readonly low: number | null;
  readonly high: number | null;
  readonly estimate: number | null;
  /** Interval of an estimate. */
  readonly intervalLow: number | null;
  readonly intervalHigh: number | null;
  /** Null where what is printed carries no confidence. */
  readonly confidence: number | null;
}

const UNTESTED: ReductionStatement = {
  outcome: 'untested',
  low: null,
  high: null,
  estimate: null,
  intervalLow: null,
  intervalHigh: null,
  confidence: null,
};

/**
 * P-value of the one-sided test that the product lies above the feed.
 *
 * Readings are compared. A censored side counts with the reading that speaks against a rise: the
 * highest of the feed, the lowest of the product; and its interval must not reach the other.
 * @returns 1 where a side is censored and the intervals meet; null where a side is missing
 */
export function riseProbability(
  feed: UncertainSide | null,
  product: UncertainSide | null,
  { confidence, correlation }: StatementOptions,
): number | null {
  if (feed === null || product === null) return null;
  const arePoints = feed.estimate !== null && product.estimate !== null;
  if (!arePoints && !(product.interval.low > feed.interval.high)) return 1;
  const first = product.readings.low;
  const second = feed.readings.high;
  if (feed.mostProbable !== undefined && product.mostProbable !== undefined) {
    return logRiseProbability(feed, product, confidence);
  }
  if (!Number.isFinite(second) || !Number.isFinite(first)) return 1;
  const uFirst = standardUncertainty(product.uncertainty, first);
  const uSecond = standardUncertainty(feed.uncertainty, second);
  const covariance = arePoints ? correlation * uFirst * uSecond : 0;
  const { z } = differenceTest({ first, second, uFirst, uSecond, covariance });
  return studentTCdf(-z, degreesOfFreedom(feed, product));
}

/**
 * Of two most probable numbers: the normal test of the difference of their logarithms. A number without
 * an estimate counts as its limit; of two of those only their confidence is known.
 */
function logRiseProbability(
  feed: UncertainSide,
  product: UncertainSide,
  confidence: number,
): number {
  const first = product.mostProbable?.value ?? product.interval.low;
  const second = feed.mostProbable?.value ?? feed.interval.high;
  const uFirst = product.mostProbable?.uLog ?? 0;
  const uSecond = feed.mostProbable?.uLog ?? 0;
  if (uFirst === 0 && uSecond === 0) return 1 - confidence;
  return differenceTest({ first: Math.log(first), second: Math.log(second), uFirst, uSecond })
    .pValue;
}

/** Share of the false statements that the confidence leaves, kept for rises. */
const SHARE_OF_RISES = 0.4;

/**
 * A rise is called where its p-value, adjusted for all pairs of the bench, is at most this.
 *
 * A device that changes nothing can be called wrong either way. Half of what the confidence leaves
 * goes to the interval of a reduction, two fifths to rises, and a tenth to readings that fall below a
 * limit by chance: together no more than the confidence says, which the simulation of
 * docs/printed-statements.md shows.
 * @returns 0.02 at a confidence of 0.95
 */
export function riseLevel(confidence: number): number {
  return (1 - confidence) * SHARE_OF_RISES;
}

/**
 * What can be printed of a pair, so that it is false no more often than the confidence says.
 *
 * Two figures: Fieller's interval of product/feed, cut at complete removal; a reduction is `measured`
 * where it lies above 0, `not-shown` where it holds 0, `untestable` where the feed is not told apart
 * from zero. A censored side: interval arithmetic over the limits of the true values behind the
 * readings; `at-least` spends the confidence on its one end, `between` on two.
 * @param isRise the judgement on the rise, made over all pairs of the bench
 */
export function stateReduction(
  feed: UncertainSide | null,
  product: UncertainSide | null,
  options: StatementOptions,
  isRise: boolean,
): ReductionStatement {
  if (feed === null || product === null) return UNTESTED;
  return feed.estimate !== null && product.estimate !== null
    ? stateFigures(feed, product, options, isRise)
    : stateBounds(feed, product, options, isRise);
}

function stateFigures(
  feed: UncertainSide,
  product: UncertainSide,
  { confidence, correlation }: StatementOptions,
  isRise: boolean,
): ReductionStatement {
  const bounds = reductionBounds(feed.interval, product.interval);
  const numerator = product.interval.low;
  const denominator = feed.interval.low;
  const figures = {
    low: finiteOrNull(bounds.low),
    high: bounds.high === 1 ? null : finiteOrNull(bounds.high),
    estimate: finiteOrNull(bounds.low),
    confidence,
  };
  if (!(denominator > 0)) {
    const outcome = isRise ? 'rise' : 'untestable';
    return { ...figures, outcome, intervalLow: null, intervalHigh: null };
  }
  const uNumerator = standardUncertainty(product.uncertainty, numerator);
  const uDenominator = standardUncertainty(feed.uncertainty, denominator);
  const passage = fieller({
    numerator,
    denominator,
    uNumerator,
    uDenominator,
    covariance: correlation * uNumerator * uDenominator,
    multiplier: studentTQuantile((1 + confidence) / 2, degreesOfFreedom(feed, product)),
  });
  if (passage.low === null || passage.high === null) {
    const outcome = isRise ? 'rise' : 'untestable';
    return { ...figures, outcome, intervalLow: null, intervalHigh: null };
  }
  const intervalLow = 1 - passage.high;
  return {
    ...figures,
    outcome: isRise ? 'rise' : intervalLow > 0 ? 'measured' : 'not-shown',
    intervalLow,
    intervalHigh: passage.low <= 0 ? null : 1 - passage.low,
  };
}

function stateBounds(
  feed: UncertainSide,
  product: UncertainSide,
  { confidence }: StatementOptions,
  isRise: boolean,
): ReductionStatement {
  const isOneEnded = product.state === 'notDetected' || feed.state === 'aboveRange';
  const multiplier = studentTQuantile(
    isOneEnded ? confidence : (1 + confidence) / 2,
    degreesOfFreedom(feed, product),
  );
  const widened = widenedBounds(feed, product, multiplier);
  return {
    outcome: isRise
      ? 'rise'
      : !(widened.low > 0)
        ? 'untestable'
        : isOneEnded
          ? 'at-least'
          : 'between',
    low: finiteOrNull(widened.low),
    high: widened.high >= 1 ? null : finiteOrNull(widened.high),
    estimate: null,
    intervalLow: null,
    intervalHigh: null,
    confidence: feed.isDecisionBound || product.isDecisionBound ? null : confidence,
  };
}

/** Bounds over the limits of the true values; never narrower than those of plain arithmetic. */
function widenedBounds(
  feed: UncertainSide,
  product: UncertainSide,
  multiplier: number,
): ReductionBounds {
  return reductionBounds(widenedSide(feed, multiplier), widenedSide(product, multiplier));
}

/** The limits of the true value of a side, at a normal or Student t factor. */
export function widenedSide(side: UncertainSide, multiplier: number): Interval {
  const { interval, readings, uncertainty, state, isDecisionBound } = side;
  return {
    low: Math.min(interval.low, lowerLimit(uncertainty, readings.low, multiplier)),
    high:
      isDecisionBound && state === 'notDetected'
        ? interval.high
        : Math.max(interval.high, upperLimit(uncertainty, readings.high, multiplier)),
  };
}

function degreesOfFreedom(feed: UncertainSide, product: UncertainSide): number {
  return Math.min(feed.uncertainty.degreesOfFreedom, product.uncertainty.degreesOfFreedom);
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
