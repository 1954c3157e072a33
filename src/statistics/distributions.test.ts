import { describe, expect, it } from 'vitest';
import { binomialLimits, binomialLowerTail, binomialUpperTail } from './binomial-tails.ts';
import { chiSquareCdf, chiSquareQuantile } from './chi-square.ts';
import { continuedFraction } from './continued-fraction.ts';
import { binomialDensity, poissonDensity } from './count-densities.ts';
import { erf, erfc, scaledErfc } from './error-function.ts';
import { findRoot } from './find-root.ts';
import { incompleteBeta } from './incomplete-beta.ts';
import { incompleteGammaLower, incompleteGammaUpper } from './incomplete-gamma.ts';
import { fillIntervalTerms } from './interval-terms.ts';
import {
  normalCdf,
  normalLogProbability,
  normalQuantile,
  normalUpperTail,
} from './normal-distribution.ts';
import { poissonLimits } from './poisson-limits.ts';
import { countDeviance, stirlingError } from './stirling-error.ts';
import { studentTCdf, studentTQuantile } from './student-t.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

describe('Normal distribution', () => {
  it('gives the values its comments quote', () => {
    expect(normalCdf(1.959963984540054)).toBeCloseTo(0.975, 15);
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 15);
    expect(normalUpperTail(10) / 7.619853024160525e-24).toBeCloseTo(1, 13);
    expect(normalLogProbability(40, 41)).toBeCloseTo(-804.6084420137533, 9);
    expect(erf(1)).toBeCloseTo(0.8427007929497149, 15);
    expect(erfc(5) / 1.5374597944280347e-12).toBeCloseTo(1, 14);
    expect(scaledErfc(100)).toBeCloseTo(0.005641613782989432, 17);
  });

  it('has ends, a middle and no value for NaN', () => {
    expect([normalCdf(-Infinity), normalCdf(0), normalCdf(Infinity)]).toEqual([0, 0.5, 1]);
    expect([normalQuantile(0), normalQuantile(0.5), normalQuantile(1)]).toEqual([
      -Infinity,
      0,
      Infinity,
    ]);
    expect(normalCdf(Number.NaN)).toBeNaN();
    expect(normalLogProbability(Number.NaN, 1)).toBeNaN();
    expect(scaledErfc(Infinity)).toBe(0);
    expect(scaledErfc(-30)).toBe(Infinity);
    expect(erf(-Infinity)).toBe(-1);
  });

  it('gives the whole line probability 1 and an empty interval none', () => {
    expect(normalLogProbability(-Infinity, Infinity)).toBe(0);
    expect(normalLogProbability(1, 1)).toBe(-Infinity);
    expect(normalLogProbability(2, 1)).toBe(-Infinity);
  });

  it('adds neighbouring intervals up to the interval over both', () => {
    for (const [a, b, c] of [
      [-40, -39.9, -39],
      [-1, 0.2, 3],
      [7, 7.001, 9],
      [-Infinity, -9, 5],
    ] as const) {
      const joined = Math.log(
        Math.exp(normalLogProbability(a, b) - normalLogProbability(a, c)) +
          Math.exp(normalLogProbability(b, c) - normalLogProbability(a, c)),
      );
      expect(joined).toBeCloseTo(0, 12);
    }
  });

  it('refuses the quantile of what is not a probability', () => {
    for (const p of [-0.1, 1.1, Number.NaN]) expect(() => normalQuantile(p)).toThrow(refused);
  });

  it('forms densities over probabilities at the ends of an interval, also where both underflow', () => {
    const terms = { logProbability: 0, atLow: 0, atHigh: 0 };
    fillIntervalTerms(-Infinity, 0, terms);
    expect(terms.logProbability).toBeCloseTo(Math.log(0.5), 15);
    expect(terms.atLow).toBe(0);
    expect(terms.atHigh).toBeCloseTo(0.7978845608028654, 15);
    fillIntervalTerms(50, Infinity, terms);
    // Inverse Mills ratio at 50: 50 + 1/50 - 2/50^3; the next term is 1e-8.
    expect(terms.atLow).toBeCloseTo(50 + 1 / 50 - 2 / 50 ** 3, 6);
    expect(terms.atHigh).toBe(0);
    fillIntervalTerms(-Infinity, 60, terms);
    expect(terms).toEqual({ logProbability: 0, atLow: 0, atHigh: 0 });
    fillIntervalTerms(-Infinity, Infinity, terms);
    expect(terms).toEqual({ logProbability: 0, atLow: 0, atHigh: 0 });
  });
});

describe('Student t distribution', () => {
  it('gives the values its comments quote', () => {
    expect(studentTCdf(1, 1)).toBeCloseTo(0.75, 14);
    expect(studentTQuantile(0.975, 6)).toBeCloseTo(2.4469118511449692, 13);
  });

  it('is the normal distribution for infinite degrees of freedom and close to it for very many', () => {
    expect(studentTQuantile(0.975, Infinity)).toBe(normalQuantile(0.975));
    expect(studentTCdf(1.5, Infinity)).toBe(normalCdf(1.5));
    // Both sides of the switch at ten million agree to the next term of the expansion.
    expect(studentTQuantile(0.975, 1.0001e7)).toBeCloseTo(studentTQuantile(0.975, 0.9999e7), 9);
    expect(studentTCdf(-2, 1.0001e7)).toBeCloseTo(studentTCdf(-2, 0.9999e7), 9);
  });

  it('has ends, a middle and no value for NaN', () => {
    expect([studentTQuantile(0, 3), studentTQuantile(0.5, 3), studentTQuantile(1, 3)]).toEqual([
      -Infinity,
      0,
      Infinity,
    ]);
    expect(studentTCdf(Infinity, 3)).toBe(1);
    expect(studentTCdf(Number.NaN, 3)).toBeNaN();
    expect(studentTQuantile(0.999, 0.001)).toBe(Infinity);
  });

  it('refuses degrees of freedom that are not above zero, and what is not a probability', () => {
    expect(() => studentTCdf(1, 0)).toThrow(refused);
    expect(() => studentTQuantile(0.9, -1)).toThrow(refused);
    expect(() => studentTQuantile(0.9, Number.NaN)).toThrow(refused);
    expect(() => studentTQuantile(2, 3)).toThrow(refused);
  });
});

describe('Chi-square, gamma and beta distributions', () => {
  it('give the values their comments quote', () => {
    expect(chiSquareCdf(2, 2)).toBeCloseTo(0.6321205588285577, 14);
    expect(chiSquareQuantile(0.95, 2)).toBeCloseTo(5.991464547107982, 12);
    expect(incompleteGammaLower(1, 2)).toBeCloseTo(0.8646647167633873, 14);
    expect(incompleteGammaUpper(1, 2)).toBeCloseTo(0.1353352832366127, 14);
    expect(incompleteBeta(2, 3, 0.5)).toBeCloseTo(0.6875, 14);
  });

  it('have ends', () => {
    expect([chiSquareQuantile(0, 3), chiSquareQuantile(1, 3)]).toEqual([0, Infinity]);
    expect([chiSquareCdf(0, 3), chiSquareCdf(Infinity, 3)]).toEqual([0, 1]);
    expect([incompleteGammaUpper(2, 0), incompleteGammaUpper(2, Infinity)]).toEqual([1, 0]);
    expect([incompleteBeta(2, 3, 0), incompleteBeta(2, 3, 1)]).toEqual([0, 1]);
  });

  it('refuse shapes and arguments outside their range', () => {
    expect(() => chiSquareCdf(-1, 2)).toThrow(refused);
    expect(() => chiSquareQuantile(0.5, 0)).toThrow(refused);
    expect(() => chiSquareQuantile(-0.5, 1)).toThrow(refused);
    expect(() => incompleteGammaLower(0, 1)).toThrow(refused);
    expect(() => incompleteBeta(0, 1, 0.5)).toThrow(refused);
    expect(() => incompleteBeta(1, -1, 0.5)).toThrow(refused);
    expect(() => incompleteBeta(1, 1, 1.5)).toThrow(refused);
  });
});

describe('Counts', () => {
  it('give the values their comments quote', () => {
    expect(stirlingError(1)).toBeCloseTo(0.08106146679532726, 15);
    expect(countDeviance(10, 10)).toBe(0);
    expect(binomialDensity(2, 2, 0.5, 0.5)).toBeCloseTo(0.375, 15);
    expect(poissonDensity(0, 3)).toBeCloseTo(0.049787068367863944, 16);
    expect(binomialUpperTail({ trials: 4, successes: 3, chance: 0.5 })).toBeCloseTo(0.3125, 14);
    expect(binomialLowerTail({ trials: 4, successes: 1, chance: 0.5 })).toBeCloseTo(0.3125, 14);
    expect(binomialLimits(6, 6, 0.95).low).toBeCloseTo(0.05 ** (1 / 6), 13);
    expect(poissonLimits(0).high).toBeCloseTo(-Math.log(0.025), 12);
  });

  it('have certain ends', () => {
    expect(binomialUpperTail({ trials: 3, successes: 0, chance: 0.2 })).toBe(1);
    expect(binomialLowerTail({ trials: 3, successes: 3, chance: 0.2 })).toBe(1);
    expect(binomialUpperTail({ trials: 3, successes: 2, chance: 1 })).toBe(1);
    expect(binomialUpperTail({ trials: 3, successes: 2, chance: 0 })).toBe(0);
    expect(binomialLimits(5, 0, 0.95).low).toBe(0);
    expect(binomialLimits(5, 5, 0.95).high).toBe(1);
    expect([binomialDensity(0, 3, 0, 1), binomialDensity(1, 3, 0, 1)]).toEqual([1, 0]);
    expect([binomialDensity(3, 0, 1, 0), binomialDensity(3, 1, 1, 0)]).toEqual([1, 0]);
    expect(binomialDensity(0, 3, 0.02, 0.98)).toBeCloseTo(0.98 ** 3, 15);
    expect(binomialDensity(3, 0, 0.98, 0.02)).toBeCloseTo(0.98 ** 3, 15);
    expect([poissonDensity(0, 0), poissonDensity(2, 0)]).toEqual([1, 0]);
    expect(poissonLimits(0).low).toBe(0);
  });

  it('refuse what was not counted', () => {
    expect(() => binomialUpperTail({ trials: 0, successes: 0, chance: 0.5 })).toThrow(refused);
    expect(() => binomialUpperTail({ trials: 3, successes: 4, chance: 0.5 })).toThrow(refused);
    expect(() => binomialUpperTail({ trials: 3, successes: 1.5, chance: 0.5 })).toThrow(refused);
    expect(() => binomialLowerTail({ trials: 3, successes: 1, chance: Number.NaN })).toThrow(
      refused,
    );
    expect(() => binomialLimits(3, -1, 0.95)).toThrow(refused);
    expect(() => binomialLimits(3, 1, 1)).toThrow(refused);
    expect(() => poissonLimits(-1)).toThrow(refused);
    expect(() => poissonLimits(1, 0)).toThrow(refused);
  });
});

describe('Numerical tools', () => {
  it('find a root, an end that is one, and say when there is none', () => {
    expect(findRoot((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    expect(findRoot((x) => x, 0, 2)).toBe(0);
    expect(findRoot((x) => x - 2, 0, 2)).toBe(2);
    expect(findRoot((x) => Math.log(x), 0, 3)).toBeCloseTo(1, 15);
    expect(findRoot((x) => x * x + 1, -1, 1)).toBeNaN();
  });

  it('evaluate a continued fraction, through a zero on the way, and give up on a wandering one', () => {
    expect(
      continuedFraction(
        1,
        () => 1,
        () => 1,
      ),
    ).toBeCloseTo((1 + Math.sqrt(5)) / 2, 15);
    expect(
      continuedFraction(
        1,
        () => -1,
        () => 1,
      ),
    ).toBeNaN();
  });
});
