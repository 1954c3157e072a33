import { refuse, requireProbability } from './refuse-input.ts';

/**
 * One result as an interval that holds the true value: low = high for a single number, low 0 for
 * "< high", low above 0 for "between low and high", high Infinity for "> low".
 */
export interface CensoredResult {
  readonly low: number;
  readonly high: number;
}

/** Results parted into single numbers and limits, each in ascending order. */
export interface SortedResults {
  /** The numbers known exactly. */
  readonly exact: Float64Array;
  /** The upper ends of all results known only as an interval. */
  readonly limits: Float64Array;
}

/**
 * Refuses a list of results no censored statistic can use.
 *
 * @throws {BenchError} statistics-input when the list is empty, or a result holds NaN, a negative
 * end, an infinite lower end, or ends in the wrong order
 */
export function requireResults(results: readonly CensoredResult[]): void {
  if (results.length === 0) refuse('there is no result', 'give at least one result');
  for (const { low, high } of results) {
    if (!(low >= 0 && low < Infinity && high >= low)) {
      refuse(
        `a result runs from ${low} to ${high}`,
        'give low and high as numbers, low from zero upward and high not below low',
      );
    }
  }
}

/**
 * Parts results into exact numbers and upper limits, which is all that a method knows that treats
 * every interval as "below its upper end".
 */
export function sortResults(results: readonly CensoredResult[]): SortedResults {
  let exactCount = 0;
  for (const { low, high } of results) if (low === high) exactCount++;
  const exact = new Float64Array(exactCount);
  const limits = new Float64Array(results.length - exactCount);
  let e = 0;
  let l = 0;
  for (const { low, high } of results) {
    if (low === high) exact[e++] = high;
    else limits[l++] = high;
  }
  return { exact: exact.sort(), limits: limits.sort() };
}

/** Refuses the probability of a quantile that is not between 0 and 1. */
export function requireQuantileProbability(probability: number): void {
  requireProbability('the probability of the quantile', probability);
}
