import { erf, erfc, scaledErfc } from './error-function.ts';
import { requireProbability } from './refuse-input.ts';

const SQRT_HALF = Math.SQRT1_2;
const LOG_SQRT_TWO_PI = 0.9189385332046728;

/**
 * Standard normal probability of a value at or below z.
 *
 * Accuracy: relative error below 1e-13 down to the smallest double (z near -38).
 * Edge cases: -Infinity gives 0, Infinity gives 1, NaN gives NaN.
 * Source: normal distribution by the error function, NIST Digital Library of Mathematical
 * Functions, section 7.18.
 * @example normalCdf(1.959963984540054) // 0.975
 */
export function normalCdf(z: number): number {
  return 0.5 * erfc(-z * SQRT_HALF);
}

/**
 * Standard normal probability of a value above z: as accurate far up as `normalCdf` is far down.
 *
 * @example normalUpperTail(10) // 7.619853024160525e-24
 */
export function normalUpperTail(z: number): number {
  return 0.5 * erfc(z * SQRT_HALF);
}

/**
 * Natural logarithm of the standard normal probability that a value lies between two numbers, also
 * where the probability itself underflows or the two numbers nearly meet.
 *
 * What: the difference of two cumulative probabilities loses all digits in the tails. Both ends are
 * mirrored to one side, the larger tail is taken out, and only the ratio of tails is subtracted.
 * Accuracy: relative error of the probability about 1e-13; for narrow intervals a Taylor series
 * about the middle stands in for the difference.
 * @param low lower end, -Infinity allowed
 * @param high upper end, Infinity allowed
 * @returns at most 0; -Infinity when low is not below high
 * Source: scaled complementary error function, NIST Digital Library of Mathematical Functions,
 * section 7.2; series derived here.
 * @example normalLogProbability(40, 41) // -804.6084420137533
 */
export function normalLogProbability(low: number, high: number): number {
  if (!(low < high)) return Number.isNaN(low) || Number.isNaN(high) ? Number.NaN : -Infinity;
  if (low + high > 0) return normalLogProbability(-high, -low);
  const width = high - low;
  const middle = low + width / 2;
  if (width * Math.max(1, Math.abs(middle)) < 0.02) return narrowLogProbability(middle, width);
  if (high > 0) {
    return Math.log(0.5 * (erf(high * SQRT_HALF) - erf(low * SQRT_HALF)));
  }
  const tail = scaledErfc(-high * SQRT_HALF);
  const logTail = Math.log(0.5 * tail) - 0.5 * high * high;
  if (low === -Infinity) return logTail;
  const decay = Math.exp(0.5 * (high - low) * (high + low));
  return logTail + Math.log1p((-decay * scaledErfc(-low * SQRT_HALF)) / tail);
}

/** Density at the middle times the width, with the second and fourth order of the width. */
function narrowLogProbability(middle: number, width: number): number {
  const m2 = middle * middle;
  const w2 = width * width;
  const curvature = (w2 * (m2 - 1)) / 24 + (w2 * w2 * (m2 * m2 - 6 * m2 + 3)) / 1920;
  return Math.log(width) - 0.5 * m2 - LOG_SQRT_TWO_PI + Math.log1p(curvature);
}

/**
 * Value below which a standard normal variable lies with probability p.
 *
 * Accuracy: relative error about 1e-15.
 * @param probability from 0 to 1; 0 gives -Infinity, 1 gives Infinity
 * @throws {BenchError} statistics-input when p is not a probability
 * Source: M. J. Wichura (1988), Algorithm AS 241, The percentage points of the normal distribution,
 * Applied Statistics 37, 477-484, routine PPND16 (coefficients from memory, checked against R's
 * qnorm).
 * Checked by: tests/outside-checks/statistics/quantiles.test.ts
 * @example normalQuantile(0.975) // 1.959963984540054
 */
export function normalQuantile(probability: number): number {
  requireProbability('the probability', probability);
  const centred = probability - 0.5;
  if (Math.abs(centred) <= CENTRE) {
    return centred * ratio(CENTRE_TOP, CENTRE_BOTTOM, CENTRE * CENTRE - centred * centred);
  }
  const tail = centred < 0 ? probability : 1 - probability;
  if (tail === 0) return centred < 0 ? -Infinity : Infinity;
  const root = Math.sqrt(-Math.log(tail));
  const size =
    root <= FAR_TAIL
      ? ratio(TAIL_TOP, TAIL_BOTTOM, root - 1.6)
      : ratio(FAR_TOP, FAR_BOTTOM, root - FAR_TAIL);
  return centred < 0 ? -size : size;
}

function ratio(top: readonly number[], bottom: readonly number[], x: number): number {
  let above = 0;
  let below = 0;
  for (let i = 0; i < top.length; i++) {
    above = above * x + (top[i] as number);
    below = below * x + (bottom[i] as number);
  }
  return above / below;
}

// Coefficients of PPND16 as doubles, from the highest power to the constant; all have degree 7.
const CENTRE = 0.425;
const FAR_TAIL = 5;
const CENTRE_TOP = [
  2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946,
  1971.5909503065513, 133.14166789178438, 3.3871328727963665,
] as const;
const CENTRE_BOTTOM = [
  5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751,
  687.1870074920579, 42.31333070160091, 1,
] as const;
const TAIL_TOP = [
  7.745450142783414e-4, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684,
  3.6478483247632045, 5.769497221460691, 4.630337846156546, 1.4234371107496835,
] as const;
const TAIL_BOTTOM = [
  1.0507500716444169e-9, 5.475938084995345e-4, 0.015198666563616457, 0.14810397642748008,
  0.6897673349851, 1.6763848301838038, 2.053191626637759, 1,
] as const;
const FAR_TOP = [
  2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
  0.29656057182850487, 1.7848265399172913, 5.463784911164114, 6.657904643501103,
] as const;
const FAR_BOTTOM = [
  2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 7.868691311456133e-4,
  0.014875361290850615, 0.1369298809227358, 0.599832206555888, 1,
] as const;
