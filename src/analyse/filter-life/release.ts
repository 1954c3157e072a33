import type { ReductionOutcome } from '../../model/index.ts';

/** One volume with what the reduction was there. */
export interface VolumeOutcome {
  readonly throughputL: number;
  readonly outcome: ReductionOutcome;
  readonly firm: boolean;
}

const REDUCED: readonly ReductionOutcome[] = ['measured', 'at-least', 'between'];

/**
 * The first volume at which more left the device than entered it, after it had reduced the same
 * analyte before: what was held earlier may be given back.
 *
 * A rise from the start is no release: nothing of it was shown to be held.
 * @returns null where there is none
 */
export function firstRelease(points: readonly VolumeOutcome[]): VolumeOutcome | null {
  const inOrder = [...points].sort((a, b) => a.throughputL - b.throughputL);
  const reduced = inOrder.findIndex(({ outcome }) => REDUCED.includes(outcome));
  if (reduced === -1) return null;
  return inOrder.slice(reduced + 1).find(({ outcome }) => outcome === 'rise') ?? null;
}
