const SERIES_START = 10;

/**
 * How far Stirling's formula falls short of the logarithm of n factorial:
 * ln(n!) = (n + 1/2) ln(n) - n + ln(2 pi)/2 + stirlingError(n), for real n above 0.
 *
 * What: probabilities of counts are differences of three such factorials; taking Stirling's formula
 * out by hand leaves only these small terms to subtract, so no digits are lost.
 * Accuracy: absolute error below 1e-15.
 * @param n above 0, whole or not
 * Source: series in the Bernoulli numbers, Abramowitz & Stegun (1964), Handbook of Mathematical
 * Functions, 6.1.41; use as in C. Loader (2000), Fast and accurate computation of binomial
 * probabilities (both from memory, checked against R).
 * @example stirlingError(1) // 0.08106146679532726
 */
export function stirlingError(n: number): number {
  // Below the start of the series: step upwards, each step being the exact difference.
  let correction = 0;
  let at = n;
  while (at < SERIES_START) {
    correction += (at + 0.5) * Math.log1p(1 / at) - 1;
    at += 1;
  }
  const s = 1 / (at * at);
  const series =
    1 / 12 -
    s *
      (1 / 360 -
        s * (1 / 1260 - s * (1 / 1680 - s * (1 / 1188 - s * (691 / 360360 - s * (1 / 156))))));
  return correction + series / at;
}

/**
 * x ln(x/m) + m - x: how surprising a count x is where m was expected, without cancellation when
 * the two are close.
 *
 * @param x zero or more
 * @param m above 0
 * Source: C. Loader (2000), as above, function bd0.
 * @example countDeviance(10, 10) // 0
 */
export function countDeviance(x: number, m: number): number {
  if (x === 0) return m;
  const difference = x - m;
  if (Math.abs(difference) >= 0.1 * (x + m)) return x * Math.log(x / m) + m - x;
  const v = difference / (x + m);
  const v2 = v * v;
  let sum = difference * v;
  let term = 2 * x * v;
  for (let odd = 3; ; odd += 2) {
    term *= v2;
    const next = sum + term / odd;
    if (next === sum) return next;
    sum = next;
  }
}
