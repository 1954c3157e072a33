import type { Spread } from '../../model/index.ts';
import { ranged } from '../drain-uncertainty/index.ts';

/** An amount of which something may be missing: then it is a lower bound. */
export interface KnownAmount {
  readonly value: number;
  readonly isWhole: boolean;
}

/** The sum of amounts; whole only where all are known and whole. Null counts as not known. */
export function sumOf(amounts: readonly (KnownAmount | null)[]): KnownAmount {
  return {
    value: amounts.reduce((sum, amount) => sum + (amount?.value ?? 0), 0),
    isWhole: amounts.every((amount) => amount?.isWhole === true),
  };
}

export function timesAmount(amount: KnownAmount | null, factor: number): KnownAmount | null {
  return amount === null ? null : { value: amount.value * factor, isWhole: amount.isWhole };
}

/**
 * A whole amount is the estimate, with the range of its draws; a partial one the lower bound, at the
 * lower end of that range. A partial 0 says nothing.
 * @param draws the same amount, one a draw; empty: no range
 */
export function amountSpread(
  amount: KnownAmount | null,
  draws: Float64Array = new Float64Array(0),
  confidence = 0.95,
): Spread {
  if (amount === null || (amount.value === 0 && !amount.isWhole))
    return { low: null, estimate: null, high: null };
  const range = ranged(amount.value, draws, confidence);
  return amount.isWhole ? range : { low: range.low ?? amount.value, estimate: null, high: null };
}

/** From the lowest to the highest of several spreads; no upper end where one has none. */
export function rangeOf(spreads: readonly Spread[]): Spread {
  const known = spreads.filter((spread) => (spread.estimate ?? spread.low) !== null);
  if (known.length === 0) return { low: null, estimate: null, high: null };
  const lows = known.map((spread) => spread.low ?? spread.estimate ?? 0);
  const isWhole = known.length === spreads.length && known.every((each) => each.estimate !== null);
  const highs = known.map((spread) => spread.high ?? spread.estimate ?? 0);
  return {
    low: Math.min(...lows),
    estimate: null,
    high: isWhole ? Math.max(...highs) : null,
  };
}
