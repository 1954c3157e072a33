import { toBase, unitNamed } from '../../reference/index.ts';

/** mg of CaCO3 in one millimole of hardness. */
const CALCITE_MG_PER_MMOL = 100.087;

/**
 * mg/L as CaCO3 in a French degree as it is printed, 10. Where a lab reports in it, the unit table
 * reads 0.1 mmol/L, which is 0.09 % more: both definitions are in use.
 */
const FRENCH_DEGREE_MG_PER_L = 10;

/** A hardness in one of its units. */
export interface HardnessFigure {
  readonly unit: string;
  readonly value: number;
}

/**
 * A hardness in every common unit: mmol/L, German degrees (10 mg/L as CaO), French degrees, English
 * degrees or Clark (a grain in an imperial gallon), grains per US gallon.
 *
 * @param mgPerL mg/L as CaCO3
 * Source: definitions, from memory; the sizes are those of the unit table but for the French degree.
 * Checked by: tests/outside-checks/chemistry/
 * @example hardnessInUnits(100)[2] // { unit: 'degfH', value: 10 }
 */
export function hardnessInUnits(mgPerL: number): HardnessFigure[] {
  return [
    { unit: 'mmol/L', value: mgPerL / CALCITE_MG_PER_MMOL },
    { unit: 'degdH', value: mgPerL / sizeOf('degdH') },
    { unit: 'degfH', value: mgPerL / FRENCH_DEGREE_MG_PER_L },
    { unit: 'degClark', value: mgPerL / sizeOf('degClark') },
    { unit: 'gpg', value: mgPerL / sizeOf('gpg') },
  ];
}

function sizeOf(name: string): number {
  const unit = unitNamed(name);
  if (unit === undefined) throw new RangeError(`no unit ${name}`);
  return toBase(1, unit);
}
