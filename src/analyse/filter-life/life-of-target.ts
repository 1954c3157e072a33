import type { FilterLifeRow } from '../../model/index.ts';
import type { Decision } from '../claims/index.ts';

/** One volume at which a target was looked at. */
export interface VolumeDecision {
  readonly throughputL: number;
  readonly decision: Decision;
}

export type LifeOfTarget = Pick<FilterLifeRow, 'last_met_L' | 'first_missed_L' | 'life'>;

/**
 * How far a target was met along the volume treated.
 *
 * Between the last volume shown to meet it and the first shown to miss it nothing is known; a volume
 * that cannot say moves neither. Where a later volume meets it again the volumes are not in order, and
 * both figures still stop at the first miss.
 * @param points in any order
 * @returns `cannot-say` without a volume that decides
 * @example lifeOfTarget([{ throughputL: 40, decision: 'meets' }, { throughputL: 90, decision: 'misses' }])
 * // { last_met_L: 40, first_missed_L: 90, life: 'ends-between' }
 */
export function lifeOfTarget(points: readonly VolumeDecision[]): LifeOfTarget {
  const volumes = (decision: Decision): number[] =>
    points.flatMap((point) => (point.decision === decision ? point.throughputL : []));
  const missed = volumes('misses');
  const met = volumes('meets');
  const firstMissed = missed.length === 0 ? null : Math.min(...missed);
  const before = met.filter((volume) => firstMissed === null || volume < firstMissed);
  const lastMet = before.length === 0 ? null : Math.max(...before);
  return { last_met_L: lastMet, first_missed_L: firstMissed, life: lifeWord() };

  function lifeWord(): FilterLifeRow['life'] {
    if (firstMissed === null) return lastMet === null ? 'cannot-say' : 'met-throughout';
    if (met.length > before.length) return 'not-in-order';
    return lastMet === null ? 'missed-throughout' : 'ends-between';
  }
}
