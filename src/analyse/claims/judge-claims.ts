import type { Bench, ClaimVerdict, Interval } from '../../model/index.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import { riseLevel, type StatementOptions } from '../reduction-statement.ts';
import { adjustedTogether, statementOptions } from '../reductions.ts';
import type { SumFact } from '../sums/index.ts';
import type { Claim } from './claim.ts';
import { type ClaimConditions, claimConditions } from './claim-conditions.ts';
import { evidenceFor } from './claim-evidence.ts';
import { type JudgedEvent, judgeEvent } from './judge-event.ts';
import { missProbability } from './miss-probability.ts';

/** Why a claim has its verdict. */
export type VerdictReason =
  | 'analyte-unknown'
  | 'no-figure'
  | 'up-to'
  | 'no-result'
  | 'reached'
  | 'missed'
  | 'missed-once'
  | 'missed-on-assumed-uncertainty'
  | 'missed-by-chance'
  | 'outside-conditions'
  | 'conditions-not-known'
  | 'estimate-short'
  | 'feed-too-low'
  | 'not-decided';

/** A claim with its verdict and all it rests on. */
export interface JudgedClaim {
  readonly claim: Claim;
  readonly verdict: ClaimVerdict;
  readonly because: VerdictReason;
  readonly firm: boolean;
  /** Open, and missed by events that do not suffice to contradict it. */
  readonly apparent: boolean;
  /** Of the reduction, or of the product level, over the events that decide. */
  readonly interval: Interval | null;
  /** Adjusted over the claims and rises of the bench; null where bounds decide. */
  readonly pValue: number | null;
  readonly conditions: ClaimConditions;
  readonly events: readonly JudgedEvent[];
}

/**
 * Every claim of a bench against its measurements.
 *
 * `supported`: the lower bound reaches the claim in an event inside its conditions, and no event inside
 * them misses it or has an estimate short of it. `contradicted`: the upper bound misses it, firmly, in
 * two events or in one with a confirmed retest, and where p-values exist the claim stays missed with
 * false discoveries held over all claims and rises of the bench. "Up to" is `untestable`: any result meets it.
 * No product result: `untested`. All else is `open`; what is missed on assumed uncertainty, once, or
 * not at the false-discovery rate is open and apparent.
 * @param facts reductions of all devices
 * @param sums sums of all devices, for claims on sums no lab reported
 */
export function judgeClaims(
  bench: Bench,
  claims: readonly Claim[],
  facts: readonly ReductionFact[],
  sums: readonly SumFact[],
): JudgedClaim[] {
  const options = statementOptions(bench);
  const drafts = claims.map((claim) => draftOf(bench, claim, facts, sums, options));
  const adjusted = adjustedTogether(
    drafts.map(({ pValue }) => pValue),
    facts.flatMap(({ riseTest }) => riseTest ?? []),
  );
  return drafts.map((draft, index) => ({
    ...draft,
    pValue: adjusted[index] ?? null,
    ...verdictOf(draft, adjusted[index] ?? null, options),
  }));
}

/** P-values of the claims that have one, before any adjustment. */
export function claimTests(
  bench: Bench,
  claims: readonly Claim[],
  facts: readonly ReductionFact[],
  sums: readonly SumFact[],
): number[] {
  const options = statementOptions(bench);
  return claims.flatMap((claim) => draftOf(bench, claim, facts, sums, options).pValue ?? []);
}

type Draft = Pick<JudgedClaim, 'claim' | 'conditions' | 'events' | 'pValue'>;

function draftOf(
  bench: Bench,
  claim: Claim,
  facts: readonly ReductionFact[],
  sums: readonly SumFact[],
  options: StatementOptions,
): Draft {
  const { analyte, target } = claim;
  const evidence =
    analyte === null ? [] : evidenceFor(bench, claim.row.values.device, analyte, facts, sums);
  const { conditions, isInside } = claimConditions(bench, claim, evidence);
  // "Up to" is shown against its figure too: what was measured stands beside it.
  const events =
    target === null
      ? []
      : evidence.map((item) => judgeEvent(bench, item, target, options, isInside(item)));
  return { claim, conditions, events, pValue: missProbability(events) };
}

type Verdict = Pick<JudgedClaim, 'verdict' | 'because' | 'firm' | 'apparent' | 'interval'>;

function verdictOf(draft: Draft, pValue: number | null, options: StatementOptions): Verdict {
  const { claim, events } = draft;
  const plain = { firm: false, apparent: false, interval: spanOf(events) };
  if (claim.row.values.comparator === 'up-to') {
    return { ...plain, verdict: 'untestable', because: 'up-to' };
  }
  if (claim.analyte === null && claim.row.values.analyte !== null) {
    return { ...plain, verdict: 'untested', because: 'analyte-unknown' };
  }
  if (claim.analyte === null || claim.target === null) {
    return { ...plain, verdict: 'untestable', because: 'no-figure' };
  }
  if (events.length === 0) return { ...plain, verdict: 'untested', because: 'no-result' };
  const inside = events.filter(({ isInside }) => isInside);
  if (inside.length === 0) {
    const isUnknown = Object.values(draft.conditions).some(({ state }) => state === 'not-known');
    const because = isUnknown ? 'conditions-not-known' : 'outside-conditions';
    return { ...plain, verdict: 'open', because };
  }
  return verdictInside(inside, pValue, options);
}

function verdictInside(
  inside: readonly JudgedEvent[],
  pValue: number | null,
  { confidence }: StatementOptions,
): Verdict {
  const misses = inside.filter(({ decision }) => decision === 'misses');
  const meets = inside.filter(({ decision }) => decision === 'meets');
  if (misses.length > 0) {
    const firm = misses.filter((event) => event.firm);
    const missed = { apparent: true, firm: false, interval: spanOf(misses) };
    if (!isOftenEnough(misses)) return { ...missed, verdict: 'open', because: 'missed-once' };
    if (!isOftenEnough(firm)) {
      return { ...missed, verdict: 'open', because: 'missed-on-assumed-uncertainty' };
    }
    if (pValue !== null && pValue > riseLevel(confidence)) {
      return { ...missed, verdict: 'open', because: 'missed-by-chance' };
    }
    const interval = spanOf(firm);
    return { verdict: 'contradicted', because: 'missed', firm: true, apparent: false, interval };
  }
  const open = { firm: false, apparent: false, interval: spanOf(inside) };
  if (inside.some((event) => event.decision === 'cannot-say' && event.estimateMisses)) {
    return { ...open, verdict: 'open', because: 'estimate-short' };
  }
  if (meets.length > 0) {
    const firm = meets.some((event) => event.firm);
    const interval = spanOf(meets);
    return { verdict: 'supported', because: 'reached', firm, apparent: false, interval };
  }
  const isTooLow = inside.every(({ because }) =>
    ['feed-too-low', 'feed-below-level', 'no-feed'].includes(because),
  );
  return { ...open, verdict: 'open', because: isTooLow ? 'feed-too-low' : 'not-decided' };
}

function isOftenEnough(misses: readonly JudgedEvent[]): boolean {
  return misses.length >= 2 || misses.some(({ isRetested }) => isRetested);
}

function spanOf(events: readonly JudgedEvent[]): Interval | null {
  if (events.length === 0) return null;
  return {
    low: Math.min(...events.map(({ interval }) => interval.low)),
    high: Math.max(...events.map(({ interval }) => interval.high)),
  };
}
