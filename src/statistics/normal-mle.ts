import { fitCensoredNormal, fittedQuantile } from './censored-normal-fit.ts';
import type { CensoredResult } from './censored-results.ts';
import { refuse } from './refuse-input.ts';

export interface NormalMle {
  readonly method: 'normal-mle';
  readonly n: number;
  /** Results that are not a single number, traces and open ends included. */
  readonly nonDetects: number;
  readonly mean: number;
  /** Maximum-likelihood scale: divided by n, not n - 1. */
  readonly sd: number;
  /** Standard error of the mean; small samples make it too small. */
  readonly uMean: number;
  /** Standard error of ln(sd): sd is uncertain by about this fraction. */
  readonly uLogSd: number;
  readonly quantile: (probability: number) => number;
  readonly converged: boolean;
}

/**
 * Normal distribution fitted by maximum likelihood to numbers and intervals on the whole real line,
 * for example to logarithms of ratios of which some are only bounded.
 *
 * @param results low -Infinity for "below high", high Infinity for "above low", negative ends allowed
 * @returns the unit of the results; `converged` false where the likelihood has no maximum or was not
 * reached, and the other figures then mean nothing
 * @throws {BenchError} statistics-input for an empty list, NaN, ends in the wrong order, no exact
 * number, or results that are all the same
 * Edge cases: without censoring it is the mean and the standard deviation with n.
 * Source: see fitCensoredNormal.
 * Checked by: tests/outside-checks/statistics/normal-censored.test.ts and paired.test.ts
 * @example normalMle([{ low: 1, high: 1 }, { low: 3, high: 3 }]).sd // 1
 */
export function normalMle(results: readonly CensoredResult[]): NormalMle {
  const low = new Float64Array(results.length);
  const high = new Float64Array(results.length);
  results.forEach((result, i) => {
    if (!(result.low <= result.high && result.low < Infinity && result.high > -Infinity)) {
      refuse(
        `a result runs from ${result.low} to ${result.high}`,
        'give low and high as numbers, high not below low',
      );
    }
    low[i] = result.low;
    high[i] = result.high;
  });
  const fit = fitCensoredNormal(low, high);
  return {
    method: 'normal-mle',
    n: results.length,
    nonDetects: fit.intervals,
    mean: fit.mean,
    sd: fit.sd,
    uMean: fit.uMean,
    uLogSd: fit.uLogSd,
    quantile: (probability) => fittedQuantile(fit, probability),
    converged: fit.converged,
  };
}
