/**
 * Constants of the carbonate system at a temperature, as negative logarithms.
 *
 * Source: L. N. Plummer & E. Busenberg (1982), Geochim. Cosmochim. Acta 46, 1011-1040, for carbonic
 * acid and calcite; `pKw` as in Standard Methods 2330 B (from memory). Range 0 to 50 degC.
 */
export interface CarbonateConstants {
  readonly pK1: number;
  readonly pK2: number;
  /** Solubility of calcite. */
  readonly pKs: number;
  readonly pKw: number;
}

export function carbonateConstants(temperatureC: number): CarbonateConstants {
  const t = temperatureC + 273.15;
  const log = Math.log10(t);
  return {
    pK1: 356.3094 + 0.06091964 * t - 21834.37 / t - 126.8339 * log + 1684915 / t ** 2,
    pK2: 107.8871 + 0.03252849 * t - 5151.79 / t - 38.92561 * log + 563713.9 / t ** 2,
    pKs: 171.9065 + 0.077993 * t - 2839.319 / t - 71.595 * log,
    pKw: 4471 / t + 0.01706 * t - 6.0875,
  };
}

/**
 * Negative logarithm of the activity coefficient of a monovalent ion (Davies).
 *
 * Source: Standard Methods 2330 B (from memory): `pfm = A (sqrt(I)/(1 + sqrt(I)) - 0.3 I)`.
 * Holds up to an ionic strength of about 0.5 mol/L.
 */
export function activityExponent(ionicStrengthMolPerL: number, temperatureC: number): number {
  const t = temperatureC + 273.15;
  const permittivity = 60954 / (t + 116) - 68.937;
  const a = 1.82e6 * (permittivity * t) ** -1.5;
  const root = Math.sqrt(ionicStrengthMolPerL);
  return a * (root / (1 + root) - 0.3 * ionicStrengthMolPerL);
}
