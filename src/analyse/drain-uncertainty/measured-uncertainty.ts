import type { BenchSettings } from '../../model/index.ts';
import { cylinderTolerance, scaleToleranceG } from '../../reference/index.ts';
import type { MeasuredVolume } from '../quantity-volume.ts';

export type Instruments = Omit<
  BenchSettings['instruments'],
  'gauge_kpa' | 'thermometer_degC' | 'tds_tolerance'
>;

/** Standard uncertainties of one measured volume, litres. */
export interface VolumeUncertainty {
  /** Of the vessel or scale: the same error again in every volume measured with it. */
  readonly instrumentL: number;
  /** Of the reading: another error each time. */
  readonly readingL: number;
}

/** A mass without a logged temperature is taken at 20 °C; from 4 to 30 °C that is off by so much. */
const DENSITY_HALF_WIDTH = 0.003;

/** A half-width within which every error is as likely makes a standard uncertainty of a / √3. */
const UNIFORM = Math.sqrt(3);

/**
 * What the instruments of a bench leave open in a measured volume.
 *
 * A volume was read in a graduated cylinder of the stated class, the smallest that holds it, or in a
 * jug of the stated tolerance; a mass was weighed on the stated scale.
 * Source: half-widths from ASTM E1272-02 (2012) and NIST Handbook 44 (class III, from memory);
 *   a / √3 from JCGM 100:2008 (GUM), 4.3.7.
 * Checked by: tests/outside-checks/measurement/
 */
export function volumeUncertainty(
  measured: MeasuredVolume,
  instruments: Instruments,
): VolumeUncertainty {
  const { volumeL, weighedAt, quantity } = measured;
  if (weighedAt !== null) {
    const massG = quantity.value;
    const litresPerG = massG > 0 ? volumeL / massG : 0.001;
    const divisionG = instruments.scale_division_g;
    const densityL = weighedAt.isAssumed ? DENSITY_HALF_WIDTH * volumeL : 0;
    return {
      instrumentL: Math.hypot(scaleToleranceG(massG, divisionG) * litresPerG, densityL) / UNIFORM,
      readingL: ((divisionG / 2) * litresPerG) / UNIFORM,
    };
  }
  if (instruments.vessel_tolerance !== undefined) {
    return { instrumentL: (instruments.vessel_tolerance * volumeL) / UNIFORM, readingL: 0 };
  }
  const { vesselL, readingL } = cylinderTolerance(volumeL, instruments.cylinder);
  return { instrumentL: vesselL / UNIFORM, readingL: readingL / UNIFORM };
}

/**
 * Relative uncertainty of a sum of volumes that the same instruments measured: their errors point one
 * way and add up.
 * @returns 0 where all volumes are 0
 */
export function sharedRelative(
  volumes: readonly MeasuredVolume[],
  instruments: Instruments,
): number {
  let totalL = 0;
  let uncertainL = 0;
  for (const volume of volumes) {
    totalL += volume.volumeL;
    uncertainL += volumeUncertainty(volume, instruments).instrumentL;
  }
  return totalL > 0 ? uncertainL / totalL : 0;
}
