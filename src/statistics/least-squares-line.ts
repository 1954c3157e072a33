import { refuse, requireNumbers, requirePositive, requireSameLength } from './refuse-input.ts';

export interface LeastSquaresInput {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  /** One per point, above zero; only their ratios matter. Equal when left out. */
  readonly weights?: ArrayLike<number>;
}

export interface LeastSquaresLine {
  readonly slope: number;
  readonly intercept: number;
  /** Standard errors from the scatter about the line; null with two points, which leave no scatter. */
  readonly uSlope: number | null;
  readonly uIntercept: number | null;
  /** Covariance of slope and intercept, for the uncertainty of a value read off the line. */
  readonly covariance: number | null;
  /** Scatter about the line, n - 2; with weights, that of a point of weight 1. */
  readonly residualSd: number | null;
  readonly n: number;
}

/**
 * Straight line through points by ordinary or weighted least squares, with standard errors.
 *
 * What: for errors in y only, independent from point to point. Weights are proportional to one over
 * the variance of y; the standard errors still come from the scatter, not from the weights' size.
 * @returns slope in units of y per unit of x, intercept in units of y
 * @throws {BenchError} statistics-input for fewer than two points, lists of different length, a
 * number that is not finite, a weight not above zero, or points that all have the same x
 * Source: N. R. Draper & H. Smith (1998), Applied Regression Analysis, 3rd edition, sections 1.2 to
 * 1.4 and 9.2 (from memory); the convention for weights is that of R's lm.
 * Checked by: tests/outside-checks/statistics/least-squares.test.ts
 * @example leastSquaresLine({ x: [0, 1, 2], y: [1, 3, 5] }).slope // 2
 */
export function leastSquaresLine({ x, y, weights }: LeastSquaresInput): LeastSquaresLine {
  requireNumbers('the x values', x, 2);
  requireNumbers('the y values', y, 2);
  requireSameLength('x and y', x, y);
  if (weights !== undefined) {
    requireSameLength('x and weights', x, weights);
    for (let i = 0; i < weights.length; i++) requirePositive('a weight', weights[i] as number);
  }
  const n = x.length;
  const weightOf = (i: number): number => (weights === undefined ? 1 : (weights[i] as number));

  let total = 0;
  let xSum = 0;
  let ySum = 0;
  for (let i = 0; i < n; i++) {
    const w = weightOf(i);
    total += w;
    xSum += w * (x[i] as number);
    ySum += w * (y[i] as number);
  }
  const xMean = xSum / total;
  const yMean = ySum / total;
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < n; i++) {
    const dx = (x[i] as number) - xMean;
    xx += weightOf(i) * dx * dx;
    xy += weightOf(i) * dx * ((y[i] as number) - yMean);
  }
  if (allEqual(x)) refuse('all points have the same x', 'give points at two or more places');
  const slope = xy / xx;
  const line = { slope, intercept: yMean - slope * xMean, n };
  if (n === 2) return { ...line, ...NO_SCATTER };

  let squares = 0;
  for (let i = 0; i < n; i++) {
    const rest = (y[i] as number) - yMean - slope * ((x[i] as number) - xMean);
    squares += weightOf(i) * rest * rest;
  }
  const variance = squares / (n - 2);
  return {
    ...line,
    uSlope: Math.sqrt(variance / xx),
    uIntercept: Math.sqrt(variance * (1 / total + (xMean * xMean) / xx)),
    covariance: (-variance * xMean) / xx,
    residualSd: Math.sqrt(variance),
  };
}

const NO_SCATTER = { uSlope: null, uIntercept: null, covariance: null, residualSd: null } as const;

function allEqual(values: ArrayLike<number>): boolean {
  for (let i = 1; i < values.length; i++) if (values[i] !== values[0]) return false;
  return true;
}
