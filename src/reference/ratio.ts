import { BenchError } from '../findings/index.ts';

/**
 * An exact factor: `num / den`, both safe integers, `den` above 0, without a common divisor.
 *
 * Factors are kept as ratios because a decimal factor drifts: 9 x 0.001 is not 0.009 in binary
 * floating point, 9 / 1000 is.
 */
export interface Ratio {
  readonly num: number;
  readonly den: number;
}

export const ONE: Ratio = { num: 1, den: 1 };
export const ZERO: Ratio = { num: 0, den: 1 };

const DECIMAL = /^([+-]?)(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/i;

/**
 * The ratio a decimal or a product and quotient of decimals stands for, without rounding.
 *
 * @param text decimals joined by `*` and `/`, worked from left to right
 * @throws {BenchError} number-unreadable where the text is none, or the ratio has no safe integers
 * @example exactRatio('3.785411784') // { num: 473176473, den: 125000000 }
 * @example exactRatio('64.79891/3.785411784') // a grain per US gallon in mg/L, 17.11806…
 */
export function exactRatio(text: string): Ratio {
  let num = 1n;
  let den = 1n;
  let divides = false;
  for (const part of text.split(/([*/])/)) {
    const term = part.trim();
    if (term === '*' || term === '/') {
      divides = term === '/';
      continue;
    }
    const [top, bottom] = decimalFraction(term);
    num *= divides ? bottom : top;
    den *= divides ? top : bottom;
  }
  const reduced = reduce(num, den);
  if (reduced === null) throw unreadable(text);
  return reduced;
}

/** The ratio equal to the shortest decimal that prints as `value`; null where it is not exact. */
export function ratioOfNumber(value: number): Ratio | null {
  if (!Number.isFinite(value)) return null;
  const [top, bottom] = decimalFraction(String(value));
  return reduce(top, bottom);
}

/** `a x b`; null where numerator or denominator would leave the safe integers. */
export function multiplyRatio(a: Ratio, b: Ratio): Ratio | null {
  return reduce(BigInt(a.num) * BigInt(b.num), BigInt(a.den) * BigInt(b.den));
}

/** `a / b`; null where the result is not exact in safe integers, or `b` is 0. */
export function divideRatio(a: Ratio, b: Ratio): Ratio | null {
  return reduce(BigInt(a.num) * BigInt(b.den), BigInt(a.den) * BigInt(b.num));
}

/** `a + b`; null where the result is not exact in safe integers. */
export function addRatio(a: Ratio, b: Ratio): Ratio | null {
  return reduce(
    BigInt(a.num) * BigInt(b.den) + BigInt(b.num) * BigInt(a.den),
    BigInt(a.den) * BigInt(b.den),
  );
}

/**
 * `value x ratio`, multiplied or divided once where one side of the ratio is 1.
 *
 * Edge cases: NaN and the infinities pass through as they multiply.
 * @example applyRatio(70, { num: 1, den: 1000 }) // 0.07
 * @example applyRatio(5, { num: 1000, den: 1 }) // 5000
 */
export function applyRatio(value: number, ratio: Ratio): number {
  if (ratio.den === 1) return value * ratio.num;
  if (ratio.num === 1) return value / ratio.den;
  return (value * ratio.num) / ratio.den;
}

/** The double nearest to the ratio. */
export function ratioValue(ratio: Ratio): number {
  return ratio.num / ratio.den;
}

/** `x 1000`, `/ 1000`, `x 17.118` or `x 14007/62005`: the ratio as a step of a trace. */
export function ratioText(ratio: Ratio): string {
  if (ratio.den === 1) return `x ${ratio.num}`;
  if (ratio.num === 1) return `/ ${ratio.den}`;
  const decimal = ratioValue(ratio);
  const exact = ratioOfNumber(decimal);
  return exact?.num === ratio.num && exact.den === ratio.den
    ? `x ${decimal}`
    : `x ${ratio.num}/${ratio.den}`;
}

function decimalFraction(text: string): readonly [bigint, bigint] {
  const match = DECIMAL.exec(text);
  if (match === null) throw unreadable(text);
  const [, sign, whole = '', fraction = '', exponentText = '0'] = match;
  const digits = BigInt(`${whole}${fraction}`) * (sign === '-' ? -1n : 1n);
  const exponent = Number(exponentText) - fraction.length;
  return exponent >= 0
    ? [digits * 10n ** BigInt(exponent), 1n]
    : [digits, 10n ** BigInt(-exponent)];
}

function reduce(num: bigint, den: bigint): Ratio | null {
  if (den === 0n) return null;
  const sign = den < 0n ? -1n : 1n;
  const divisor = greatestCommonDivisor(num < 0n ? -num : num, den * sign) * sign;
  const top = Number(num / divisor);
  const bottom = Number(den / divisor);
  return Number.isSafeInteger(top) && Number.isSafeInteger(bottom)
    ? { num: top, den: bottom }
    : null;
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [large, small] = [a, b];
  while (small > 0n) [large, small] = [small, large % small];
  return large;
}

function unreadable(text: string): BenchError {
  return new BenchError(
    'number-unreadable',
    `"${text}" is not a factor that whole numbers can hold`,
    'write a decimal, or decimals joined by * and /',
  );
}
