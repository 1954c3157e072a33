import type { Interval } from '../../model/index.ts';

/** What one event says of a claim. */
export type Decision = 'meets' | 'misses' | 'cannot-say';

/** Far below any last digit a lab prints: what only the arithmetic of doubles tells apart. */
const ROUNDING = 1e-12;

/**
 * "At least T": met where the whole interval of the reduction reaches T, missed where the whole of it
 * stays below T.
 *
 * An upper end equal to T may still reach it: cannot say.
 * @param reduction fractions; low -Infinity and high 1 where unbounded
 * @param claimed fraction
 * Checked by: tests/outside-checks/claims/
 * @example decideAtLeast({ low: 0.987, high: 0.997 }, 0.99) // 'cannot-say'
 */
export function decideAtLeast(reduction: Interval, claimed: number): Decision {
  if (reduction.low >= claimed - ROUNDING) return 'meets';
  return reduction.high < claimed - ROUNDING ? 'misses' : 'cannot-say';
}

/**
 * "At most the level L": met where the whole interval of the product lies at or below L, missed where
 * the whole of it lies above.
 * @param product interval in the unit of the level; high may be Infinity
 * @example decideAtMost({ low: 0, high: 0.5 }, 5) // 'meets'
 */
export function decideAtMost(product: Interval, level: number): Decision {
  const slack = ROUNDING * Math.abs(level);
  if (product.high <= level + slack) return 'meets';
  return product.low > level + slack ? 'misses' : 'cannot-say';
}
