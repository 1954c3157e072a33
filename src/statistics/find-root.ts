const EPSILON = Number.EPSILON;
const MOST_STEPS = 300;

/**
 * The place between two ends where a continuous function crosses zero.
 *
 * What: inverse quadratic and secant steps, held inside a bracket that always shrinks; where the
 * function is infinite the bracket is halved instead.
 * @param f must have opposite signs (or a zero) at the two ends; infinite values are allowed
 * @returns the crossing to within a few units of the last digit; NaN when the signs do not differ
 * Source: R. P. Brent (1973), Algorithms for Minimization without Derivatives, chapter 4, zeroin.
 * @example findRoot((x) => x * x - 2, 0, 2) // 1.4142135623730951
 */
export function findRoot(f: (x: number) => number, low: number, high: number): number {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa < 0 && fb > 0) && !(fa > 0 && fb < 0)) return Number.NaN;
  let c = a;
  let fc = fa;
  let step = b - a;
  let stepBefore = step;
  for (let i = 0; i < MOST_STEPS; i++) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      stepBefore = step;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const tolerance = 2 * EPSILON * Math.abs(b) + Number.MIN_VALUE;
    const half = 0.5 * (c - b);
    if (Math.abs(half) <= tolerance || fb === 0) return b;
    const trial = interpolate(a, b, c, fa, fb, fc);
    if (
      Math.abs(stepBefore) >= tolerance &&
      Math.abs(fa) > Math.abs(fb) &&
      Number.isFinite(trial) &&
      trial / half > 0 &&
      Math.abs(trial) < Math.min(1.5 * Math.abs(half), 0.5 * Math.abs(stepBefore))
    ) {
      stepBefore = step;
      step = trial;
    } else {
      step = half;
      stepBefore = half;
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    fb = f(b);
  }
  return b;
}

/** Step from b by a secant, or by a parabola through three points when they are distinct. */
function interpolate(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const s = fb / fa;
  if (a === c) return ((c - b) * s) / (s - 1);
  const q = fa / fc;
  const r = fb / fc;
  const top = s * ((c - b) * q * (q - r) - (b - a) * (r - 1));
  return top / -((q - 1) * (r - 1) * (s - 1));
}
