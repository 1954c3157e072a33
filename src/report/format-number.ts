import { decimalOf, decimalText, leadingPower, roundDecimal } from './decimal.ts';

/**
 * Numbers for people. Positional notation always, a point as decimal mark, no thousands mark, no
 * locale; halves round away from zero, judged on the digits a person would read.
 */

/** All digits of a double without an exponent: 1e-7 is `0.0000001`. */
export function plainNumber(value: number): string {
  return decimalText(decimalOf(value));
}

/**
 * A number rounded to significant digits. Zero is `0`.
 *
 * @param value any finite number; -0 counts as 0
 * @param digits significant digits, 1 or more
 * @throws {RangeError} for NaN, the infinities and fewer than one digit
 * @example significant(0.0123456, 3) // '0.0123'
 * @example significant(9.996, 3) // '10.0'
 */
export function significant(value: number, digits: number): string {
  if (!Number.isInteger(digits) || digits < 1) throw new RangeError(`${digits} digits`);
  const places = placesFor(value, digits);
  return places === null ? '0' : decimalText(roundDecimal(decimalOf(value), places, 'nearest'));
}

/**
 * A nominal figure such as a pour size: rounded to at most so many significant digits, without
 * zeros after the point that say nothing.
 *
 * @throws {RangeError} as {@link significant}
 * @example atMostDigits(250, 3) // '250'
 * @example atMostDigits(0.1 + 0.2, 3) // '0.3'
 */
export function atMostDigits(value: number, digits: number): string {
  const text = significant(value, digits);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/**
 * A bound to significant digits, rounded to the side on which it stays true. Zero is `0`.
 *
 * @throws {RangeError} for NaN and the infinities
 * @example boundDigits(0.01231, 3, 'up') // '0.0124'
 */
export function boundDigits(value: number, digits: number, rounding: 'up' | 'down'): string {
  const exact = decimalOf(value);
  const power = leadingPower(exact);
  return power === null ? '0' : decimalText(roundDecimal(exact, digits - 1 - power, rounding));
}

/** A value and its uncertainty, rounded to the same decimal. */
export interface RoundedPair {
  readonly value: string;
  readonly uncertainty: string;
}

/**
 * A value rounded where the digits of its uncertainty end.
 *
 * Source: JCGM 100:2008 (GUM), 7.2.6: an uncertainty is given to at most two significant digits,
 * and the estimate is rounded to be consistent with it.
 *
 * @param value any finite number
 * @param uncertainty same unit, 0 or more; with 0 the value keeps all its digits
 * @param digits significant digits of the uncertainty
 * @throws {RangeError} for NaN, the infinities and a negative uncertainty
 * @example withUncertaintyDigits(91.6234, 1.37) // { value: '91.6', uncertainty: '1.4' }
 */
export function withUncertaintyDigits(value: number, uncertainty: number, digits = 2): RoundedPair {
  if (uncertainty < 0) throw new RangeError(`an uncertainty of ${uncertainty}`);
  const places = placesFor(uncertainty, digits);
  if (places === null) return { value: plainNumber(value), uncertainty: '0' };
  return {
    value: decimalText(roundDecimal(decimalOf(value), places, 'nearest')),
    uncertainty: decimalText(roundDecimal(decimalOf(uncertainty), places, 'nearest')),
  };
}

/** Decimals that show so many significant digits once rounded (9.96 to two digits is 10). */
function placesFor(value: number, digits: number): number | null {
  const exact = decimalOf(value);
  const before = leadingPower(exact);
  if (before === null) return null;
  const places = digits - 1 - before;
  const after = leadingPower(roundDecimal(exact, places, 'nearest'));
  return after !== null && after > before ? places - 1 : places;
}
