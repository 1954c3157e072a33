import {
  activityExponent,
  type CarbonateConstants,
  carbonateConstants,
} from './carbonate-constants.ts';

/** A water for which saturation can be computed; every figure measured. */
export interface CarbonateWater {
  readonly pH: number;
  readonly temperatureC: number;
  /** mg/L as Ca, above 0. */
  readonly calciumMgPerL: number;
  /** mg/L as CaCO3, above 0. */
  readonly alkalinityMgPerL: number;
  /** mol/L. */
  readonly ionicStrengthMolPerL: number;
}

const CALCIUM_G_PER_MOL = 40.078;
/** mg of CaCO3 in one milliequivalent. */
export const CALCITE_MG_PER_MEQ = 50.0435;
const PH_RANGE = [1, 14] as const;

interface System {
  readonly constants: CarbonateConstants;
  readonly pfm: number;
}

function systemOf(water: CarbonateWater): System {
  return {
    constants: carbonateConstants(water.temperatureC),
    pfm: activityExponent(water.ionicStrengthMolPerL, water.temperatureC),
  };
}

/** Free hydrogen and hydroxide ions, mol/L. */
function waterIons({ constants, pfm }: System, pH: number) {
  return { hydrogen: 10 ** (pfm - pH), hydroxide: 10 ** (pH + pfm - constants.pKw) };
}

/** Carbonate species relative to bicarbonate. */
function ratios({ constants, pfm }: System, pH: number) {
  return {
    carbonate: 10 ** (pH + 3 * pfm - constants.pK2),
    carbonDioxide: 10 ** (constants.pK1 - pH - pfm),
  };
}

/** Bicarbonate at a pH, mol/L, from alkalinity in eq/L. */
function bicarbonate(system: System, pH: number, alkalinity: number): number {
  const { hydrogen, hydroxide } = waterIons(system, pH);
  return (alkalinity + hydrogen - hydroxide) / (1 + 2 * ratios(system, pH).carbonate);
}

function saturation(system: System, pH: number, calcium: number, alkalinity: number): number {
  const carbonate = bicarbonate(system, pH, alkalinity) * ratios(system, pH).carbonate;
  return Math.log10(calcium * carbonate) - 8 * system.pfm + system.constants.pKs;
}

/**
 * Saturation index of calcite, equilibrium form: pH minus the pH at which the water would be
 * saturated. Above 0 it can precipitate calcite, below 0 dissolve it.
 *
 * Source: Standard Methods 2330 B, equilibrium form (layout from memory), without ion pairs.
 * Where it fails: general speciation with ion pairs gives 0.03 to 0.11 less on tap waters; at very
 * low mineralisation the figure rests on the last digit of calcium and pH.
 * Checked by: tests/outside-checks/saturation/
 */
export function calciteSaturationIndex(water: CarbonateWater): number {
  const { calcium, alkalinity } = molar(water);
  return saturation(systemOf(water), water.pH, calcium, alkalinity);
}

/** What a water would do until it is just saturated, in a closed system. */
export interface PrecipitationPotential {
  /** mg/L of CaCO3: positive precipitates, negative dissolves. */
  readonly potentialMgPerL: number;
  readonly finalPH: number;
}

/**
 * Calcium carbonate precipitation potential: the calcite that precipitates (positive) or dissolves
 * (negative) until the water is just saturated, without exchange of carbon dioxide with air.
 *
 * Alkalinity falls by two equivalents and total carbon by one mole for each mole of calcite.
 * Source: definition in Standard Methods 2330 C (sign: positive precipitates; some rules print the
 * opposite sign), solved by bisection at constant ionic strength, without ion pairs.
 * Where it fails: it differs from programs with ion pairs by several mg/L on hard waters.
 * @returns null where no amount of calcite makes the water just saturated
 */
export function precipitationPotential(water: CarbonateWater): PrecipitationPotential | null {
  const system = systemOf(water);
  const { calcium, alkalinity } = molar(water);
  const base = bicarbonate(system, water.pH, alkalinity);
  const { carbonate, carbonDioxide } = ratios(system, water.pH);
  const carbon = base * (1 + carbonate + carbonDioxide);
  const indexAt = (x: number): { readonly index: number; readonly pH: number } => {
    const pH = phOf(system, alkalinity - 2 * x, carbon - x);
    return { index: saturation(system, pH, calcium - x, alkalinity - 2 * x), pH };
  };
  let low = -0.05;
  let high = Math.min(calcium, carbon) * (1 - 1e-9);
  if (!(indexAt(low).index > 0) || !(indexAt(high).index < 0)) return null;
  for (let step = 0; step < 200; step += 1) {
    const middle = (low + high) / 2;
    // What is not a number lies where no carbonate is left: too much was taken out.
    if (indexAt(middle).index > 0) low = middle;
    else high = middle;
  }
  const x = (low + high) / 2;
  return { potentialMgPerL: x * 2000 * CALCITE_MG_PER_MEQ, finalPH: indexAt(x).pH };
}

/** pH of a closed carbonate system, from alkalinity (eq/L) and total carbon (mol/L). */
function phOf(system: System, alkalinity: number, carbon: number): number {
  let [low, high]: [number, number] = [...PH_RANGE];
  for (let step = 0; step < 100; step += 1) {
    const pH = (low + high) / 2;
    const { carbonate, carbonDioxide } = ratios(system, pH);
    const { hydrogen, hydroxide } = waterIons(system, pH);
    const found =
      (carbon * (1 + 2 * carbonate)) / (1 + carbonate + carbonDioxide) + hydroxide - hydrogen;
    if (found < alkalinity) low = pH;
    else high = pH;
  }
  return (low + high) / 2;
}

function molar(water: CarbonateWater): { readonly calcium: number; readonly alkalinity: number } {
  return {
    calcium: water.calciumMgPerL / CALCIUM_G_PER_MOL / 1000,
    alkalinity: water.alkalinityMgPerL / CALCITE_MG_PER_MEQ / 1000,
  };
}
