import { type Bench, type Interval, resultAt } from '../../model/index.ts';
import { differenceTest, studentTCdf, studentTQuantile } from '../../statistics/index.ts';
import type { StatementOptions, UncertainSide } from '../reduction-statement.ts';
import { lowerLimit, standardUncertainty, upperLimit } from '../uncertainty/index.ts';
import type { ClaimTarget } from './claim.ts';
import type { Evidence } from './claim-evidence.ts';
import { type Decision, decideAtLeast, decideAtMost } from './decide-claim.ts';

/** Why an event decides as it does. */
export type EventReason =
  | 'reaches'
  | 'falls-short'
  | 'straddles'
  /** Not detected in the product, and the feed held too little to show more. */
  | 'feed-too-low'
  /** The feed itself held no more than the level claimed. */
  | 'feed-below-level'
  | 'no-feed';

/** One event held against a claim. */
export interface JudgedEvent {
  readonly evidence: Evidence;
  readonly decision: Decision;
  readonly because: EventReason;
  readonly firm: boolean;
  readonly isInside: boolean;
  /** Two or more valid samples of the event miss the claim, each alone. */
  readonly isRetested: boolean;
  /** Product level of a claim on a level, with its uncertainty; the reduction otherwise. */
  readonly interval: Interval;
  /** Of the one-sided test that the claim is met, against it; null where bounds decide. */
  readonly pValue: number | null;
  /** The best estimate itself lies on the wrong side of the claim. */
  readonly estimateMisses: boolean;
}

/** Holds one event against a target. */
export function judgeEvent(
  bench: Bench,
  evidence: Evidence,
  target: ClaimTarget,
  options: StatementOptions,
  isInside: boolean,
): JudgedEvent {
  const judged =
    target.kind === 'reduction'
      ? judgeReduction(evidence, target.fraction, options)
      : judgeLevel(evidence, target.value, options);
  return {
    ...judged,
    evidence,
    isInside,
    isRetested: judged.decision === 'misses' && eachSampleMisses(bench, evidence, target, options),
  };
}

type Judged = Pick<
  JudgedEvent,
  'decision' | 'because' | 'firm' | 'interval' | 'pValue' | 'estimateMisses'
>;

function judgeReduction(
  { reduction, feed, product, outcome, firm }: Evidence,
  claimed: number,
  { correlation }: StatementOptions,
): Judged {
  const decision = outcome === 'untested' ? 'cannot-say' : decideAtLeast(reduction, claimed);
  const common = { decision, firm, interval: reduction };
  const before = feed?.estimate ?? null;
  const after = product?.estimate ?? null;
  if (feed === null || product === null || before === null || after === null) {
    const isOpen = outcome === 'untestable' || product?.state === 'notDetected';
    const because = feed === null ? 'no-feed' : reasonOf(decision, isOpen);
    return { ...common, because, pValue: null, estimateMisses: false };
  }
  // The claim is met where the product holds no more than the share (1 - T) of the feed.
  const passed = 1 - claimed;
  const uFirst = standardUncertainty(product.uncertainty, after);
  const uSecond = passed * standardUncertainty(feed.uncertainty, before);
  const { z } = differenceTest({
    first: after,
    second: passed * before,
    uFirst,
    uSecond,
    covariance: correlation * uFirst * uSecond,
  });
  const freedom = Math.min(feed.uncertainty.degreesOfFreedom, product.uncertainty.degreesOfFreedom);
  return {
    ...common,
    because: reasonOf(decision, false),
    pValue: studentTCdf(-z, freedom),
    estimateMisses: after > passed * before,
  };
}

function judgeLevel(
  { feed, product, firm, outcome }: Evidence,
  level: number,
  { confidence }: StatementOptions,
): Judged {
  if (product === null) {
    const interval = { low: 0, high: Number.POSITIVE_INFINITY };
    const none = { pValue: null, estimateMisses: false, firm: false, interval };
    return { ...none, decision: 'cannot-say', because: 'straddles' };
  }
  const interval = productLimits(product, confidence);
  const decision = decideAtMost(interval, level);
  const estimate = product.estimate;
  const test =
    estimate === null
      ? null
      : differenceTest({
          first: estimate,
          second: level,
          uFirst: standardUncertainty(product.uncertainty, level),
          uSecond: 0,
        });
  const common = {
    firm: outcome === 'untested' ? product.uncertainty.from !== 'assumed' : firm,
    interval,
    pValue: test === null ? null : studentTCdf(-test.z, product.uncertainty.degreesOfFreedom),
    estimateMisses: estimate !== null && estimate > level,
  };
  // A product below the level says nothing of the device where the feed was below it too.
  if (decision === 'meets' && feed === null) {
    return { ...common, decision: 'cannot-say', because: 'no-feed' };
  }
  if (decision === 'meets' && feed !== null && !(feed.interval.low > level)) {
    return { ...common, decision: 'cannot-say', because: 'feed-below-level' };
  }
  return { ...common, decision, because: reasonOf(decision, false) };
}

function reasonOf(decision: Decision, isOpen: boolean): EventReason {
  if (decision === 'meets') return 'reaches';
  if (decision === 'misses') return 'falls-short';
  return isOpen ? 'feed-too-low' : 'straddles';
}

/** Limits of what the product truly held; never narrower than the result says. */
function productLimits(product: UncertainSide, confidence: number): Interval {
  const multiplier = studentTQuantile((1 + confidence) / 2, product.uncertainty.degreesOfFreedom);
  const { interval, readings, uncertainty, state, isDecisionBound } = product;
  const isBounded = isDecisionBound && state === 'notDetected';
  return {
    low: Math.min(interval.low, lowerLimit(uncertainty, readings.low, multiplier)),
    high: isBounded
      ? interval.high
      : Math.max(interval.high, upperLimit(uncertainty, readings.high, multiplier)),
  };
}

/**
 * A confirmed retest: the event has two or more valid product samples and each alone misses the claim
 * as reported, against the highest the feed can have held.
 */
function eachSampleMisses(
  bench: Bench,
  { productResults, productSamples, feed }: Evidence,
  target: ClaimTarget,
  { confidence }: StatementOptions,
): boolean {
  if (productResults.length < 2 || new Set(productSamples).size < 2) return false;
  const highest = feed === null ? Number.POSITIVE_INFINITY : productLimits(feed, confidence).high;
  return productResults.every((index) => {
    const result = resultAt(bench.results, index);
    const low =
      result.kind === 'quantified'
        ? result.value
        : result.kind === 'mostProbable'
          ? result.low
          : result.kind === 'aboveRange'
            ? result.limit
            : (result.kind === 'notQuantified' && result.mdl) || 0;
    return target.kind === 'level' ? low > target.value : 1 - low / highest < target.fraction;
  });
}
