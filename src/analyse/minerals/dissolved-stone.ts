const CALCIUM = 40.078;
const MAGNESIUM = 24.305;
const CALCITE = 100.087;
const MAGNESIA = 40.304;
const CARBON_DIOXIDE = 44.009;

/** What a stone that dissolves adds to a water and uses up of its carbon dioxide, mg/L. */
export interface DissolvedStone {
  readonly stoneMgPerL: number;
  /** As CaCO3; alkalinity gains as much. */
  readonly hardnessMgPerL: number;
  readonly carbonDioxideUsedMgPerL: number;
}

/**
 * Calcite that dissolved, if all of a gain in calcium came from it: CaCO3 + CO2 + H2O gives one
 * calcium and two bicarbonate.
 *
 * Source: stoichiometry with standard atomic weights.
 * Checked by: tests/outside-checks/chemistry/
 * @example calciteOf(12.013).stoneMgPerL // 30.0
 */
export function calciteOf(calciumMgPerL: number): DissolvedStone {
  const mmol = calciumMgPerL / CALCIUM;
  return {
    stoneMgPerL: mmol * CALCITE,
    hardnessMgPerL: mmol * CALCITE,
    carbonDioxideUsedMgPerL: mmol * CARBON_DIOXIDE,
  };
}

/**
 * Magnesia that dissolved, if all of a gain in magnesium came from it: MgO + 2 CO2 + H2O gives one
 * magnesium and two bicarbonate.
 *
 * Source and checks as of {@link calciteOf}.
 * @example magnesiaOf(6.03).stoneMgPerL // 10.0
 */
export function magnesiaOf(magnesiumMgPerL: number): DissolvedStone {
  const mmol = magnesiumMgPerL / MAGNESIUM;
  return {
    stoneMgPerL: mmol * MAGNESIA,
    hardnessMgPerL: mmol * CALCITE,
    carbonDioxideUsedMgPerL: 2 * mmol * CARBON_DIOXIDE,
  };
}
