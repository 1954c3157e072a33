import type { Interval } from '../../model/index.ts';
import { compensatedSum } from '../../statistics/index.ts';
import type { SideState } from '../reduction-bounds.ts';
import type { Side } from '../reduction-side.ts';
import type { UncertainSide } from '../reduction-statement.ts';
import { combineUncertainties, type Uncertainty } from '../uncertainty/index.ts';
import type { SumMember } from './sum-lists.ts';

/** Feed or product of a sum. */
export interface SumSide extends UncertainSide {
  /** The sum when every non-detect is bounded by its detection limit. */
  readonly atDetectionLimit: Interval;
  readonly samples: readonly string[];
}

/** A member with what is known of it on one side. */
export interface MemberSide {
  readonly member: SumMember;
  readonly side: Side;
}

/**
 * The sum of intervals: the lowest possible values add to the lowest possible sum, the highest to
 * the highest.
 *
 * Nothing stands in for a non-detect: it adds 0 to the low end and its limit to the high end.
 * @param parts members with their intervals
 * @param weights above zero, one a part; 1 for all when left out
 * @returns `{ low: 0, high: 0 }` for no parts; `high` is Infinity when a part has no upper bound
 * Source: interval arithmetic, derived in docs/methods.md.
 * Checked by: tests/outside-checks/sums/
 * @example sumIntervals([{ low: 0, high: 1 }, { low: 2, high: 2 }]) // { low: 2, high: 3 }
 */
export function sumIntervals(
  parts: readonly Interval[],
  weights: readonly number[] = parts.map(() => 1),
): Interval {
  const total = (pick: (part: Interval) => number): number =>
    compensatedSum(parts.map((part, index) => pick(part) * (weights[index] ?? 1)));
  return { low: total((part) => part.low), high: total((part) => part.high) };
}

/** Adds up the members of one side. */
export function sumSide(members: readonly MemberSide[]): SumSide {
  const weights = members.map(({ member }) => member.weight);
  const sides = members.map(({ side }) => side);
  const total = (pick: (side: Side) => Interval): Interval =>
    sumIntervals(sides.map(pick), weights);
  const interval = total((side) => side.interval);
  const state = stateOf(sides.map((side) => side.state));
  return {
    interval,
    readings: total((side) => side.readings),
    atDetectionLimit: total((side) => side.atDetectionLimit),
    state,
    estimate: state === 'quantified' ? interval.low : null,
    uncertainty: sumUncertainty(members),
    isDecisionBound: sides.some((side) => side.isDecisionBound),
    samples: [...new Set(sides.flatMap((side) => side.samples))],
  };
}

/**
 * Uncertainties of members are added linearly, as if all members of a run erred together: never too
 * narrow, too wide where they err apart.
 */
function sumUncertainty(members: readonly MemberSide[]): Uncertainty {
  const parts = members.map(({ member, side }) => ({
    uncertainty: side.uncertainty,
    weight: member.weight,
    size: member.weight * sizeOf(side.readings),
  }));
  const total = compensatedSum(parts.map(({ size }) => size));
  const weakest = combineUncertainties(parts, 'span');
  return {
    ...weakest,
    relative:
      total > 0
        ? compensatedSum(parts.map(({ size, uncertainty }) => size * uncertainty.relative)) / total
        : weakest.relative,
    additive: compensatedSum(parts.map(({ weight, uncertainty }) => weight * uncertainty.additive)),
  };
}

function sizeOf({ low, high }: Interval): number {
  return Number.isFinite(high) ? high : low;
}

function stateOf(states: readonly SideState['state'][]): SideState['state'] {
  if (states.includes('aboveRange')) return 'aboveRange';
  const first = states[0];
  return first !== undefined && states.every((state) => state === first) ? first : 'between';
}
