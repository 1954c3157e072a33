import { CALCITE_MG_PER_MEQ } from './calcite-saturation.ts';

const CHLORIDE_G_PER_EQ = 35.453;
const SULFATE_G_PER_EQ = 48.03;

/**
 * Langelier index in the logarithmic form of the tables: `pHs = 9.3 + A + B - C - D`.
 *
 * @param water pH; degC; TDS mg/L above 0; calcium and alkalinity mg/L as CaCO3, above 0
 * @returns pH of saturation, Langelier index (pH - pHs) and Ryznar index (2 pHs - pH)
 * Source: W. F. Langelier (1936), J. AWWA 28, 1500; coefficients of the widely reproduced worked
 * example (A from TDS, B from temperature).
 * Where it fails: it differs from the equilibrium form by up to 0.3; name the form with the figure.
 * @example langelier({ pH: 7.5, temperatureC: 25, tdsMgPerL: 320, calciumMgPerL: 150,
 *   alkalinityMgPerL: 34 }).index // -0.73
 */
export function langelier(water: {
  readonly pH: number;
  readonly temperatureC: number;
  readonly tdsMgPerL: number;
  readonly calciumMgPerL: number;
  readonly alkalinityMgPerL: number;
}): { readonly pHs: number; readonly index: number; readonly ryznar: number } {
  const a = (Math.log10(water.tdsMgPerL) - 1) / 10;
  const b = -13.12 * Math.log10(water.temperatureC + 273) + 34.55;
  const c = Math.log10(water.calciumMgPerL) - 0.4;
  const d = Math.log10(water.alkalinityMgPerL);
  const pHs = 9.3 + a + b - c - d;
  return { pHs, index: water.pH - pHs, ryznar: ryznarIndex(water.pH, pHs) };
}

/** `2 pHs - pH`; below 6 tends to scale, above 7 to corrode (classes from memory). */
export function ryznarIndex(pH: number, pHs: number): number {
  return 2 * pHs - pH;
}

/**
 * Puckorius index: `2 pHs - pHeq`, with the pH the alkalinity would give,
 * `pHeq = 1.485 log10(alkalinity) + 4.54`, in place of the measured one.
 *
 * @param pHs pH of saturation
 * @param alkalinityMgPerL mg/L as CaCO3, above 0
 * Source: formula as printed in UFC 3-240-13FN (2005), example B-2, which reads pHeq from a table that
 *   lies up to 0.04 lower.
 * Where it fails: made for cooling water, which has lost its carbon dioxide; it says nothing of lead or
 *   copper, and nothing of water from a tap that has not stood open.
 * @example puckoriusIndex(6.77, 100) // 6.03
 */
export function puckoriusIndex(pHs: number, alkalinityMgPerL: number): number {
  return 2 * pHs - (1.485 * Math.log10(alkalinityMgPerL) + 4.54);
}

/**
 * Aggressiveness index: `pH + log10(calcium x alkalinity)`, both mg/L as CaCO3. Below 10 highly
 * aggressive, from 12 not aggressive (classes from memory).
 *
 * Source: AWWA Standard C400 (formula).
 */
export function aggressivenessIndex(pH: number, calcium: number, alkalinity: number): number {
  return pH + Math.log10(calcium * alkalinity);
}

/**
 * Larson ratio: chloride and sulfate over bicarbonate and carbonate, in equivalents. Alkalinity
 * stands for the latter.
 *
 * Source: T. E. Larson & R. V. Skold (1958).
 */
export function larsonRatio(
  chlorideMgPerL: number,
  sulfateMgPerL: number,
  alkalinityMgPerL: number,
): number {
  const strong = chlorideMgPerL / CHLORIDE_G_PER_EQ + sulfateMgPerL / SULFATE_G_PER_EQ;
  return strong / (alkalinityMgPerL / CALCITE_MG_PER_MEQ);
}

/**
 * Chloride-to-sulfate mass ratio and its class for lead from brass and solder.
 *
 * Source: USGS SIR 2016-5092: below 0.2 low; 0.2 to 0.5 moderate; above 0.5 moderate with an
 * alkalinity of 50 mg/L as CaCO3 or more, else high.
 */
export function chlorideSulfateRatio(
  chlorideMgPerL: number,
  sulfateMgPerL: number,
  alkalinityMgPerL: number,
): { readonly ratio: number; readonly concern: 'low' | 'moderate' | 'high' } {
  const ratio = chlorideMgPerL / sulfateMgPerL;
  const concern =
    ratio < 0.2 ? 'low' : ratio <= 0.5 || alkalinityMgPerL >= 50 ? 'moderate' : 'high';
  return { ratio, concern };
}
