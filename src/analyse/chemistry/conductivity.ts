import {
  ION_EQUIVALENTS,
  IONS,
  type Ion,
  type IonConcentrations,
  milliequivalents,
} from './ions.ts';

/**
 * Limiting equivalent conductivities at 25 °C, S cm2/eq, from memory. Alkalinity conducts as
 * bicarbonate. Ions not listed add little in drinking water.
 */
const LIMITING_CONDUCTIVITY: Readonly<Partial<Record<Ion, number>>> = {
  calcium: 59.5,
  magnesium: 53.1,
  sodium: 50.1,
  potassium: 73.5,
  'total-alkalinity': 44.5,
  chloride: 76.4,
  sulfate: 80.0,
  nitrate: 71.4,
};

/**
 * Ionic strength in mol/L.
 *
 * @param ions mg/L; nitrate, nitrite and ammonia as N, alkalinity as CaCO3
 */
export function ionicStrength(ions: IonConcentrations): number {
  let sum = 0;
  for (const ion of IONS) {
    sum += milliequivalents(ion, ions[ion] ?? 0) * Math.abs(ION_EQUIVALENTS[ion].charge);
  }
  return sum / 2000;
}

/**
 * Conductivity at 25 °C that the ions of a water would give, µS/cm.
 *
 * The sum of limiting conductivities, reduced by y = 10^(-0.5 (√I/(1+√I) - 0.3 I)). Good to 10 %:
 * it came within 4 % of a speciation program on nine invented waters.
 * Source: limiting conductivities and y from memory of Standard Methods 2510, which reduces by y².
 * Checked by: tests/outside-checks/quality-control/
 * @example estimatedConductivity({ sodium: 22.99, chloride: 35.453 }) // 122.2
 */
export function estimatedConductivity(ions: IonConcentrations): number {
  let limiting = 0;
  for (const ion of IONS) {
    limiting += (LIMITING_CONDUCTIVITY[ion] ?? 0) * milliequivalents(ion, ions[ion] ?? 0);
  }
  const strength = ionicStrength(ions);
  const root = Math.sqrt(strength);
  return limiting * 10 ** (-0.5 * (root / (1 + root) - 0.3 * strength));
}

/**
 * Factors that bring a conductivity read at 0, 1, 2 … 35 °C to 25 °C.
 * Source: ISO 7888:1985, table for natural waters (seen in a copy). Waters differ: a speciation
 * program gives 1.63 to 1.72 at 5 °C.
 */
// biome-ignore format: ten degrees a line
const TO_25: readonly number[] = [
  1.918, 1.857, 1.8, 1.745, 1.693, 1.643, 1.596, 1.551, 1.508, 1.467,
  1.428, 1.39, 1.354, 1.32, 1.287, 1.256, 1.225, 1.196, 1.168, 1.141,
  1.116, 1.091, 1.067, 1.044, 1.021, 1.0, 0.979, 0.959, 0.94, 0.921,
  0.903, 0.886, 0.869, 0.853, 0.837, 0.822,
];

/**
 * Factor that brings a conductivity read at a temperature to 25 °C, between whole degrees by a
 * straight line.
 *
 * @param temperatureC from 0 to 35 °C
 * @returns null outside the table. Not meant for water below 5 µS/cm, whose own ions of water matter.
 * @example temperatureFactor(25) // 1
 */
export function temperatureFactor(temperatureC: number): number | null {
  const below = TO_25[Math.floor(temperatureC)];
  const above = TO_25[Math.ceil(temperatureC)];
  if (below === undefined || above === undefined) return null;
  return below + (above - below) * (temperatureC - Math.floor(temperatureC));
}

/** Rise of conductivity per kelvin that simple meters take; common practice, 1.9 to 2 %. */
const PER_KELVIN = 0.02;

/**
 * Conductivity at 25 °C as a meter with linear compensation would show it: 2 % of the figure at
 * 25 °C per kelvin. In cold water it differs from the table by some percent.
 * @returns null below 0 and above 35 °C, as for the table
 * Source: 1/(1 + a (T - 25)) with a = 0.02, a meter's setting.
 * @example linearConductivityAt25(512, 12) // 691.9
 */
export function linearConductivityAt25(reading: number, temperatureC: number): number | null {
  if (!(temperatureC >= 0 && temperatureC <= 35)) return null;
  return reading / (1 + PER_KELVIN * (temperatureC - 25));
}

/** Conductivity at 25 °C from a reading at another temperature; null outside 0 to 35 °C. */
export function conductivityAt25(reading: number, temperatureC: number): number | null {
  const factor = temperatureFactor(temperatureC);
  return factor === null ? null : reading * factor;
}
