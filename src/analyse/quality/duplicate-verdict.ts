import type { Interval } from '../../model/index.ts';
import { relativePercentDifference } from '../../statistics/index.ts';

/** Whether two results of one water agree, and by which rule. */
export interface DuplicateVerdict {
  readonly rule: 'percent' | 'limit' | 'none';
  /** False only where the two disagree whatever the non-detects really were. */
  readonly agrees: boolean;
  /** Smallest relative percent difference that is possible; null where both can be zero. */
  readonly percent: number | null;
}

const CLEAR_OF_LIMIT = 5;
const ROUNDING = 1e-9;

/**
 * The two-stage rule for duplicates: where both results are at least five times the reporting limit,
 * their relative percent difference decides; otherwise they may lie one reporting limit apart.
 *
 * @param limit the reporting limit; null where the lab gives none, then the percentage decides
 * @param percent largest relative percent difference accepted
 * Source: USEPA National Functional Guidelines, inorganic data review (from memory); other programmes
 * accept from 10 to 100 %.
 * Checked by: tests/outside-checks/quality-control/
 * @example duplicateVerdict({ low: 10, high: 10 }, { low: 12, high: 12 }, 1, 20).agrees // true
 */
export function duplicateVerdict(
  first: Interval,
  second: Interval,
  limit: number | null,
  percent: number,
): DuplicateVerdict {
  const difference = relativePercentDifference(first, second);
  if (difference === null) return { rule: 'none', agrees: true, percent: null };
  const least = difference.low;
  const clear = limit === null || Math.min(first.low, second.low) >= CLEAR_OF_LIMIT * limit;
  if (clear) return { rule: 'percent', agrees: least <= percent * (1 + ROUNDING), percent: least };
  const apart = Math.max(first.low - second.high, second.low - first.high, 0);
  return { rule: 'limit', agrees: apart <= limit * (1 + ROUNDING), percent: least };
}
