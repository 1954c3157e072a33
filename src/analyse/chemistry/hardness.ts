/**
 * Hardness from calcium and magnesium, mg/L as CaCO3.
 *
 * Iron, manganese and strontium are left out.
 * Source: Standard Methods 2340 B: 2.497 Ca + 4.118 Mg (factors seen).
 * Checked by: tests/outside-checks/quality-control/
 * @example calculatedHardness(50, 12) // 174.266
 */
export function calculatedHardness(calciumMgPerL: number, magnesiumMgPerL: number): number {
  return 2.497 * calciumMgPerL + 4.118 * magnesiumMgPerL;
}
