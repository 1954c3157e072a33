import { ABOVE_ZERO, checkNumber, FINITE, ZERO_OR_MORE } from './check-number.ts';

/**
 * A membrane at rest between two mixed volumes of water. Concentrations in any one unit, also that
 * of a meter.
 */
export interface RestingMembrane {
  /** Concentration on the product side when the flow stops. */
  readonly product: number;
  /** Concentration on the feed side when the flow stops. */
  readonly feed: number;
  readonly productL: number;
  readonly feedL: number;
  /** Litres a second that would carry the salt across: permeability for salt times area. */
  readonly saltFlowLPerS: number;
}

/**
 * Permeability for salt times area, from a device that runs, L/s.
 *
 * @param running product flow in L/s, concentration of the product and the mean along the membrane
 * @returns null where the product is not below the feed side
 * @throws {BenchError} simulation-input
 * Source: balance of the salt that passes: flow × product = B A (feed side - product); derived.
 * @example saltFlowLPerS({ productFlowLPerS: 0.0033, product: 15, feedSide: 400 }) // 0.000129
 */
export function saltFlowLPerS(running: {
  readonly productFlowLPerS: number;
  readonly product: number;
  readonly feedSide: number;
}): number | null {
  const flow = checkNumber('productFlowLPerS', running.productFlowLPerS, ABOVE_ZERO);
  const product = checkNumber('product', running.product, ZERO_OR_MORE);
  const feedSide = checkNumber('feedSide', running.feedSide, ZERO_OR_MORE);
  return feedSide > product ? (flow * product) / (feedSide - product) : null;
}

/**
 * Where the product side of a resting membrane tends to, and how fast.
 *
 * @returns the concentration both sides come to, and the time in seconds after which 63 % of the way
 *   is gone
 * @throws {BenchError} simulation-input
 * Source: two well-mixed compartments without flow; derived. No measurement of household devices
 *   was found, so this is no substitute for one.
 */
export function restingPlateau(membrane: RestingMembrane): {
  readonly plateau: number;
  readonly seconds: number;
} {
  const product = checkNumber('product', membrane.product, ZERO_OR_MORE);
  const feed = checkNumber('feed', membrane.feed, ZERO_OR_MORE);
  const productL = checkNumber('productL', membrane.productL, ABOVE_ZERO);
  const feedL = checkNumber('feedL', membrane.feedL, ABOVE_ZERO);
  const salt = checkNumber('saltFlowLPerS', membrane.saltFlowLPerS, ABOVE_ZERO);
  return {
    plateau: (productL * product + feedL * feed) / (productL + feedL),
    seconds: 1 / (salt * (1 / productL + 1 / feedL)),
  };
}

/**
 * Concentration on the product side after a pause.
 *
 * @param seconds length of the pause, from 0
 * @throws {BenchError} simulation-input
 * Source: as `restingPlateau`.
 * Checked by: tests/outside-checks/physics/
 */
export function restingProduct(membrane: RestingMembrane, seconds: number): number {
  const { plateau, seconds: tau } = restingPlateau(membrane);
  const pause = checkNumber('seconds', seconds, ZERO_OR_MORE);
  return plateau + (membrane.product - plateau) * Math.exp(-pause / tau);
}

/** The first water after a pause: what stood in the device, and what it makes. */
export interface FirstWater {
  /** Concentration of the water that stood. */
  readonly stood: number;
  /** Concentration of the water made when it runs. */
  readonly running: number;
  /** Litres that stood, between the membrane and the tap. */
  readonly heldL: number;
}

/**
 * Mean concentration of the first litres after a pause.
 *
 * @param poured litres, above 0
 * @param mixing `mixed`: the held water mixes with what comes; `plug`: it comes out first, unmixed
 * @throws {BenchError} simulation-input
 * Source: wash-out of a held volume; derived.
 * @example firstWaterMean({ stood: 180, running: 15, heldL: 0.12 }, 1, 'mixed') // 34.8
 */
export function firstWaterMean(
  water: FirstWater,
  poured: number,
  mixing: 'mixed' | 'plug',
): number {
  const { stood, running, heldL } = checkedWater(water);
  const litres = checkNumber('poured', poured, ABOVE_ZERO);
  const share =
    mixing === 'plug'
      ? Math.min(1, heldL / litres)
      : (heldL / litres) * -Math.expm1(-litres / heldL);
  return running + (stood - running) * share;
}

/**
 * Litres after which mixed first water has come to a level.
 *
 * @returns 0 where it never was above; null where it never comes down to it
 * @throws {BenchError} simulation-input
 * @example litresToLevel({ stood: 180, running: 15, heldL: 0.12 }, 20) // 0.42
 */
export function litresToLevel(water: FirstWater, level: number): number | null {
  const { stood, running, heldL } = checkedWater(water);
  const wanted = checkNumber('level', level, FINITE);
  if (stood <= wanted) return 0;
  if (wanted <= running) return null;
  return heldL * Math.log((stood - running) / (wanted - running));
}

function checkedWater(water: FirstWater): FirstWater {
  return {
    stood: checkNumber('stood', water.stood, ZERO_OR_MORE),
    running: checkNumber('running', water.running, ZERO_OR_MORE),
    heldL: checkNumber('heldL', water.heldL, ABOVE_ZERO),
  };
}
