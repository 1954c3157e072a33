import { standardUncertainty, type Uncertainty } from './uncertainty.ts';

/**
 * The smallest true value behind a reading that is at least `reading`: `reading - k u(reading)`, 0 at
 * the least.
 * @param reading canonical unit; may be Infinity
 * @param multiplier normal or Student t factor k
 */
export function lowerLimit(uncertainty: Uncertainty, reading: number, multiplier: number): number {
  if (!Number.isFinite(reading)) return reading;
  return Math.max(0, reading - multiplier * standardUncertainty(uncertainty, reading));
}

/**
 * The largest true value behind a reading that is at most `reading`: the solution h of
 * `h - k u(h) = reading`. The scatter is taken at the true value, not at the reading, because a
 * reading that came out low looks more certain than it is.
 * @returns Infinity where k times the relative uncertainty reaches 1
 * @example upperLimit({ relative: 0.1, additive: 0, counting: 0, from: 'stated',
 *   degreesOfFreedom: Infinity }, 9, 1) // 10
 */
export function upperLimit(uncertainty: Uncertainty, reading: number, multiplier: number): number {
  const { relative, additive, counting } = uncertainty;
  const k2 = multiplier * multiplier;
  const left = 1 - k2 * relative * relative;
  if (!Number.isFinite(reading) || left <= 0) return Number.POSITIVE_INFINITY;
  const middle = reading + (k2 * counting) / 2;
  const inside = middle * middle - left * (reading * reading - k2 * additive * additive);
  return (middle + Math.sqrt(Math.max(0, inside))) / left;
}
