import type { Interval, MineralGuidanceVerdict } from '../../model/index.ts';
import { mineralsGuidance } from '../../reference/index.ts';

/**
 * An interval against every piece of published guidance on its quantity.
 *
 * `within`: all that is known lies in the range; `below`, `above`: all of it lies outside on that
 * side; `cannot-say`: an end of the range lies inside what is possible.
 * @param interval in the unit and basis the quantity is kept in; null gives no verdict
 */
export function guidanceVerdicts(
  quantity: string,
  interval: Interval | null,
): MineralGuidanceVerdict[] {
  if (interval === null) return [];
  return mineralsGuidance(quantity).map((guidance) => ({
    role: guidance.role,
    low: guidance.low,
    high: guidance.high,
    unit: guidance.unit,
    basis: guidance.basis,
    context: guidance.context,
    source: guidance.source,
    verified: guidance.verified,
    verdict: verdictOf(interval, guidance.canonicalLow, guidance.canonicalHigh),
  }));
}

function verdictOf(
  { low, high }: Interval,
  from: number | null,
  to: number | null,
): MineralGuidanceVerdict['verdict'] {
  if (from !== null && high < from) return 'below';
  if (to !== null && low > to) return 'above';
  const isInside = (from === null || low >= from) && (to === null || high <= to);
  return isInside ? 'within' : 'cannot-say';
}
