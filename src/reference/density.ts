import { BenchError } from '../findings/index.ts';

/** Lowest and highest temperature of the density formula, degC. */
const COLDEST_C = 0;
const HOTTEST_C = 40;

/** Density of air at room temperature and sea level, g/mL; rounded. */
const AIR_G_PER_ML = 0.0012;

/** Density to which balances are adjusted by convention, g/mL; exact by convention. */
const ADJUSTING_MASS_G_PER_ML = 8.0;

/**
 * Density of pure, air-free water at one atmosphere, g/mL.
 *
 * Tap water is denser by about 0.75e-6 g/mL per mg/L of dissolved solids, which is left out: 500 mg/L
 * change a volume by 0.04 %.
 * @param temperatureC degC, 0 to 40
 * @throws {BenchError} number-outside below 0 or above 40 degC, and for NaN
 * Source: formula of Tanaka, Girard, Davis, Peuto and Bignell, Metrologia 38 (2001) 301, from memory;
 * within 0.0012 kg/m3 of the IAPWS-95 formulation from 0 to 40 degC.
 * Checked by: tests/outside-checks/units/
 * @example waterDensityGPerMl(20) // 0.998207
 */
export function waterDensityGPerMl(temperatureC: number): number {
  if (!(temperatureC >= COLDEST_C && temperatureC <= HOTTEST_C)) {
    throw new BenchError(
      'number-outside',
      `the density of water is known from 0 to 40 degC here, not at ${temperatureC}`,
      'check the logged temperature',
    );
  }
  const t = temperatureC;
  const ratio = ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881));
  return (999.97495 * (1 - ratio)) / 1000;
}

/**
 * Volume in L of water weighed in air.
 *
 * Air carries part of the weight, the more the larger the volume: without this, a volume would read
 * 0.1 % too small.
 * @param massG what the scale showed, g; its zero was taken with the empty vessel
 * @param temperatureC degC of the water, 0 to 40
 * @throws {BenchError} number-outside as `waterDensityGPerMl`
 * Edge cases: 0 gives 0, a negative mass a negative volume.
 * Source: V = m (1 - 0.0012 / 8.0) / (density - 0.0012); air at about 20 degC and 1013 hPa.
 * @example volumeFromMassL(1000, 20) // 1.00285
 */
export function volumeFromMassL(massG: number, temperatureC: number): number {
  const carried = 1 - AIR_G_PER_ML / ADJUSTING_MASS_G_PER_ML;
  return (massG * carried) / (waterDensityGPerMl(temperatureC) - AIR_G_PER_ML) / 1000;
}
