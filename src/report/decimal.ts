/**
 * Exact decimal arithmetic on printed numbers: `coefficient / 10^scale`, scale 0 or more.
 *
 * A double is taken by its shortest round-trip digits, so that 0.29 is 29 hundredths here and not
 * the binary number just below; rounding then goes by what a person would read.
 */
export interface Decimal {
  readonly coefficient: bigint;
  readonly scale: number;
}

/** `nearest` takes halves away from zero; `down` is towards minus infinity, `up` towards plus. */
export type Rounding = 'nearest' | 'down' | 'up';

/**
 * The decimal a double prints as; -0 is 0.
 *
 * @throws {RangeError} for NaN and the infinities
 * @example decimalOf(0.29) // { coefficient: 29n, scale: 2 }
 */
export function decimalOf(value: number): Decimal {
  if (!Number.isFinite(value)) throw new RangeError(`${value} has no decimal form`);
  const [mantissa = '0', exponent = '0'] = value.toExponential().split('e');
  const [whole = '0', fraction = ''] = mantissa.split('.');
  const coefficient = BigInt(whole + fraction);
  const scale = fraction.length - Number(exponent);
  return scale < 0
    ? { coefficient: coefficient * power(-scale), scale: 0 }
    : { coefficient, scale };
}

/** The decimal times 100: a fraction as percent. */
export function hundredfold(d: Decimal): Decimal {
  return { coefficient: d.coefficient * 100n, scale: d.scale };
}

/** `a - b`, exact. */
export function difference(a: Decimal, b: Decimal): Decimal {
  const scale = Math.max(a.scale, b.scale);
  return {
    coefficient: a.coefficient * power(scale - a.scale) - b.coefficient * power(scale - b.scale),
    scale,
  };
}

/**
 * Rounds to a number of decimals, which the result keeps as its scale; negative `places` round to
 * tens, hundreds and so on.
 *
 * @example roundDecimal(decimalOf(98.437), 1, 'down') // 98.4
 */
export function roundDecimal(d: Decimal, places: number, rounding: Rounding): Decimal {
  const scale = Math.max(places, 0);
  const drop = d.scale - places;
  if (drop <= 0) return { coefficient: d.coefficient * power(-drop), scale };
  const unit = power(drop);
  const rest = d.coefficient % unit;
  const whole = d.coefficient / unit + step(rest, unit, rounding);
  return { coefficient: whole * power(scale - places), scale };
}

function step(rest: bigint, unit: bigint, rounding: Rounding): bigint {
  if (rest === 0n) return 0n;
  const away = rest < 0n ? -1n : 1n;
  switch (rounding) {
    case 'down':
      return rest < 0n ? -1n : 0n;
    case 'up':
      return rest > 0n ? 1n : 0n;
    case 'nearest':
      return rest * away * 2n >= unit ? away : 0n;
    default:
      return rounding satisfies never;
  }
}

/** Power of ten of the first digit: 2 for 123, -3 for 0.00456; null for zero. */
export function leadingPower(d: Decimal): number | null {
  if (d.coefficient === 0n) return null;
  return digitsOf(d).length - 1 - d.scale;
}

/** All digits in positional notation, as many decimals as the scale says. */
export function decimalText(d: Decimal): string {
  const digits = digitsOf(d).padStart(d.scale + 1, '0');
  const sign = d.coefficient < 0n ? '-' : '';
  const cut = digits.length - d.scale;
  return d.scale === 0 ? sign + digits : `${sign}${digits.slice(0, cut)}.${digits.slice(cut)}`;
}

function digitsOf(d: Decimal): string {
  return String(d.coefficient < 0n ? -d.coefficient : d.coefficient);
}

function power(exponent: number): bigint {
  return 10n ** BigInt(exponent);
}
