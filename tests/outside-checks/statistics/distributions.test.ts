import { describe, expect, it } from 'vitest';
import {
  benjaminiHochberg,
  binomialLimits,
  binomialLowerTail,
  binomialUpperTail,
  chiSquareCdf,
  chiSquareQuantile,
  erf,
  erfc,
  incompleteBeta,
  incompleteGammaLower,
  incompleteGammaUpper,
  leastSquaresLine,
  normalCdf,
  normalLogProbability,
  normalQuantile,
  normalUpperTail,
  poissonLimits,
  scaledErfc,
  studentTCdf,
  studentTQuantile,
} from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readJson } from './read-fixture.ts';

type Row = number[];

interface RFixture {
  normalCdf: Row[];
  normalUpperTail: Row[];
  normalQuantile: Row[];
  studentTCdf: Row[];
  studentTQuantile: Row[];
  incompleteGamma: Row[];
  chiSquareQuantile: Row[];
  incompleteBeta: Row[];
  binomialTails: Row[];
  binomialLimits: Row[];
  poissonLimits: Row[];
  benjaminiHochberg: { raw: number[]; adjusted: number[] };
  leastSquares: {
    x: number[];
    y: number[];
    weights: number[];
    intercept: number;
    slope: number;
    uIntercept: number;
    uSlope: number;
    residualSd: number;
    covariance: number;
  };
}

interface HighPrecisionFixture {
  erf: Row[];
  erfc: Row[];
  scaledErfc: Row[];
  studentTQuantile: Row[];
  normalLogProbability: Row[];
}

const r = readJson<RFixture>('r-distributions/fixture.json');
const exact = readJson<HighPrecisionFixture>('high-precision/fixture.json');

const BOTH_NEAR_TRUTH = {
  relative: 1e-12,
  reason: 'both sides work in doubles; each is good to about 1e-13 relative',
};
const ROOT = {
  relative: 1e-10,
  reason: 'quantiles by iteration; R itself stops its chi-square and t iterations near 1e-11',
};
const ROUNDED_TRUTH = {
  relative: 1e-13,
  reason: 'the fixture is rounded from 40 digits to a double; functions claim about 1e-15 to 1e-13',
};

/** Checks a function of a row's first numbers against its last number. */
function checkRows(
  rows: readonly Row[],
  compute: (...args: number[]) => number,
  tolerance: { relative: number; absolute?: number; reason: string },
): void {
  expect(rows.length).toBeGreaterThan(5);
  for (const row of rows) {
    expectClose(compute(...row.slice(0, -1)), row.at(-1) as number, tolerance);
  }
}

describe('R 4.2.2, base distribution functions', () => {
  it('R pnorm: normal probability in both tails', () => {
    checkRows(r.normalCdf, normalCdf, BOTH_NEAR_TRUTH);
    checkRows(r.normalUpperTail, normalUpperTail, BOTH_NEAR_TRUTH);
  });

  it('R qnorm: normal quantile from 1e-300 upward', () => {
    checkRows(r.normalQuantile, normalQuantile, BOTH_NEAR_TRUTH);
  });

  it('R pt: Student t probability for whole and fractional degrees of freedom', () => {
    checkRows(r.studentTCdf, studentTCdf, BOTH_NEAR_TRUTH);
  });

  it('R qt: Student t quantile for whole and fractional degrees of freedom', () => {
    checkRows(r.studentTQuantile, studentTQuantile, {
      relative: 1e-9,
      reason:
        'R itself is off by 4e-10 at p = 0.9999999 and 0.7 degrees of freedom; see mpmath below',
    });
  });

  it('R pgamma: lower and upper incomplete gamma function and the chi-square probability', () => {
    const lower = r.incompleteGamma.map(([x = 0, shape = 0, p = 0]) => [shape, x, p]);
    const upper = r.incompleteGamma.map(([x = 0, shape = 0, , q = 0]) => [shape, x, q]);
    checkRows(lower, (a = 0, x = 0) => incompleteGammaLower(a, x), BOTH_NEAR_TRUTH);
    checkRows(upper, (a = 0, x = 0) => incompleteGammaUpper(a, x), BOTH_NEAR_TRUTH);
    checkRows(lower, (a = 0, x = 0) => chiSquareCdf(2 * x, 2 * a), BOTH_NEAR_TRUTH);
  });

  it('R qchisq: chi-square quantile in both tails', () => {
    checkRows(r.chiSquareQuantile, chiSquareQuantile, ROOT);
  });

  it('R pbeta: regularised incomplete beta function', () => {
    checkRows(r.incompleteBeta, (x = 0, a = 0, b = 0) => incompleteBeta(a, b, x), BOTH_NEAR_TRUTH);
  });

  it('R pbinom: lower and upper binomial tail', () => {
    for (const [trials = 0, successes = 0, chance = 0, lower = 0, upper = 0] of r.binomialTails) {
      const count = { trials, successes, chance };
      expectClose(binomialLowerTail(count), lower, BOTH_NEAR_TRUTH);
      expectClose(binomialUpperTail(count), upper, BOTH_NEAR_TRUTH);
    }
  });

  it('R binom.test: one-sided exact limits of a binomial share', () => {
    for (const [trials = 0, successes = 0, low = 0, high = 0] of r.binomialLimits) {
      const limits = binomialLimits(trials, successes, 0.95);
      expectClose(limits.low, low, ROOT);
      expectClose(limits.high, high, ROOT);
    }
  });

  it('R poisson.test: exact limits of a Poisson mean, counts 0 to 5000', () => {
    for (const [count = 0, low = 0, high = 0] of r.poissonLimits) {
      const limits = poissonLimits(count);
      expectClose(limits.low, low, ROOT);
      expectClose(limits.high, high, ROOT);
    }
  });

  it('R p.adjust method BH: adjusted p-values with ties', () => {
    const adjusted = benjaminiHochberg(r.benjaminiHochberg.raw);
    r.benjaminiHochberg.adjusted.forEach((value, i) => {
      expectClose(adjusted[i], value, { relative: 1e-14, reason: 'one product and one quotient' });
    });
  });

  it('R lm with weights: slope, intercept, their standard errors and covariance', () => {
    const { x, y, weights, ...expected } = r.leastSquares;
    const line = leastSquaresLine({ x, y, weights });
    const rounding = { relative: 1e-12, reason: 'six points; rounding of sums only' };
    expectClose(line.intercept, expected.intercept, rounding);
    expectClose(line.slope, expected.slope, rounding);
    expectClose(line.uIntercept, expected.uIntercept, rounding);
    expectClose(line.uSlope, expected.uSlope, rounding);
    expectClose(line.residualSd, expected.residualSd, rounding);
    expectClose(line.covariance, expected.covariance, rounding);
  });
});

describe('mpmath 1.3.0, 40 digits', () => {
  it('mpmath erf and erfc: error function across the joints of its three ranges', () => {
    checkRows(exact.erf, erf, ROUNDED_TRUTH);
    checkRows(exact.erfc, erfc, ROUNDED_TRUTH);
  });

  it('mpmath exp(x²) erfc(x): scaled complement where erfc underflows', () => {
    checkRows(exact.scaledErfc, scaledErfc, ROUNDED_TRUTH);
  });

  it('mpmath: Student t quantile, the far one included where R loses digits', () => {
    checkRows(exact.studentTQuantile, studentTQuantile, {
      relative: 1e-12,
      reason: 'at 100,000 degrees of freedom hundreds of terms of the fraction round',
    });
  });

  it('mpmath: logarithm of a normal interval probability, narrow and far out', () => {
    checkRows(exact.normalLogProbability, normalLogProbability, {
      relative: 1e-13,
      absolute: 2e-13,
      reason: 'an error of the logarithm is a relative error of the probability',
    });
  });
});
