import { requireNumbers, requireProbability } from './refuse-input.ts';

/**
 * Quantile of a list of plain numbers by linear interpolation between its ordered values, the first
 * being the 0 quantile and the last the 1 quantile (type 7).
 *
 * @param values at least one finite number, in any order
 * @param probability from 0 to 1; 0.5 gives the ordinary median
 * @throws {BenchError} statistics-input for an empty list, a number that is not finite, or a p that
 * is not a probability
 * Source: R. J. Hyndman & Y. Fan (1996), Sample quantiles in statistical packages, The American
 * Statistician 50, 361-365, definition 7.
 * @example ordinaryQuantile([4, 1, 3, 2], 0.25) // 1.75
 */
export function ordinaryQuantile(values: readonly number[], probability: number): number {
  requireNumbers('the values', values, 1);
  return sortedQuantile(Float64Array.from(values).sort(), probability);
}

/** The same for values already in ascending order, which are not checked again. */
export function sortedQuantile(ascending: Float64Array, probability: number): number {
  requireProbability('the probability of the quantile', probability);
  const at = probability * (ascending.length - 1);
  const index = Math.floor(at);
  const below = ascending[index] as number;
  const share = at - index;
  if (share === 0) return below;
  return below + share * ((ascending[index + 1] as number) - below);
}
