import { scaledErfc } from './error-function.ts';
import { normalLogProbability } from './normal-distribution.ts';

const SQRT_TWO_PI = 2.5066282746310007;

/** What a likelihood needs to know about one interval of the standard normal distribution. */
export interface IntervalTerms {
  /** Natural logarithm of the probability between the ends. */
  logProbability: number;
  /** Normal density at each end, divided by that probability; 0 at an open end. */
  atLow: number;
  atHigh: number;
}

/**
 * Fills in the terms of the interval from low to high.
 *
 * What: the density and the probability both underflow far from zero; their ratio does not, so both
 * are formed with the fast decay taken out. One object is filled again and again, since a fit asks
 * for thousands.
 * @param low -Infinity for an open end
 * @param high above low; Infinity for an open end
 * Source: inverse Mills ratio by the scaled complementary error function, NIST Digital Library of
 * Mathematical Functions, section 7.8.
 * @example at -Infinity and 0: logProbability ln(1/2), atLow 0, atHigh 0.7978845608028654
 */
export function fillIntervalTerms(low: number, high: number, terms: IntervalTerms): void {
  if (low + high > 0) {
    // The mirror image, which keeps both ends on the side where tails are small.
    fillIntervalTerms(-high, -low, terms);
    const atHigh = terms.atLow;
    terms.atLow = terms.atHigh;
    terms.atHigh = atHigh;
    return;
  }
  if (low === -Infinity && high <= 0) {
    const tail = 0.5 * scaledErfc(-high * Math.SQRT1_2);
    terms.logProbability = Math.log(tail) - 0.5 * high * high;
    terms.atLow = 0;
    terms.atHigh = 1 / (SQRT_TWO_PI * tail);
    return;
  }
  terms.logProbability = normalLogProbability(low, high);
  if (high > 0) {
    const scale = Math.exp(-terms.logProbability) / SQRT_TWO_PI;
    terms.atLow = Math.exp(-0.5 * low * low) * scale;
    terms.atHigh = Math.exp(-0.5 * high * high) * scale;
    return;
  }
  const decay = Math.exp(0.5 * (high - low) * (high + low));
  const scaled = 0.5 * (scaledErfc(-high * Math.SQRT1_2) - decay * scaledErfc(-low * Math.SQRT1_2));
  terms.atHigh = 1 / (SQRT_TWO_PI * scaled);
  terms.atLow = decay * terms.atHigh;
}
