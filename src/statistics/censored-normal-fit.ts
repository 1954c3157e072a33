import { requireQuantileProbability } from './censored-results.ts';
import { normalQuantile } from './normal-distribution.ts';
import { type LogLikelihood, normalLogLikelihood } from './normal-log-likelihood.ts';
import { refuse } from './refuse-input.ts';

/** What a fit to intervals found, on the scale of the ends it was given. */
export interface CensoredNormalFit {
  readonly mean: number;
  /** Maximum-likelihood scale: divided by n, not n - 1. */
  readonly sd: number;
  /** Standard errors of the mean and of ln(sd), from the curvature at the maximum. */
  readonly uMean: number;
  readonly uLogSd: number;
  /** How many results are intervals. */
  readonly intervals: number;
  readonly converged: boolean;
}

const MOST_STEPS = 100;
const MOST_HALVINGS = 60;
const MOST_ROUNDS = 8;
const OWN_SCALE = 20;
// Newton squares the error in each step, so what is left after a step this small is rounding.
const SETTLED = 1e-8;
// An interval this narrow, in standard deviations, is a number as far as doubles can tell.
const NARROW = 1e-5;

/**
 * Maximum-likelihood normal distribution for numbers and intervals on the whole real line.
 *
 * What: in mean/sd and 1/sd the log likelihood is concave, so Newton steps, halved where they
 * overshoot, reach the one maximum from any start. The data are first put on their own scale, and
 * once more where that first guess was far off.
 * @param low lower ends, -Infinity for an open one
 * @param high upper ends, Infinity for an open one; equal to low for a number
 * @returns `converged` false where the likelihood has no maximum (all exact numbers are equal and lie
 * in every interval: it grows without end as sd shrinks to the 0 returned) or the steps ran out
 * @throws {BenchError} statistics-input where two parameters have nothing to rest on: no result, no
 * exact number, or results that are all the same
 * Source: R. J. Olsen (1978), Note on the uniqueness of the maximum likelihood estimator for the
 * Tobit model, Econometrica 46, 1211-1215; J. W. Pratt (1981), Concavity of the log likelihood,
 * Journal of the American Statistical Association 76, 103-106, for intervals (both from memory).
 * Checked by: tests/outside-checks/statistics/r-survival/
 */
export function fitCensoredNormal(low: Float64Array, high: Float64Array): CensoredNormalFit {
  const intervals = countIntervals(low, high);
  requireIdentified(low, high, intervals);
  const only = onlyExactValue(low, high);
  if (only !== null) {
    return { mean: only, sd: 0, uMean: 0, uLogSd: Infinity, intervals, converged: false };
  }

  let { mean, sd } = startingScale(low, high);
  for (let round = 1; ; round++) {
    const [from, to] = rescale(low, high, mean, sd);
    const { location, inverse, uMean, uLogSd, converged } = maximise(normalLogLikelihood(from, to));
    const fit = {
      mean: mean + (sd * location) / inverse,
      sd: sd / inverse,
      uMean: sd * uMean,
      uLogSd,
      intervals,
      converged,
    };
    // Far from its own scale the two parameters lose digits to each other: start again on it.
    const isOwnScale = Math.max(Math.abs(location), inverse, 1 / inverse) < OWN_SCALE;
    if ((converged && isOwnScale) || round === MOST_ROUNDS) return fit;
    ({ mean, sd } = fit);
  }
}

/**
 * Quantile of a fitted normal distribution.
 *
 * @throws {BenchError} statistics-input when p is not a probability
 */
export function fittedQuantile(
  { mean, sd }: Pick<CensoredNormalFit, 'mean' | 'sd'>,
  probability: number,
): number {
  requireQuantileProbability(probability);
  return sd === 0 ? mean : mean + sd * normalQuantile(probability);
}

function countIntervals(low: Float64Array, high: Float64Array): number {
  let count = 0;
  for (let i = 0; i < low.length; i++) if (low[i] !== high[i]) count++;
  return count;
}

function requireIdentified(low: Float64Array, high: Float64Array, intervals: number): void {
  if (intervals === low.length) {
    refuse(
      `none of ${low.length} results is a single number`,
      'a likelihood fit needs at least one, and better three',
    );
  }
  for (let i = 1; i < low.length; i++) {
    if (low[i] !== low[0] || high[i] !== high[0]) return;
  }
  refuse('all results are the same number', 'a spread cannot be fitted to one number');
}

/** The one exact number that every interval holds too, or null. */
function onlyExactValue(low: Float64Array, high: Float64Array): number | null {
  let value: number | null = null;
  for (let i = 0; i < low.length; i++) {
    if (low[i] !== high[i]) continue;
    if (value !== null && value !== low[i]) return null;
    value = low[i] as number;
  }
  if (value === null) return null;
  for (let i = 0; i < low.length; i++) {
    if ((low[i] as number) > value || (high[i] as number) < value) return null;
  }
  return value;
}

/** Mean and spread of the numbers and the finite ends: where the search starts. */
function startingScale(low: Float64Array, high: Float64Array): { mean: number; sd: number } {
  let count = 0;
  let mean = 0;
  let squares = 0;
  for (let i = 0; i < low.length; i++) {
    const a = low[i] as number;
    const b = high[i] as number;
    if (a === -Infinity && b === Infinity) continue;
    const value = a === -Infinity ? b : b === Infinity ? a : (a + b) / 2;
    const gap = value - mean;
    count++;
    mean += gap / count;
    squares += gap * (value - mean);
  }
  const sd = Math.sqrt(squares / count);
  return { mean, sd: sd > 0 ? sd : 1 };
}

function rescale(
  low: Float64Array,
  high: Float64Array,
  mean: number,
  sd: number,
): [Float64Array, Float64Array] {
  const from = new Float64Array(low.length);
  const to = new Float64Array(low.length);
  for (let i = 0; i < low.length; i++) {
    const a = ((low[i] as number) - mean) / sd;
    const b = ((high[i] as number) - mean) / sd;
    const isNarrow = b - a < NARROW;
    from[i] = isNarrow ? (a + b) / 2 : a;
    to[i] = isNarrow ? (a + b) / 2 : b;
  }
  return [from, to];
}

interface Maximum {
  readonly location: number;
  readonly inverse: number;
  readonly uMean: number;
  readonly uLogSd: number;
  readonly converged: boolean;
}

function maximise(fill: (location: number, inverse: number, out: LogLikelihood) => void): Maximum {
  let location = 0;
  let inverse = 1;
  let here: LogLikelihood = { value: 0, l: 0, i: 0, ll: 0, li: 0, ii: 0 };
  let there: LogLikelihood = { ...here };
  let converged = false;
  fill(location, inverse, here);
  for (let step = 0; step < MOST_STEPS && !converged; step++) {
    const determinant = here.ll * here.ii - here.li * here.li;
    const moveLocation = (here.li * here.i - here.ii * here.l) / determinant;
    const moveInverse = (here.li * here.l - here.ll * here.i) / determinant;
    converged =
      Math.abs(moveLocation) <= SETTLED * (1 + Math.abs(location)) &&
      Math.abs(moveInverse) <= SETTLED * inverse;
    let share = 1;
    for (let halvings = 0; ; halvings++, share /= 2) {
      if (halvings === MOST_HALVINGS) return withErrors(here, location, inverse, false);
      if (!(inverse + share * moveInverse > 0)) continue;
      fill(location + share * moveLocation, inverse + share * moveInverse, there);
      // At the maximum the value no longer tells better from worse; the size of the step does.
      if (converged || there.value >= here.value - 1e-12 * Math.abs(here.value)) break;
    }
    location += share * moveLocation;
    inverse += share * moveInverse;
    [here, there] = [there, here];
  }
  return withErrors(here, location, inverse, converged);
}

/** Standard errors from the inverse of the curvature, turned to the mean and ln(sd). */
function withErrors(
  { ll, li, ii }: LogLikelihood,
  location: number,
  inverse: number,
  converged: boolean,
): Maximum {
  const mm = inverse * inverse * ll;
  const ms = -inverse * (location * ll + inverse * li);
  const ss = location * location * ll + 2 * location * inverse * li + inverse * inverse * ii;
  const determinant = mm * ss - ms * ms;
  return {
    location,
    inverse,
    uMean: Math.sqrt(-ss / determinant),
    uLogSd: Math.sqrt(-mm / determinant),
    converged,
  };
}
