import { type CensoredResult, requireResults, sortResults } from './censored-results.ts';
import { leastSquaresLine } from './least-squares-line.ts';
import type { LogSummary } from './log-summary.ts';
import { arithmeticMean, sampleSd } from './mean-and-sd.ts';
import { normalQuantile } from './normal-distribution.ts';
import { sortedQuantile } from './ordinary-quantile.ts';
import { plottingPositions } from './plotting-positions.ts';
import { refuse } from './refuse-input.ts';

/** All figures describe the completed list: spreads with n - 1, quantiles of type 7. */
export interface RobustRos extends LogSummary {
  readonly method: 'robust-ros';
}

/**
 * Robust regression on order statistics: the logarithms of the exact numbers are regressed on their
 * normal scores, the line completes the list where results are censored, and the completed list is
 * summarised.
 *
 * What: only the censored part leans on the lognormal shape, so the mean is not driven by it. Use for
 * means, spreads and quantiles up to about 80 % censored. The completed values stand for the list as
 * a whole, never for a sample; a completed value may lie above its own limit.
 * @param results intervals; anything with low below high counts as "< high", so a result between two
 * limits enters as below the upper one
 * @returns the unit of the results
 * @throws {BenchError} statistics-input when the list is empty, an interval cannot be used, fewer
 * than two results are exact, or an exact one is zero; from `quantile` for no probability
 * Edge cases: limits above the largest exact number say nothing here and are dropped before anything
 * else, so the completed list is then shorter than n.
 * Source: D. R. Helsel & T. A. Cohn (1988), Water Resources Research 24, 1997-2004; plotting
 * constant 0; as in USEPA (2009), EPA 530/R-09-007, section 15.4.
 * Checked by: tests/outside-checks/statistics/censored.test.ts
 * @example robustRos([{ low: 0, high: 1 }, { low: 2, high: 2 }, { low: 4, high: 4 }]).median // 2
 */
export function robustRos(results: readonly CensoredResult[]): RobustRos {
  requireResults(results);
  const { exact, limits: allLimits } = sortResults(results);
  if (exact.length < 2) {
    refuse(
      `${exact.length} of ${results.length} results are single numbers`,
      'regression on order statistics needs at least two',
    );
  }
  if (exact[0] === 0) refuse('a result is exactly zero', 'give it as below its detection limit');

  const largest = exact[exact.length - 1] as number;
  let kept = allLimits.length;
  while (kept > 0 && (allLimits[kept - 1] as number) > largest) kept--;
  const limits = allLimits.subarray(0, kept);

  const completed = complete(exact, limits);
  const logs = completed.map(Math.log);
  const mean = arithmeticMean(completed);
  const sd = sampleSd(completed);
  completed.sort();
  return {
    method: 'robust-ros',
    n: results.length,
    nonDetects: allLimits.length,
    meanLog: arithmeticMean(logs),
    sdLog: sampleSd(logs),
    mean,
    sd,
    median: sortedQuantile(completed, 0.5),
    quantile: (probability) => sortedQuantile(completed, probability),
  };
}

/** The exact numbers followed by one value from the regression line for each limit. */
function complete(exact: Float64Array, limits: Float64Array): Float64Array {
  const positions = plottingPositions(exact, limits);
  const scores = positions.exact.map(normalQuantile);
  const line = leastSquaresLine({ x: scores, y: exact.map(Math.log) });
  const completed = new Float64Array(exact.length + limits.length);
  completed.set(exact);
  for (let i = 0; i < limits.length; i++) {
    const score = normalQuantile(positions.limits[i] as number);
    completed[exact.length + i] = Math.exp(line.intercept + line.slope * score);
  }
  return completed;
}
