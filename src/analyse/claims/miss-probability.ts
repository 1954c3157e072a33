import type { JudgedEvent } from './judge-event.ts';

/** A contradiction takes this many events, or one with a confirmed retest. */
const EVENTS_NEEDED = 2;

/**
 * How likely results this far on the wrong side are if the claim were met in all but one event.
 *
 * The claim must be missed twice (once where a retest confirmed it), so the test is of a partial
 * conjunction: with the n p-values in order and k of them needed, `(n - k + 1) p(k)`. Events missed by
 * bounds count as missed and carry no p-value. A claim that is met has one too: a family of the missed
 * ones alone would find too many.
 * @returns null where bounds alone suffice, or fewer events than needed have a p-value
 * Source: Y. Benjamini & R. Heller (2008), Screening for partial conjunction hypotheses, Biometrics 64,
 * 1215-1222 (from memory), with Bonferroni's combination.
 * @example two events with p 0.001 and 0.004 give 0.004
 */
export function missProbability(events: readonly JudgedEvent[]): number | null {
  const inside = events.filter(({ isInside }) => isInside);
  const misses = inside.filter(({ decision }) => decision === 'misses');
  const byBounds = misses.filter(({ pValue }) => pValue === null).length;
  const isRetested = misses.some((event) => event.isRetested);
  const needed = (isRetested ? 1 : EVENTS_NEEDED) - byBounds;
  const pValues = inside.flatMap(({ pValue }) => pValue ?? []).sort((a, b) => a - b);
  const decisive = needed < 1 ? undefined : pValues[needed - 1];
  if (decisive === undefined) return null;
  return Math.min(1, (pValues.length - needed + 1) * decisive);
}
