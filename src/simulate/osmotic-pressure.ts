import {
  ABOVE_ZERO,
  checkNumber,
  FINITE,
  FRACTION,
  refuseInput,
  ZERO_OR_MORE,
} from './check-number.ts';

/** 0 degC on the absolute scale, exact by definition of the degree Celsius. */
export const KELVIN_AT_0_C = 273.15;

/** A solution of more than this is not drinking water; the formula has a pole at 1,000 g/L. */
const MOST_MG_PER_L = 100_000;

/** Factor of the D4516 expression, kPa L/(mg K); rounded. */
const OSMOTIC_FACTOR = 0.2654;

/** Atmospheres of one mole per litre and kelvin, L atm/(mol K); CODATA 2018, rounded. */
const GAS_CONSTANT_L_ATM = 0.082057366;

/**
 * Osmotic pressure of water with dissolved solids taken as sodium chloride, kPa.
 *
 * Bicarbonate tap waters have 10 to 30 % less than this says; at tap levels that is 1 to 2 % of the
 * driving pressure.
 * @param solidsMgPerL dissolved solids, mg/L, from 0 to 100,000
 * @param temperatureC degC, above -273.15
 * @throws {BenchError} simulation-input
 * Source: expression of ASTM D4516, from memory; within 5 % of Pitzer's equations for sodium
 *   chloride from 500 to 35,000 mg/L.
 * Checked by: tests/outside-checks/physics/
 * @example osmoticPressureKPa(1000, 25) // 79.2
 */
export function osmoticPressureKPa(solidsMgPerL: number, temperatureC: number): number {
  const solids = checkNumber('solidsMgPerL', solidsMgPerL, ZERO_OR_MORE);
  const celsius = checkNumber('temperatureC', temperatureC, FINITE);
  if (solids > MOST_MG_PER_L || celsius <= -KELVIN_AT_0_C) {
    refuseInput(
      `${solids} mg/L at ${celsius} degC is outside the osmotic formula`,
      `give dissolved solids up to ${MOST_MG_PER_L} mg/L at a temperature water can have`,
    );
  }
  return (OSMOTIC_FACTOR * solids * (celsius + KELVIN_AT_0_C)) / (1000 - solids / 1000);
}

/**
 * Osmotic pressure of an ideal solution (van 't Hoff), atm.
 *
 * @param solution moles of salt per kilogram of water, ions per formula unit, degC, osmotic
 *   coefficient (1 is ideal), density in kg/L
 * @throws {BenchError} simulation-input
 * Source: J. H. van 't Hoff, 1887, as in textbooks; real sodium chloride has about 7 % less.
 * @example idealOsmoticPressureAtm({ molality: 0.1, ions: 2, temperatureC: 25 }) // 4.88
 */
export function idealOsmoticPressureAtm(solution: {
  readonly molality: number;
  readonly ions: number;
  readonly temperatureC: number;
  readonly coefficient?: number;
  readonly densityKgPerL?: number;
}): number {
  const molality = checkNumber('molality', solution.molality, ZERO_OR_MORE);
  const ions = checkNumber('ions', solution.ions, ABOVE_ZERO);
  const kelvin = checkNumber('temperatureC', solution.temperatureC, FINITE) + KELVIN_AT_0_C;
  const coefficient = checkNumber('coefficient', solution.coefficient ?? 1, ABOVE_ZERO);
  const density = checkNumber('densityKgPerL', solution.densityKgPerL ?? 0.997, ABOVE_ZERO);
  return coefficient * ions * molality * density * GAS_CONSTANT_L_ATM * kelvin;
}

/**
 * How many times the feed the water along a membrane holds on average, at a recovery.
 *
 * @param recovery product over feed, from 0 to below 1
 * @returns ln(1/(1 - Y))/Y, the mean for full rejection; 1 at recovery 0
 * @throws {BenchError} simulation-input
 * Source: logarithmic mean of ASTM D4516, from memory. The EPA manual of membrane filtration takes
 *   the arithmetic mean of feed and drain, which is higher: 1.5 in place of 1.386 at 50 %.
 * @example feedBrineFactor(0.5) // 1.386
 */
export function feedBrineFactor(recovery: number): number {
  const share = belowOne('recovery', recovery);
  return share === 0 ? 1 : -Math.log1p(-share) / share;
}

/**
 * How many times the feed the drain holds when the membrane keeps everything back.
 * @throws {BenchError} simulation-input
 * @example concentrationFactor(0.75) // 4
 */
export function concentrationFactor(recovery: number): number {
  return 1 / (1 - belowOne('recovery', recovery));
}

/** A fraction that does not reach 1, at which no drain would be left to carry the solids away. */
function belowOne(name: string, value: number): number {
  const share = checkNumber(name, value, FRACTION);
  if (share === 1) refuseInput(`${name} is 1`, `give ${name} below 1`);
  return share;
}

/**
 * Concentration of the drain, from the balance of feed, product and drain.
 *
 * @param water flows in one unit and concentrations in one unit
 * @returns null without drain
 * @throws {BenchError} simulation-input
 * @example drainConcentration({ product: 1, drain: 3, feedSolids: 400, productSolids: 20 }) // 526.7
 */
export function drainConcentration(water: {
  readonly product: number;
  readonly drain: number;
  readonly feedSolids: number;
  readonly productSolids: number;
}): number | null {
  const product = checkNumber('product', water.product, ZERO_OR_MORE);
  const drain = checkNumber('drain', water.drain, ZERO_OR_MORE);
  const feedSolids = checkNumber('feedSolids', water.feedSolids, ZERO_OR_MORE);
  const productSolids = checkNumber('productSolids', water.productSolids, ZERO_OR_MORE);
  if (drain === 0) return null;
  return ((product + drain) * feedSolids - product * productSolids) / drain;
}

/**
 * Share of the stronger of two waters in a blend of a wanted concentration.
 *
 * @returns a fraction; null where the wanted concentration does not lie between the two
 * @throws {BenchError} simulation-input
 * Source: mass balance; worked in US Army TM 5-813-8 (UFC 3-230-12A), appendix A.
 * @example blendShare({ low: 303, high: 800, wanted: 500 }) // 0.396
 */
export function blendShare(waters: {
  readonly low: number;
  readonly high: number;
  readonly wanted: number;
}): number | null {
  const low = checkNumber('low', waters.low, ZERO_OR_MORE);
  const high = checkNumber('high', waters.high, ZERO_OR_MORE);
  const wanted = checkNumber('wanted', waters.wanted, ZERO_OR_MORE);
  if (!(high > low) || wanted < low || wanted > high) return null;
  return (wanted - low) / (high - low);
}
