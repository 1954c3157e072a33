/** The parts of an alkalinity, mg/L as CaCO3, and free carbon dioxide, mg/L as CO2. */
export interface AlkalinityParts {
  readonly bicarbonate: number;
  readonly carbonate: number;
  readonly hydroxide: number;
  readonly carbonDioxide: number;
}

/**
 * Bicarbonate, carbonate, hydroxide and free carbon dioxide from pH and alkalinity, at 25 degC.
 *
 * @param alkalinityMgPerL total alkalinity as CaCO3
 * @returns a bicarbonate of 0 where hydroxide alone would exceed the alkalinity
 * Source: Standard Methods 4500-CO2 D (from memory).
 * Where it fails: dilute water (it takes activities as concentrations) and other temperatures.
 * Checked by: tests/outside-checks/chemistry/
 * @example alkalinityParts(7, 200).carbonDioxide // 39.96
 */
export function alkalinityParts(pH: number, alkalinityMgPerL: number): AlkalinityParts {
  const ratio = 0.94 * 10 ** (pH - 10);
  const hydroxide = 5 * 10 ** (pH - 10);
  const bicarbonate = Math.max(0, (alkalinityMgPerL - hydroxide) / (1 + ratio));
  return {
    bicarbonate,
    carbonate: ratio * bicarbonate,
    hydroxide,
    carbonDioxide: 2 * bicarbonate * 10 ** (6 - pH),
  };
}
