import type { FeedAgainstChallenge, JudgedClaim, JudgedEvent } from '../../analyse/claims/index.ts';
import type { Interval } from '../../model/index.ts';
import { efficiencyThresholds, standardWithoutChallenge } from '../../reference/index.ts';
import { atMostDigits, boundDigits, plainNumber } from '../format-number.ts';
import { lowerBoundText, percentRange, upperBoundText } from '../format-percent.ts';

/** What a claim asks for: `at least 98 %`, `at most 5 ug/L`, `up to 80 %`; null without a figure. */
export function claimedText({ claim }: Pick<JudgedClaim, 'claim'>): string | null {
  const { target, row, analyte } = claim;
  if (target === null) return null;
  if (target.kind === 'level') return `at most ${level(target.value)} ${analyte?.unit ?? ''}`;
  const word = row.values.comparator === 'up-to' ? 'up to' : 'at least';
  return `${word} ${shareText(target.fraction)}`;
}

/** Why a claim has its verdict, in words hedged as the outcome allows. */
export function claimReason(judged: JudgedClaim): string {
  const { because, claim, events } = judged;
  const claimed = claimedText(judged) ?? '';
  const misses = events.filter(({ decision, isInside }) => decision === 'misses' && isInside);
  const missed = `${decidingText(judged, misses)}; claimed: ${claimed}`;
  const apparently = `apparently missed: ${missed}`;
  switch (because) {
    case 'analyte-unknown':
      return `"${claim.row.values.analyte ?? ''}" is not a known analyte`;
    case 'no-figure':
      return `the claim names no analyte and figure that results could be compared with${standardTail(judged)}`;
    case 'up-to':
      return `"up to" sets no least figure, so any result meets it${upToTail(judged)}`;
    case 'no-result':
      return 'no valid product result of this analyte';
    case 'reached': {
      const meets = events.filter(({ decision, isInside }) => decision === 'meets' && isInside);
      return `${decidingText(judged, meets)}; claimed: ${claimed}${capacityTail(judged)}${judged.firm ? '' : '; on assumed uncertainty'}`;
    }
    case 'missed':
      return missed;
    case 'missed-once':
      return `${apparently}; one event without a confirmed retest does not contradict a claim; retest before publishing`;
    case 'missed-on-assumed-uncertainty':
      return `${apparently}; the uncertainty is assumed; retest before publishing`;
    case 'missed-by-chance':
      return `${apparently}; among the claims of this bench such a miss may be chance; retest before publishing`;
    case 'outside-conditions':
      return `no event lies inside the conditions: ${conditionsText(judged, 'outside')}`;
    case 'conditions-not-known':
      return `a condition of the claim was not logged: ${conditionsText(judged, 'not-known')}`;
    case 'estimate-short':
      return `${measuredText(judged)}: the figure itself falls short of ${claimed}, within its uncertainty`;
    case 'feed-too-low':
      return `this feed held too little to show ${claimed}${neededTail(judged)}`;
    case 'not-decided':
      return `${measuredText(judged)}, against ${claimed}: the results do not decide`;
    default:
      return because satisfies never;
  }
}

/** Why one event decides as it does. */
export function eventReason({ because }: JudgedEvent): string {
  switch (because) {
    case 'reaches':
      return 'the whole interval meets the claim';
    case 'falls-short':
      return 'the whole interval misses the claim';
    case 'straddles':
      return 'the claimed figure lies inside the interval';
    case 'feed-too-low':
      return 'the feed held too little to show the claimed figure at this limit of the lab';
    case 'feed-below-level':
      return 'the feed itself held no more than the level claimed, or may have';
    case 'no-feed':
      return 'no feed result to compare with';
    default:
      return because satisfies never;
  }
}

/** What the feed of this bench could show of a challenge. */
export function challengeReason({ because, challenge, feed }: FeedAgainstChallenge): string {
  const held = feed === null ? '' : `the highest feed held ${rangeText(feed)} ${challenge.unit}`;
  switch (because) {
    case 'at-challenge':
      return `${held}: about the challenge or more`;
    case 'below-challenge':
      return `${held}: less than the challenge`;
    case 'feed-within-limit':
      return `${held}: no more than the product may hold, so a device that changes nothing would pass`;
    case 'limit-too-high':
      return `${held}: too little to show the required reduction at this limit of the lab`;
    case 'doubtful-table':
      return 'the figures of the standard are too uncertain to compare with';
    case 'no-figure':
      return 'the table states no challenge in a unit the results convert to';
    case 'no-feed':
      return 'not tested in the feed';
    default:
      return because satisfies never;
  }
}

/** `2.1`, `< 0.5`, `0.1 to 0.5`, `> 2420`. */
export function rangeText({ low, high }: Interval): string {
  if (low === high) return level(low);
  if (!Number.isFinite(high)) return `> ${level(low)}`;
  return low === 0 ? `< ${level(high)}` : `${level(low)} to ${level(high)}`;
}

/** A claimed share, with the digits the claim has: `99.95 %`. */
function shareText(fraction: number): string {
  return `${plainNumber(Number((fraction * 100).toPrecision(12)))} %`;
}

function level(value: number): string {
  return atMostDigits(value, 4);
}

/** All that is known over the events, without a decision. */
function measuredText({ claim, interval }: JudgedClaim): string {
  if (interval === null) return 'not tested';
  if (claim.target?.kind === 'level') {
    return `the product held ${rangeText(interval)} ${claim.analyte?.unit ?? ''}`;
  }
  const low = Number.isFinite(interval.low) ? interval.low : null;
  return `a reduction of ${percentRange(low, interval.high >= 1 ? null : interval.high)}`;
}

/** The bound that decides, event by event: `reduced by at most 98.2 % in august at 92 L`. */
function decidingText({ claim }: JudgedClaim, events: readonly JudgedEvent[]): string {
  const { target, analyte } = claim;
  if (target === null) return '';
  const each = events.map((event) => {
    const bound =
      target.kind === 'level'
        ? levelBound(event, target.value, analyte?.unit ?? '')
        : reductionBound(event, target.fraction);
    return `${bound} in ${eventText(event)}`;
  });
  return `${target.kind === 'level' ? 'the product held' : 'reduced by'} ${each.join(', ')}`;
}

/** A bound that would round onto the claim says on which side of it it lies. */
function reductionBound({ decision, interval }: JudgedEvent, claimed: number): string {
  const percent = claimed * 100;
  if (decision === 'meets') {
    const text = lowerBoundText(interval.low);
    return Number.parseFloat(text) >= percent ? `at least ${text}` : 'just the share claimed';
  }
  const text = upperBoundText(interval.high);
  return Number.parseFloat(text) < percent ? `at most ${text}` : 'just less than claimed';
}

function levelBound({ decision, interval }: JudgedEvent, claimed: number, unit: string): string {
  if (decision === 'meets') {
    const text = boundText(interval.high, 'up');
    return Number(text) <= claimed ? `at most ${text} ${unit}` : 'just the level claimed';
  }
  const text = boundText(interval.low, 'down');
  return Number(text) > claimed ? `at least ${text} ${unit}` : 'just more than claimed';
}

/** Three significant digits, rounded to the side on which the bound stays true. */
function boundText(value: number, rounding: 'up' | 'down'): string {
  return boundDigits(value, 3, rounding);
}

function eventText({ evidence: { event, kind, throughputL } }: JudgedEvent): string {
  const spiked = kind === 'spiked' ? ' (spiked)' : '';
  return `${event}${spiked}${throughputL === null ? '' : ` at ${level(throughputL)} L`}`;
}

/** A claim over a capacity is shown only as far as it was tested. */
function capacityTail({ conditions: { throughputL } }: JudgedClaim): string {
  const { stated, high } = throughputL;
  return stated === null || high === null
    ? ''
    : `; tested up to ${level(Math.min(high, stated))} L of the ${level(stated)} L claimed`;
}

function standardTail({ claim: { standard, row } }: JudgedClaim): string {
  const named = efficiencyThresholds(row.values.standard ?? '');
  if (named.length > 0) {
    return `; what ${named[0]?.standard ?? ''} asks of water use stands beside the scenarios of this bench`;
  }
  return standard !== null && standardWithoutChallenge(standard) !== null
    ? `; ${standard} sets no reduction limits of its own`
    : '';
}

function upToTail(judged: JudgedClaim): string {
  return judged.interval === null ? '; not tested' : `; measured: ${measuredText(judged)}`;
}

/** The feed that would be needed: the limit of the product over what the claim lets pass. */
function neededTail({ claim, events }: JudgedClaim): string {
  const { target, analyte } = claim;
  if (target?.kind !== 'reduction' || target.fraction >= 1) return '';
  const limits = events.flatMap(({ evidence: { product } }) =>
    product?.state === 'notDetected' && Number.isFinite(product.interval.high)
      ? product.interval.high
      : [],
  );
  if (limits.length === 0) return '';
  const needed = Math.min(...limits) / (1 - target.fraction);
  return `: at this limit of the lab it would have to hold at least ${level(needed)} ${analyte?.unit ?? ''}`;
}

function conditionsText({ conditions, claim }: JudgedClaim, state: string): string {
  const { throughputL, feed, pressureKpa } = conditions;
  const texts = [
    { condition: throughputL, what: 'throughput', unit: 'L', to: 'up to ' },
    { condition: feed, what: 'feed', unit: claim.analyte?.unit ?? '', to: 'challenge ' },
    { condition: pressureKpa, what: 'pressure', unit: 'kPa', to: 'about ' },
  ];
  return texts
    .filter(({ condition }) => condition.state === state)
    .map(({ condition: { stated, low, high }, what, unit, to }) => {
      const logged =
        low === null || high === null ? 'not logged' : `${rangeText({ low, high })} ${unit}`;
      return `${what} ${logged} (${to}${level(stated ?? 0)} ${unit})`;
    })
    .join('; ');
}
