import type { Dimension } from './dimensions.ts';
import { addRatio, applyRatio, divideRatio, ONE, type Ratio, ZERO } from './ratio.ts';

/**
 * A unit of measurement.
 *
 * `name` is the ASCII name used in output; `spelling` is what stood in the data. A value in the base
 * unit of the dimension is `value x toBase + offset`; the offset is zero for all but temperatures.
 * `basis` is the species or scale the unit itself names (`as N`), null where it names none.
 */
export interface Unit {
  readonly spelling: string;
  readonly name: string;
  readonly dimension: Dimension;
  readonly basis: string | null;
  readonly toBase: Ratio;
  readonly offset: Ratio;
  readonly note: string | null;
}

export type Converted =
  | { readonly kind: 'value'; readonly value: number }
  | {
      readonly kind: 'problem';
      readonly problem: 'dimension' | 'basis';
      readonly message: string;
      readonly remedy: string;
    };

/**
 * A value in the base unit of its dimension.
 *
 * @example toBase(77, degF) // 25, exactly
 */
export function toBase(value: number, unit: Unit): number {
  return applyLinear(value, unit.toBase, unit.offset);
}

/** A value of the base unit written in `unit`. */
export function fromBase(value: number, unit: Unit): number {
  const inverse = divideRatio(ONE, unit.toBase) ?? ONE;
  return unit.offset.num === 0
    ? applyRatio(value, inverse)
    : applyRatio(applyLinear(value, ONE, negative(unit.offset)), inverse);
}

/**
 * `value x ratio + offset` with one rounding where whole numbers allow it.
 *
 * The sum is formed in the numerator, so that 77 F gives 25 C and not a neighbour of it.
 */
export function applyLinear(value: number, ratio: Ratio, offset: Ratio): number {
  if (offset.num === 0) return applyRatio(value, ratio);
  return (value * ratio.num * offset.den + offset.num * ratio.den) / (ratio.den * offset.den);
}

/**
 * A value in another unit of the same dimension.
 *
 * What: for quantities that need no molar mass. Lab results, which may change their basis, go
 * through `conversionTo`.
 * @returns the value, or the problem where dimension or basis differ
 * Edge cases: NaN and the infinities pass through; equal units return the value untouched.
 * @example convert(5, mgPerL, ugPerL) // { kind: 'value', value: 5000 }
 */
export function convert(value: number, from: Unit, to: Unit): Converted {
  if (from.dimension !== to.dimension) {
    return {
      kind: 'problem',
      problem: 'dimension',
      message: `${from.name} measures ${dimensionText(from)}, ${to.name} ${dimensionText(to)}`,
      remedy: `give the value in a unit of ${dimensionText(to)}, as ${to.name}`,
    };
  }
  if (from.basis !== to.basis) {
    return {
      kind: 'problem',
      problem: 'basis',
      message: `${unitText(from)} and ${unitText(to)} are not on the same basis`,
      remedy: 'give both on one basis; a basis changes only with the molar mass of an analyte',
    };
  }
  if (from.name === to.name) return { kind: 'value', value };
  return { kind: 'value', value: applyStep(value, from, to) };
}

/** `mg/L as N`: name and basis of a unit. */
export function unitText(unit: Unit): string {
  return unit.basis === null || !unit.basis.startsWith('as ')
    ? unit.name
    : `${unit.name} ${unit.basis}`;
}

/** The dimension in words for a message: `mass concentration`. */
export function dimensionText(unit: Unit): string {
  return unit.dimension.replaceAll('-', ' ');
}

/** Factor and offset that lead from one unit straight to another; null where not exact. */
export function linearBetween(
  from: Unit,
  to: Unit,
): { readonly ratio: Ratio; readonly offset: Ratio } | null {
  const ratio = divideRatio(from.toBase, to.toBase);
  const difference = addRatio(from.offset, negative(to.offset));
  const offset = difference === null ? null : divideRatio(difference, to.toBase);
  return ratio === null || offset === null ? null : { ratio, offset };
}

function applyStep(value: number, from: Unit, to: Unit): number {
  const direct = linearBetween(from, to);
  return direct === null
    ? fromBase(toBase(value, from), to)
    : applyLinear(value, direct.ratio, direct.offset);
}

function negative(ratio: Ratio): Ratio {
  return ratio.num === 0 ? ZERO : { num: -ratio.num, den: ratio.den };
}
