import {
  type Decimal,
  decimalOf,
  decimalText,
  difference,
  hundredfold,
  leadingPower,
  type Rounding,
  roundDecimal,
} from './decimal.ts';

/**
 * Reductions in percent. A lower bound rounds down and an upper bound up, so that the printed
 * statement is never stronger than the figure. Nothing is printed as complete removal: above 99 %
 * the decimals grow until what is left (100 minus the reduction) keeps its first digit.
 */

const HUNDRED: Decimal = { coefficient: 100n, scale: 0 };
const USUAL_DECIMALS = 1;
const HIGHEST_LOWER_BOUND = '99.9999 %';
const NO_LOWER_BOUND = 'no lower bound';
const NO_UPPER_BOUND = 'no upper bound';

/**
 * A lower bound of a reduction, rounded down.
 *
 * @param fraction a fraction, 1 or less; -Infinity where there is no bound. A bound of 1 is
 *   printed as `99.9999 %`: lower, so still true
 * @throws {RangeError} for NaN and fractions above 1
 * @example lowerBoundText(0.98437) // '98.4 %'
 * @example lowerBoundText(0.99996) // '99.996 %'
 */
export function lowerBoundText(fraction: number): string {
  if (fraction > 1) throw new RangeError(`a reduction of ${fraction}`);
  if (fraction === Number.NEGATIVE_INFINITY) return NO_LOWER_BOUND;
  if (fraction === 1) return HIGHEST_LOWER_BOUND;
  return `${figure(fraction, USUAL_DECIMALS, 'down')} %`;
}

/**
 * An upper bound of a reduction, rounded up.
 *
 * @param fraction a fraction; from 1 upward it bounds nothing and is `no upper bound`
 * @throws {RangeError} for NaN
 * @example upperBoundText(0.9301) // '93.1 %'
 */
export function upperBoundText(fraction: number): string {
  if (fraction >= 1) return NO_UPPER_BOUND;
  return `${figure(fraction, USUAL_DECIMALS, 'up')} %`;
}

/**
 * A range of reductions: `74 % to 93 %`, with as many decimals as the width calls for (two
 * significant digits of it), `≥ 98.4 %` without an upper bound, `≤ 93.0 %` without a lower one,
 * `not known` without either.
 *
 * @param low fraction, or null where unbounded
 * @param high fraction, or null where complete removal is possible; from 1 upward the same
 * @example percentRange(0.742, 0.927) // '74 % to 93 %'
 * @example percentRange(0.98437, null) // '≥ 98.4 %'
 */
export function percentRange(low: number | null, high: number | null): string {
  const hasLow = low !== null && low !== Number.NEGATIVE_INFINITY;
  const hasHigh = high !== null && high < 1;
  if (hasLow && hasHigh) {
    const places = placesOfWidth(low, high);
    return `${figure(low, places, 'down')} % to ${figure(high, places, 'up')} %`;
  }
  if (hasLow) return `≥ ${lowerBoundText(low)}`;
  return hasHigh ? `≤ ${upperBoundText(high)}` : 'not known';
}

/**
 * A measured reduction with its interval: `91.6 % (90.1 to 92.9)`, decimals led by the width of
 * the interval; the estimate alone where there is no interval.
 *
 * @param estimate fraction below 1
 * @param low lower end of the interval, or null
 * @param high upper end, or null where the interval reaches complete removal (or 1)
 * @throws {RangeError} for an estimate of 1 or more, or not finite
 * @example percentEstimate(0.9163, 0.9012, 0.9288) // '91.6 % (90.1 to 92.9)'
 */
export function percentEstimate(
  estimate: number,
  low: number | null = null,
  high: number | null = null,
): string {
  if (!(estimate < 1)) throw new RangeError(`an estimated reduction of ${estimate}`);
  if (low === null || low === Number.NEGATIVE_INFINITY) return nearest(estimate, USUAL_DECIMALS);
  if (high === null || high >= 1) {
    const places = placesOfWidth(low, estimate);
    return `${nearest(estimate, places)} (at least ${figure(low, places, 'down')})`;
  }
  if (low === high) return nearest(estimate, USUAL_DECIMALS);
  const places = placesOfWidth(low, high);
  const range = `${figure(low, places, 'down')} to ${figure(high, places, 'up')}`;
  return `${nearest(estimate, places)} (${range})`;
}

function nearest(fraction: number, places: number): string {
  return `${figure(fraction, places, 'nearest')} %`;
}

/** Percent digits of a fraction below 1. */
function figure(fraction: number, wanted: number, rounding: Rounding): string {
  const percent = hundredfold(decimalOf(fraction));
  const left = difference(HUNDRED, percent);
  const power = leadingPower(left);
  const places = power === null ? wanted : Math.max(wanted, -power);
  return decimalText(roundDecimal(percent, places, rounding));
}

/** Decimals that show two significant digits of the width between two fractions; never below 0. */
function placesOfWidth(low: number, high: number): number {
  const power = leadingPower(hundredfold(difference(decimalOf(high), decimalOf(low))));
  return power === null ? USUAL_DECIMALS : Math.max(0, 1 - power);
}
