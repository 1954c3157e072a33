import { compensatedSum } from './compensated-sum.ts';
import { arithmeticMean, sampleSd } from './mean-and-sd.ts';
import { refuse } from './refuse-input.ts';

export interface PooledSd {
  readonly sd: number;
  readonly degreesOfFreedom: number;
}

/**
 * Standard deviation within groups of repeats, pooled over the groups. Pairs of duplicates are groups
 * of two.
 *
 * @param groups at least one, each of two or more finite numbers that repeat one measurement
 * @throws {BenchError} statistics-input for no group, a group of one, or a number that is not finite
 * Source: sqrt(Σ (n - 1) s² / Σ (n - 1)); P. M. Berthouex & L. C. Brown (2002), Statistics for
 * Environmental Engineers, 2nd edition, example 14.1.
 * Checked by: tests/outside-checks/statistics/duplicates.test.ts
 * @example pooledSd([[10.2, 9.8], [5.1, 5.6], [22, 20.9], [7.7, 7.7]]).sd // 0.45
 */
export function pooledSd(groups: readonly (readonly number[])[]): PooledSd {
  return pool(groups, sampleSd);
}

/**
 * The same for relative standard deviations, for repeats whose scatter grows with their size.
 *
 * @returns sd as a fraction of the mean
 * @throws {BenchError} statistics-input also for a group whose mean is not above zero
 * @example pooledRelativeSd([[9, 11]]).sd // 0.1414
 */
export function pooledRelativeSd(groups: readonly (readonly number[])[]): PooledSd {
  return pool(groups, (group) => {
    const mean = arithmeticMean(group);
    if (!(mean > 0)) refuse(`the mean of a group is ${mean}`, 'pool absolute deviations instead');
    return sampleSd(group) / mean;
  });
}

function pool(
  groups: readonly (readonly number[])[],
  spread: (group: readonly number[]) => number,
): PooledSd {
  if (groups.length === 0) refuse('there is no group', 'give at least one group of repeats');
  const squares = groups.map((group) => (group.length - 1) * spread(group) ** 2);
  const degreesOfFreedom = groups.reduce((sum, group) => sum + group.length - 1, 0);
  return { sd: Math.sqrt(compensatedSum(squares) / degreesOfFreedom), degreesOfFreedom };
}
