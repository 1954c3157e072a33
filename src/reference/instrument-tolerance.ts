import { BenchError } from '../findings/index.ts';
import { CYLINDER_TOLERANCES, type CylinderTolerance } from './tables/cylinder-tolerances.ts';

/** How far a measured volume may be off: half-widths, each a range within which every error is as likely. */
export interface VolumeTolerance {
  /** Litres the vessel itself may be off; the same error again whenever it is used. */
  readonly vesselL: number;
  /** Litres the reading may be off: half of the least graduation, anew at every reading. */
  readonly readingL: number;
}

/**
 * Tolerance of a volume measured in the smallest graduated cylinder that holds it; larger volumes in
 * several fillings of the largest one.
 *
 * @param volumeL litres, from 0 upward
 * @throws {BenchError} quantity-negative below 0 and for NaN
 * Source: ASTM E1272-02 (2012), Table 1, see the table.
 * Checked by: tests/outside-checks/measurement/
 * @example cylinderTolerance(0.1, 'B') // { vesselL: 0.001, readingL: 0.0005 }
 */
export function cylinderTolerance(volumeL: number, glass: 'A' | 'B'): VolumeTolerance {
  refuseNegative(volumeL);
  const volumeMl = volumeL * 1000;
  const largest = CYLINDER_TOLERANCES.at(-1) as CylinderTolerance;
  const used = CYLINDER_TOLERANCES.find(({ capacityMl }) => volumeMl <= capacityMl) ?? largest;
  const fillings = Math.max(1, Math.ceil(volumeMl / used.capacityMl - 1e-9));
  const factor = glass === 'A' ? 1 : 2;
  return {
    vesselL: (fillings * factor * used.classAMl) / 1000,
    readingL: (Math.sqrt(fillings) * used.leastGraduationMl) / 2000,
  };
}

/**
 * How far a weighing may be off, in grams: maintenance tolerance of class III scales, 1 division up
 * to 500 divisions, 2 up to 2000, 3 up to 4000, 5 above.
 *
 * @param massG grams, from 0 upward
 * @param divisionG grams of one division, above 0
 * @throws {BenchError} quantity-negative below 0 and for NaN
 * Source: NIST Handbook 44, section 2.20, table 6, from memory.
 * Checked by: tests/outside-checks/measurement/
 * @example scaleToleranceG(950, 1) // 2
 */
export function scaleToleranceG(massG: number, divisionG: number): number {
  refuseNegative(massG);
  const divisions = massG / divisionG;
  if (divisions <= 500) return divisionG;
  if (divisions <= 2000) return 2 * divisionG;
  return (divisions <= 4000 ? 3 : 5) * divisionG;
}

function refuseNegative(amount: number): void {
  if (!(amount >= 0)) {
    throw new BenchError(
      'quantity-negative',
      `an amount of water is ${amount}`,
      'check the amount',
    );
  }
}
