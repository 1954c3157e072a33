import type { ReductionSummary } from '../../compare/index.ts';
import { type Bench, type Interval, resultAt } from '../../model/index.ts';
import type { AnalyteFacts, DeviceReduction } from './analyte-facts.ts';

/** Two devices whose reductions of an analyte cannot be the same figure. */
export interface ToldApart {
  readonly analyte: AnalyteFacts;
  readonly higher: DeviceReduction;
  readonly lower: DeviceReduction;
}

/**
 * Pairs of devices that the bounds tell apart: the bounds do not overlap, and both were measured on
 * the same feeds against the same limits of the lab.
 *
 * A figure without an interval is left out: how far it may be off is not known, so a difference to
 * it cannot be claimed. A bound is never compared as if it were a value.
 */
export function toldApart(bench: Bench, analytes: readonly AnalyteFacts[]): ToldApart[] {
  return analytes.flatMap((analyte) => {
    const bounded = analyte.devices.flatMap((device) => {
      const bounds = device.summary === null ? null : boundsOf(device.summary);
      return device.summary === null || bounds === null
        ? []
        : { device, bounds, limits: limitsOf(bench, device.summary) };
    });
    return bounded.flatMap((a) =>
      bounded
        .filter((b) => a.bounds.low > b.bounds.high && a.limits === b.limits)
        .map((b) => ({ analyte, higher: a.device, lower: b.device })),
    );
  });
}

/**
 * Bounds of a reduction that rest on limits of the lab, or an interval on stated or measured
 * uncertainty; null where a single figure enters whose uncertainty is not known.
 */
export function boundsOf(summary: ReductionSummary): Interval | null {
  const { outcome, low, high, facts } = summary;
  if (outcome === 'at-least' || outcome === 'between') {
    const isMixed = facts.some(({ row }) => row.product.estimate !== null);
    return isMixed ? null : { low: low ?? Number.NEGATIVE_INFINITY, high: high ?? 1 };
  }
  return outcome === 'measured' && !isBare(summary) && isFirm(summary) && low !== null
    ? { low, high: high ?? 1 }
    : null;
}

/** True for a measured figure without an interval. */
export function isBare({ low, high }: ReductionSummary): boolean {
  return low === high;
}

/** True where no event rests on assumed uncertainty alone. */
export function isFirm({ facts }: ReductionSummary): boolean {
  return facts.every(({ row }) => row.firm);
}

/** The feeds and limits that a summary was measured against, as one text. */
function limitsOf(bench: Bench, summary: ReductionSummary): string {
  return JSON.stringify(
    summary.facts.map(({ row, product }) => {
      const limits = (product?.results ?? []).map((index) => {
        const { mdl, rl } = resultAt(bench.results, index);
        return [mdl, rl];
      });
      return [row.event, row.feed.sample, limits];
    }),
  );
}
