import { normalCdf } from './normal-distribution.ts';
import { refuse, requireCount, requireInnerProbability, requirePositive } from './refuse-input.ts';
import { studentTQuantile } from './student-t.ts';

/** A comparison of two means of equally many results. */
export interface TwoSamplePlan {
  /** True difference of the two means, above 0. */
  readonly difference: number;
  /** Standard deviation of one result, the unit of the difference. */
  readonly sd: number;
  /** Two-sided level, such as 0.05. */
  readonly level: number;
}

/** Few results: the critical value is large and the integrand steep. */
const FEW = 20;
const STEPS = { few: 4000, many: 400 };
/** Standard deviations of the estimated scatter on either side of 1 that are summed over. */
const REACH = 12;

/**
 * Chance that a two-sample t test finds a difference, on the side on which it lies.
 *
 * What: with n results on each side the statistic is noncentral t with 2n - 2 degrees of freedom and
 * noncentrality `difference / sd sqrt(n/2)`. Its upper tail is integrated over the estimated scatter,
 * Simpson's rule. A find on the wrong side does not count.
 * @param n results on each side, 2 or more
 * Accuracy: absolute error below 1e-8.
 * @throws {BenchError} statistics-input
 * Source: power of the t test, J. Cohen (1988), Statistical Power Analysis for the Behavioral Sciences,
 * 2nd edition, chapter 2 (from memory); the same quantity as R's power.t.test, strict = FALSE.
 * Checked by: tests/outside-checks/statistics/two-sample-power.test.ts
 * @example twoSamplePower(17, { difference: 1, sd: 1, level: 0.05 }) // 0.807
 */
export function twoSamplePower(n: number, { difference, sd, level }: TwoSamplePlan): number {
  requireCount('the number of results', n, 2);
  requirePositive('the difference', difference);
  requirePositive('the standard deviation', sd);
  requireInnerProbability('the level', level);
  const freedom = 2 * n - 2;
  const shift = (difference / sd) * Math.sqrt(n / 2);
  const critical = studentTQuantile(1 - level / 2, freedom);
  // Density of s = estimated / true sd, up to a factor that the division takes out.
  const logDensity = (s: number): number => (freedom - 1) * Math.log(s) - (freedom * s * s) / 2;
  const mode = Math.sqrt((freedom - 1) / freedom);
  const width = REACH / Math.sqrt(2 * freedom);
  const from = Math.max(0, mode - width);
  const steps = freedom < FEW ? STEPS.few : STEPS.many;
  const step = (mode + width - from) / steps;
  let whole = 0;
  let found = 0;
  for (let at = 0; at <= steps; at += 1) {
    const s = from + at * step;
    const weight = at === 0 || at === steps ? 1 : at % 2 === 1 ? 4 : 2;
    const density = s > 0 ? weight * Math.exp(logDensity(s) - logDensity(mode)) : 0;
    whole += density;
    found += density * normalCdf(shift - critical * s);
  }
  return found / whole;
}

/**
 * Results on each side that a two-sample t test needs to find a difference with a wanted power.
 *
 * @param most the largest number looked at
 * @returns the smallest number, 2 or more; null where `most` does not suffice
 * @throws {BenchError} statistics-input
 * @example twoSampleSize({ difference: 1, sd: 1, level: 0.05 }, 0.8) // 17
 */
export function twoSampleSize(plan: TwoSamplePlan, power: number, most = 10_000): number | null {
  requireInnerProbability('the power', power);
  if (most < 2) refuse(`the largest number is ${most}`, 'give 2 or more');
  if (twoSamplePower(most, plan) < power) return null;
  let low = 1;
  let high = 2;
  // The power rises with the number, so the smallest that suffices is bracketed and halved.
  while (high < most && twoSamplePower(high, plan) < power) {
    low = high;
    high = Math.min(most, 2 * high);
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (twoSamplePower(middle, plan) < power) low = middle;
    else high = middle;
  }
  return high;
}
