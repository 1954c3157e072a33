import {
  type CensoredResult,
  requireQuantileProbability,
  requireResults,
  sortResults,
} from './censored-results.ts';

// Probabilities closer than this count as equal: the tolerance of R's quantile.survfit.
const TIE = 1.5e-8;

export interface KaplanMeier {
  readonly method: 'kaplan-meier';
  /** All results given. */
  readonly n: number;
  /** Results that are not a single number; each counts as below its upper end. */
  readonly nonDetects: number;
  /** Probability that stays below the smallest exact number, where nothing more is known. */
  readonly leftover: number;
  /** The mean with the leftover placed at zero, at the lowest number listed, at the lowest exact. */
  readonly mean: {
    readonly zero: number | null;
    readonly lowest: number | null;
    readonly smallestDetect: number | null;
  };
  /** Spread about `mean.lowest`, with the leftover placed there too. */
  readonly sd: number | null;
  readonly median: number | null;
  /** Null where the quantile lies in the leftover: it is below the smallest exact number. */
  readonly quantile: (probability: number) => number | null;
}

/**
 * Kaplan-Meier distribution of left-censored results: no shape is assumed.
 *
 * What: the product-limit estimate of survival analysis, with the scale turned over. A "< x" tied
 * with an exact x counts as below it. The leftover has no place of its own, so the mean comes three
 * ways: `zero` and `lowest` bracket the answer where the lowest number listed is the only limit
 * involved, `smallestDetect` is biased high. Use for means and middle quantiles at moderate
 * censoring; not above about 80 % censored.
 * Conventions: `sd` is the square root of the weighted squared deviations from `mean.lowest`, without
 * n - 1. A quantile is the largest exact x with P(X < x) at most p; when the two are equal within
 * 1.5e-8 it is the mean of that x and the next lower exact number, or, below the last one, of that x
 * and the lowest number listed. Without censoring this is the ordinary median.
 * @param results intervals; anything with low below high, open above included, counts as "< high"
 * @returns the unit of the results; every quantity null when no result is exact (leftover 1)
 * @throws {BenchError} statistics-input when the list is empty or an interval cannot be used; from
 * `quantile` when its argument is not a probability
 * Edge cases: a limit above the largest exact number, or an open one, drops out: the method then
 * ignores that this sample may have been high.
 * Source: E. L. Kaplan & P. Meier (1958), Journal of the American Statistical Association 53,
 * 457-481; turned over as in Helsel (2005), Nondetects and Data Analysis; quantiles as in R's
 * survival package; `lowest` is the convention of USEPA (2009), EPA 530/R-09-007, chapter 15.
 * Checked by: tests/outside-checks/statistics/censored.test.ts and r-survival/
 * @example kaplanMeier([{ low: 0, high: 1 }, { low: 2, high: 2 }, { low: 4, high: 4 }]).mean
 * // { zero: 2, lowest: 2.333, smallestDetect: 2.667 }
 */
export function kaplanMeier(results: readonly CensoredResult[]): KaplanMeier {
  requireResults(results);
  const { exact, limits } = sortResults(results);
  const counts = { method: 'kaplan-meier', n: results.length, nonDetects: limits.length } as const;
  if (exact.length === 0) return { ...counts, ...NOTHING_EXACT };

  const smallest = exact[0] as number;
  const lowest = limits.length === 0 ? smallest : Math.min(smallest, limits[0] as number);
  const steps = descend(exact, limits);
  const { values, mass, below } = steps;
  const leftover = below[below.length - 1] as number;

  let zero = 0;
  for (let i = 0; i < values.length; i++) zero += (mass[i] as number) * (values[i] as number);
  const centre = zero + leftover * lowest;
  let squares = leftover * (lowest - centre) ** 2;
  for (let i = 0; i < values.length; i++) {
    squares += (mass[i] as number) * ((values[i] as number) - centre) ** 2;
  }
  const quantile = (probability: number): number | null => {
    requireQuantileProbability(probability);
    return findQuantile(steps, lowest, probability);
  };
  return {
    ...counts,
    leftover,
    mean: { zero, lowest: centre, smallestDetect: zero + leftover * smallest },
    sd: Math.sqrt(squares),
    median: findQuantile(steps, lowest, 0.5),
    quantile,
  };
}

const NOTHING_EXACT = {
  leftover: 1,
  mean: { zero: null, lowest: null, smallestDetect: null },
  sd: null,
  median: null,
  quantile: (probability: number): null => {
    requireQuantileProbability(probability);
    return null;
  },
} as const;

/** The distinct exact numbers from the largest down, each with P(X = number) and P(X < number). */
interface Steps {
  readonly values: Float64Array;
  readonly mass: Float64Array;
  readonly below: Float64Array;
}

function descend(exact: Float64Array, limits: Float64Array): Steps {
  const values = new Float64Array(exact.length);
  const mass = new Float64Array(exact.length);
  const below = new Float64Array(exact.length);
  let size = 0;
  let product = 1;
  let limitsLeft = limits.length;
  let exactLeft = exact.length;
  while (exactLeft > 0) {
    const value = exact[exactLeft - 1] as number;
    while (limitsLeft > 0 && (limits[limitsLeft - 1] as number) > value) limitsLeft--;
    const atRisk = exactLeft + limitsLeft;
    let tied = 0;
    while (exactLeft > 0 && exact[exactLeft - 1] === value) {
      exactLeft--;
      tied++;
    }
    values[size] = value;
    mass[size] = (product * tied) / atRisk;
    product *= (atRisk - tied) / atRisk;
    below[size] = product;
    size++;
  }
  return {
    values: values.subarray(0, size),
    mass: mass.subarray(0, size),
    below: below.subarray(0, size),
  };
}

function findQuantile({ values, below }: Steps, lowest: number, p: number): number | null {
  for (let i = 0; i < values.length; i++) {
    const gap = p - (below[i] as number);
    if (gap <= -TIE) continue;
    const value = values[i] as number;
    if (gap >= TIE) return value;
    const next = i + 1 < values.length ? (values[i + 1] as number) : lowest;
    return (value + next) / 2;
  }
  return null;
}
