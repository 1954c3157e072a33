import type { LabResult } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { studentTQuantile } from '../../statistics/index.ts';
import type { ClaimTarget } from '../claims/claim.ts';
import { decideAtLeast, decideAtMost } from '../claims/decide-claim.ts';
import { widenedSide } from '../reduction-statement.ts';
import { type LabTerms, plannedFigure } from './planned-figure.ts';
import type { PlannedBench } from './planned-pair.ts';

/**
 * The largest reduction a feed can show: what would be printed if the product were not detected.
 *
 * @returns `plain` 1 - L/b without any uncertainty; `printed` the lower bound with it, which is what
 * the tool would print; null where nothing could be shown
 * Source: 1 - L/b is interval arithmetic, derived in docs/methods.md.
 * Checked by: tests/outside-checks/next-tests/
 * @example a feed of 100 at a limit of 1, without uncertainty: both 0.99
 */
export function largestReduction(
  planned: PlannedBench,
  analyte: Analyte,
  feed: LabResult,
  terms: LabTerms,
): { readonly plain: number | null; readonly printed: number | null } {
  const product = plannedFigure(0, terms);
  const { interval } = planned.sideOf(feed, analyte);
  const { high } = planned.sideOf(product, analyte).interval;
  const { low } = planned.statementOf(feed, product, analyte);
  return { plain: aboveZero(1 - high / interval.low), printed: aboveZero(low) };
}

function aboveZero(reduction: number | null): number | null {
  return reduction !== null && reduction > 0 ? reduction : null;
}

/** What a planned test has to show; `any`: that there is a reduction at all. */
export type Target = ClaimTarget | { readonly kind: 'any' };

/** True where a product that is not detected would show the target on this feed. */
export function canShow(
  planned: PlannedBench,
  analyte: Analyte,
  target: Target,
  feed: LabResult,
  terms: LabTerms,
): boolean {
  const product = plannedFigure(0, terms);
  if (target.kind === 'level') {
    const side = planned.sideOf(product, analyte);
    const { confidence } = planned.options;
    const factor = studentTQuantile((1 + confidence) / 2, side.uncertainty.degreesOfFreedom);
    // A product below the level says nothing of a device whose feed was below it too.
    return (
      decideAtMost(widenedSide(side, factor), target.value) === 'meets' &&
      planned.sideOf(feed, analyte).interval.low > target.value
    );
  }
  const { low } = planned.statementOf(feed, product, analyte);
  if (target.kind === 'any') return low !== null && low > 0;
  return (
    decideAtLeast({ low: low ?? Number.NEGATIVE_INFINITY, high: 1 }, target.fraction) === 'meets'
  );
}

const SIGNIFICANT = 3;
/** Beyond this many limits no spike is practical: the reduction wanted is as good as complete. */
const FARTHEST = 1e9;

/**
 * The feed that a target needs at a limit.
 *
 * @returns `plain`: L/(1 - R), or the level itself; `printed`: the smallest feed of three digits whose
 * printed lower bound reaches the target, found with the tool's own statement; null where none does
 * @example R 0.99 at a limit of 1, without uncertainty: plain and printed 100
 */
export function feedNeeded(
  planned: PlannedBench,
  analyte: Analyte,
  target: Target,
  terms: LabTerms,
): { readonly plain: number | null; readonly printed: number | null } {
  const reaches = (feed: number): boolean =>
    canShow(planned, analyte, target, plannedFigure(feed, terms), terms);
  return { plain: plainFeed(target, terms.limit), printed: smallest(reaches, terms.limit) };
}

function plainFeed(target: Target, limit: number): number | null {
  switch (target.kind) {
    case 'level':
      return limit <= target.value ? target.value : null;
    case 'any':
      return limit;
    case 'reduction':
      // 1 - 0.9 is not 0.1 in doubles; the digits of a lab are far fewer.
      return target.fraction < 1 ? Number((limit / (1 - target.fraction)).toPrecision(12)) : null;
    default:
      return target satisfies never;
  }
}

function smallest(reaches: (feed: number) => boolean, limit: number): number | null {
  let low = limit;
  let high = limit;
  while (!reaches(high)) {
    if (high > limit * FARTHEST) return null;
    low = high;
    high *= 2;
  }
  for (let step = 0; step < 60 && high - low > 1e-9 * high; step += 1) {
    const middle = (low + high) / 2;
    if (reaches(middle)) high = middle;
    else low = middle;
  }
  return roundedUp(high, reaches);
}

/** To three digits, upwards, until the rounded figure reaches the target too. */
function roundedUp(feed: number, reaches: (feed: number) => boolean): number | null {
  const power = Math.floor(Math.log10(feed)) - (SIGNIFICANT - 1);
  let steps = Math.ceil(feed / 10 ** power - 1e-6);
  for (let tries = 0; tries < 100; tries += 1, steps += 1) {
    const rounded = Number(`${steps}e${power}`);
    if (reaches(rounded)) return rounded;
  }
  return null;
}
