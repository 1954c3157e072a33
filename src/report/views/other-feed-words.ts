import type { OtherFeedRefusal, OtherFeedRow } from '../../model/index.ts';
import { atMostDigits, boundDigits } from '../format-number.ts';

/** Why there is no bound, in words. */
export const REFUSAL_WORDS: Readonly<Record<OtherFeedRefusal, string>> = {
  'not-tested': 'not tested',
  'other-state': 'tested in another state only',
  rise: 'a rise: more in a product than in its feed',
  'added-by-stage': 'added by the mineral stage',
  'feed-too-low': 'tested with too little to show',
  'tested-feed-unclear': 'level tested not known',
  'feed-above-tested': 'feed above what was tested',
  'feed-below-tested': 'feed below what was tested',
  'ph-not-stated': 'feed states no pH',
  'ph-not-tested': 'pH of the tested feed not known',
  'ph-outside-tested': 'pH outside what was tested',
  'tds-not-stated': 'feed states no dissolved solids',
  'tds-not-tested': 'dissolved solids of the tested feed not known',
  'tds-outside-tested': 'dissolved solids outside what was tested',
  'throughput-not-logged': 'volume treated was not logged',
  'throughput-outside-tested': 'volume treated outside what was tested',
};

const DIGITS = 3;

/** Rounded so that the printed end is never stronger than the figure; zeros that say nothing go. */
function outward(value: number, rounding: 'up' | 'down'): string {
  const text = boundDigits(value, DIGITS, rounding);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** `0.12 to 0.38`, ends rounded outward; `at most 0.38` where nothing bounds it from below. */
export function boundsText(low: number | null, high: number | null): string {
  if (high === null) return 'not known';
  const upper = outward(high, 'up');
  return low === null || low === 0 ? `at most ${upper}` : `${outward(low, 'down')} to ${upper}`;
}

/** The same in percent. */
export function passageText({ low, high }: OtherFeedRow['passage']): string {
  if (high === null) return 'not known';
  return `${boundsText(low === null ? null : low * 100, high * 100)} %`;
}

/** A tested range: `1.5 to 2.5`, one figure where both ends print alike. */
export function rangeText({ low, high }: OtherFeedRow['passage']): string {
  if (low === null || high === null) return 'not known';
  const [from, to] = [atMostDigits(low, DIGITS), atMostDigits(high, DIGITS)];
  return from === to ? from : `${from} to ${to}`;
}

/** The other feed as reported: `12.4`, `not detected, < 0.5`, `0.1 to 0.5`, `> 2420`. */
export function otherFeedText({
  estimate,
  reported_low,
  reported_high,
}: OtherFeedRow['feed']): string {
  const digits = (value: number): string => atMostDigits(value, 4);
  if (estimate !== null) return digits(estimate);
  if (reported_high === null) return `> ${digits(reported_low ?? 0)}`;
  if (reported_low === null || reported_low === 0) return `< ${digits(reported_high)}`;
  return `${digits(reported_low)} to ${digits(reported_high)}`;
}
