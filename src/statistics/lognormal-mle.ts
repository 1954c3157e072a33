import { fitCensoredNormal, fittedQuantile } from './censored-normal-fit.ts';
import { type CensoredResult, requireResults } from './censored-results.ts';
import type { LogSummary } from './log-summary.ts';
import { refuse } from './refuse-input.ts';

/** All figures describe the fitted curve: `sdLog` divides by n, `mean` is exp(meanLog + sdLog²/2). */
export interface LognormalMle extends LogSummary {
  readonly method: 'lognormal-mle';
  readonly converged: boolean;
}

/**
 * Lognormal distribution fitted by maximum likelihood to numbers and intervals.
 *
 * What: an exact number adds the log density, an interval the log probability between its ends: low
 * 0 is open below, high Infinity open above. Use for percentiles and heavy censoring; the mean and
 * sd hang on the assumed tail and are fragile, and below three exact numbers the fit means nothing.
 * @returns the unit of the results; `converged` false where the likelihood has no maximum (all exact
 * numbers equal and inside every interval) or was not reached, and the figures then mean nothing;
 * mean and sd are Infinity where they pass the largest double
 * @throws {BenchError} statistics-input when the list is empty, an interval cannot be used, no result
 * is exact, all are the same, or an exact one is zero; from `quantile` when p is no probability
 * Edge cases: without censoring meanLog and sdLog are the mean and the standard deviation (n) of
 * the logarithms; a result from 0 to Infinity says nothing and changes nothing.
 * Source: A. C. Cohen (1959), Technometrics 1, 217-237, for censored samples; interval terms as in
 * R's survival package (survreg, type "interval2"); as in USEPA (2009), EPA 530/R-09-007, chapter 15.
 * Checked by: tests/outside-checks/statistics/censored.test.ts and r-survival/
 * @example lognormalMle([{ low: 1, high: 1 }, { low: 4, high: 4 }]).median // 2
 */
export function lognormalMle(results: readonly CensoredResult[]): LognormalMle {
  requireResults(results);
  const low = new Float64Array(results.length);
  const high = new Float64Array(results.length);
  for (let i = 0; i < results.length; i++) {
    const result = results[i] as CensoredResult;
    if (result.high === 0) refuse('a result is exactly zero', 'give it as below its limit');
    low[i] = Math.log(result.low);
    high[i] = result.high === result.low ? (low[i] as number) : Math.log(result.high);
  }
  const fit = fitCensoredNormal(low, high);
  const variance = fit.sd * fit.sd;
  const mean = Math.exp(fit.mean + variance / 2);
  return {
    method: 'lognormal-mle',
    n: results.length,
    nonDetects: fit.intervals,
    meanLog: fit.mean,
    sdLog: fit.sd,
    mean,
    sd: mean * Math.sqrt(Math.expm1(variance)),
    median: Math.exp(fit.mean),
    quantile: (probability) => Math.exp(fittedQuantile(fit, probability)),
    converged: fit.converged,
  };
}
