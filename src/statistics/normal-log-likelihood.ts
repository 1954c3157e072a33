import { fillIntervalTerms } from './interval-terms.ts';

/**
 * Log likelihood of a normal distribution with its first and second derivatives, by location
 * (mean / sd, `l`) and inverse (1 / sd, `i`).
 */
export interface LogLikelihood {
  value: number;
  l: number;
  i: number;
  ll: number;
  li: number;
  ii: number;
}

/**
 * Makes a function that fills in the log likelihood of numbers and intervals at given parameters.
 * A number, low equal to high, adds the log density without its constant; an interval adds the log
 * probability between its ends.
 *
 * @param low lower ends, -Infinity for an open one
 * @param high upper ends, Infinity for an open one
 * Source: derivatives formed here; parameters of R. J. Olsen (1978), Econometrica 46, 1211-1215.
 */
export function normalLogLikelihood(
  low: Float64Array,
  high: Float64Array,
): (location: number, inverse: number, out: LogLikelihood) => void {
  const terms = { logProbability: 0, atLow: 0, atHigh: 0 };
  return (location, inverse, out) => {
    const logInverse = Math.log(inverse);
    out.value = out.l = out.i = out.ll = out.li = out.ii = 0;
    for (let k = 0; k < low.length; k++) {
      const a = low[k] as number;
      const b = high[k] as number;
      if (a === b) {
        const z = inverse * a - location;
        out.value += logInverse - 0.5 * z * z;
        out.l += z;
        out.i += 1 / inverse - z * a;
        out.ll -= 1;
        out.li += a;
        out.ii -= 1 / (inverse * inverse) + a * a;
        continue;
      }
      const zLow = inverse * a - location;
      const zHigh = inverse * b - location;
      fillIntervalTerms(zLow, zHigh, terms);
      const { atLow, atHigh } = terms;
      // An open end has density 0 and adds nothing, however large the end itself.
      const lowEnd = atLow === 0 ? 0 : a;
      const lowPull = atLow === 0 ? 0 : zLow * atLow;
      const highEnd = atHigh === 0 ? 0 : b;
      const highPull = atHigh === 0 ? 0 : zHigh * atHigh;
      const l = atLow - atHigh;
      const i = highEnd * atHigh - lowEnd * atLow;
      out.value += terms.logProbability;
      out.l += l;
      out.i += i;
      out.ll += lowPull - highPull - l * l;
      out.li += highPull * highEnd - lowPull * lowEnd - l * i;
      out.ii += lowPull * lowEnd * lowEnd - highPull * highEnd * highEnd - i * i;
    }
  };
}
