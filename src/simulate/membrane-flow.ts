import { ABOVE_ZERO, checkNumber, FINITE, refuseInput, ZERO_OR_MORE } from './check-number.ts';
import { feedBrineFactor, KELVIN_AT_0_C, osmoticPressureKPa } from './osmotic-pressure.ts';

/** Conditions a membrane works under; gauge pressures in kPa. */
export interface MembraneConditions {
  readonly feedKPa: number;
  /** Pressure lost from the feed to the drain end; left out: 0. */
  readonly feedDrainDropKPa?: number;
  /** Pressure against which the product leaves; left out: 0, an open tap. */
  readonly productKPa?: number;
  readonly feedSolidsMgPerL: number;
  readonly productSolidsMgPerL: number;
  /** Product over feed, from 0 to below 1. */
  readonly recovery: number;
  readonly temperatureC: number;
}

/** How the flow through a membrane grows with temperature, against 25 degC. */
export type TemperatureFactor = 'power' | 'arrhenius';

/** Temperature to which flows are standardised, degC. */
const STANDARD_C = 25;
const STANDARD_K = 298.15;

/** Growth per kelvin where nothing of the membrane is known; ASTM D4516, from memory. */
const PER_KELVIN = 1.03;

/** K of exp(K (1/298.15 - 1/T)); seen in two public pages for thin-film membranes. */
const WARM_K = 2640;
const COLD_K = 3020;

/**
 * Flow at a temperature as a multiple of the flow at 25 degC.
 *
 * Two defaults are common and differ by up to 15 % in cold water; the factor of the membrane itself
 * wins where it is known.
 * @param temperatureC degC, above -273.15
 * @param kind `power`: 1.03^(T - 25); `arrhenius`: exp(K (1/298.15 - 1/(T + 273.15))) with K 2640
 *   from 25 degC upward and 3020 below
 * @throws {BenchError} simulation-input
 * Source: ASTM D4516 and the EPA manual of membrane filtration (power), from memory; two public
 *   pages on membrane data (arrhenius).
 * Checked by: tests/outside-checks/physics/
 * @example temperatureFactor(10, 'power') // 0.642
 */
export function temperatureFactor(temperatureC: number, kind: TemperatureFactor): number {
  const celsius = checkNumber('temperatureC', temperatureC, FINITE);
  if (kind === 'power') return PER_KELVIN ** (celsius - STANDARD_C);
  const kelvin = celsius + KELVIN_AT_0_C;
  if (kelvin <= 0) refuseInput(`temperatureC is ${celsius}`, 'give a temperature water can have');
  return Math.exp((celsius >= STANDARD_C ? WARM_K : COLD_K) * (1 / STANDARD_K - 1 / kelvin));
}

/**
 * Pressure that drives water through a membrane, kPa: feed pressure less half the drop along it, the
 * pressure of the product and the osmotic difference.
 *
 * @returns may be 0 or negative: then no product is made
 * @throws {BenchError} simulation-input
 * Source: ASTM D4516-19a, form of the equation seen in a public guide.
 */
export function netDrivingPressureKPa(conditions: MembraneConditions): number {
  const { feedSolidsMgPerL, productSolidsMgPerL, recovery, temperatureC } = conditions;
  const feedKPa = checkNumber('feedKPa', conditions.feedKPa, ZERO_OR_MORE);
  const dropKPa = checkNumber('feedDrainDropKPa', conditions.feedDrainDropKPa ?? 0, ZERO_OR_MORE);
  const productKPa = checkNumber('productKPa', conditions.productKPa ?? 0, ZERO_OR_MORE);
  const alongSolids =
    checkNumber('feedSolidsMgPerL', feedSolidsMgPerL, ZERO_OR_MORE) * feedBrineFactor(recovery);
  const osmoticKPa =
    osmoticPressureKPa(alongSolids, temperatureC) -
    osmoticPressureKPa(productSolidsMgPerL, temperatureC);
  return feedKPa - dropKPa / 2 - productKPa - osmoticKPa;
}

/**
 * The flow a membrane would have under standard conditions, in the unit of the flow given.
 *
 * @returns null where either driving pressure is not above 0
 * @throws {BenchError} simulation-input
 * Source: ASTM D4516-19a: Qs = Qa (NDPs TCFs) / (NDPa TCFa).
 * Checked by: tests/outside-checks/physics/
 */
export function standardFlow(
  flow: number,
  actual: MembraneConditions,
  standard: MembraneConditions,
  kind: TemperatureFactor,
): number | null {
  const measured = checkNumber('flow', flow, ABOVE_ZERO);
  const actualKPa = netDrivingPressureKPa(actual);
  const standardKPa = netDrivingPressureKPa(standard);
  if (!(actualKPa > 0 && standardKPa > 0)) return null;
  return (
    (measured * standardKPa * temperatureFactor(standard.temperatureC, kind)) /
    (actualKPa * temperatureFactor(actual.temperatureC, kind))
  );
}

/**
 * Salt passage (product over feed) under standard conditions.
 *
 * Derived: the salt that passes does not depend on the flow, so the product is thinner where more
 * water passes. The permeability for salt is taken to grow with temperature like that for water.
 * @returns null as `standardFlow`, and without solids in a feed
 * @throws {BenchError} simulation-input
 * Source: derived from the fluxes of water and salt; ASTM D4516 has the same ingredients, from
 *   memory.
 */
export function standardSaltPassage(
  flow: number,
  actual: MembraneConditions,
  standard: MembraneConditions,
  kind: TemperatureFactor,
): number | null {
  const standardised = standardFlow(flow, actual, standard, kind);
  if (standardised === null || actual.feedSolidsMgPerL === 0) return null;
  const passage = actual.productSolidsMgPerL / actual.feedSolidsMgPerL;
  const warmth =
    temperatureFactor(standard.temperatureC, kind) / temperatureFactor(actual.temperatureC, kind);
  return (
    (passage * flow * warmth * feedBrineFactor(standard.recovery)) /
    (standardised * feedBrineFactor(actual.recovery))
  );
}
