/**
 * The error function and its complements.
 *
 * Rational Chebyshev approximations on three ranges of |x|: below 0.46875, up to 4, and above.
 * Coefficients run from the highest power of the argument to the constant, each the nearest double.
 *
 * Accuracy: relative error below 1e-15 for `erf` and `scaledErfc`; below 1e-15 plus that of `exp`
 * for `erfc` until it underflows near x = 26.5.
 * Source: W. J. Cody (1969), Rational Chebyshev approximations for the error function, Mathematics
 * of Computation 23, 631-637; coefficients as in its SPECFUN form (from memory, checked against
 * R's pnorm).
 * Checked by: tests/outside-checks/statistics/r-distributions/
 */
const SMALL_ARGUMENT = 0.46875;
const LARGE_ARGUMENT = 4;
const ONE_OVER_SQRT_PI = 0.5641895835477563;

const ERF_SMALL_TOP = [
  0.18577770618460315, 3.1611237438705655, 113.86415415105016, 377.485237685302, 3209.3775891384694,
] as const;
const ERF_SMALL_BOTTOM = [
  1, 23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171,
] as const;
const ERFC_MIDDLE_TOP = [
  2.1531153547440383e-8, 0.5641884969886701, 8.883149794388377, 66.11919063714163,
  298.6351381974001, 881.952221241769, 1712.0476126340707, 2051.0783778260716, 1230.3393547979972,
] as const;
const ERFC_MIDDLE_BOTTOM = [
  1, 15.744926110709835, 117.6939508913125, 537.1811018620099, 1621.3895745666903,
  3290.7992357334597, 4362.619090143247, 3439.3676741437216, 1230.3393548037495,
] as const;
const ERFC_LARGE_TOP = [
  0.016315387137302097, 0.30532663496123236, 0.36034489994980445, 0.12578172611122926,
  0.016083785148742275, 6.587491615298378e-4,
] as const;
const ERFC_LARGE_BOTTOM = [
  1, 2.568520192289822, 1.8729528499234673, 0.5279051029514285, 0.06051834131244132,
  0.0023352049762686918,
] as const;

/**
 * Error function, 2/sqrt(pi) times the integral of exp(-t²) from 0 to x.
 *
 * @returns from -1 to 1; NaN for NaN
 * @example erf(1) // 0.8427007929497149
 */
export function erf(x: number): number {
  const size = Math.abs(x);
  if (size <= SMALL_ARGUMENT) return smallErf(x);
  const value = 1 - gauss(size) * scaledTail(size);
  return x < 0 ? -value : value;
}

/**
 * Complement of the error function, 1 - erf(x), without the cancellation that form would suffer.
 *
 * @returns from 2 down to 0; 0 where it underflows; NaN for NaN
 * @example erfc(5) // 1.5374597944280347e-12
 */
export function erfc(x: number): number {
  if (Math.abs(x) <= SMALL_ARGUMENT) return 1 - smallErf(x);
  const size = Math.abs(x);
  const tail = gauss(size) * scaledTail(size);
  return x < 0 ? 2 - tail : tail;
}

/**
 * exp(x²) erfc(x): the upper tail with its fast decay taken out, so that ratios of tails can be
 * formed where both tails underflow.
 *
 * @returns above 0; Infinity for x below about -26.6; NaN for NaN
 * @example scaledErfc(100) // 0.005641613782989432
 */
export function scaledErfc(x: number): number {
  if (Math.abs(x) <= SMALL_ARGUMENT) return Math.exp(x * x) * (1 - smallErf(x));
  if (x > 0) return scaledTail(x);
  return 2 / gauss(-x) - scaledTail(-x);
}

function smallErf(x: number): number {
  const square = x * x;
  return (x * polynomial(ERF_SMALL_TOP, square)) / polynomial(ERF_SMALL_BOTTOM, square);
}

/** exp(x²) erfc(x) for x above the small range. */
function scaledTail(x: number): number {
  if (x <= LARGE_ARGUMENT) {
    return polynomial(ERFC_MIDDLE_TOP, x) / polynomial(ERFC_MIDDLE_BOTTOM, x);
  }
  if (x === Infinity) return 0;
  const inverse = 1 / (x * x);
  const correction =
    (inverse * polynomial(ERFC_LARGE_TOP, inverse)) / polynomial(ERFC_LARGE_BOTTOM, inverse);
  return (ONE_OVER_SQRT_PI - correction) / x;
}

/** exp(-x²), with x split so that the rounding of x² does not grow with x. */
function gauss(x: number): number {
  if (x === Infinity) return 0;
  const head = Math.trunc(x * 16) / 16;
  const rest = (x - head) * (x + head);
  return Math.exp(-head * head) * Math.exp(-rest);
}

function polynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let i = 0; i < coefficients.length; i++) value = value * x + (coefficients[i] as number);
  return value;
}
