import { describe, expect, it } from 'vitest';
import { lognormalMle } from './lognormal-mle.ts';
import { normalMle } from './normal-mle.ts';

const exact = (...values: number[]) => values.map((value) => ({ low: value, high: value }));

describe('Lognormal distribution by maximum likelihood', () => {
  it('gives the mean and the spread (n) of the logarithms of plain results', () => {
    const fit = lognormalMle(exact(1, 4));
    expect(fit.median).toBeCloseTo(2, 14);
    expect(fit.sdLog).toBeCloseTo(Math.log(2), 14);
    expect(fit.mean).toBeCloseTo(2 * Math.exp(Math.log(2) ** 2 / 2), 13);
    expect(fit).toMatchObject({ n: 2, nonDetects: 0, converged: true });
  });

  it('lets a result from zero to infinity change nothing', () => {
    const plain = lognormalMle(exact(1, 4, 5));
    const more = lognormalMle([...exact(1, 4, 5), { low: 0, high: Infinity }]);
    expect(more.meanLog).toBeCloseTo(plain.meanLog, 13);
    expect(more.sdLog).toBeCloseTo(plain.sdLog, 13);
    expect(more.nonDetects).toBe(1);
  });

  it('moves up for a result above its range and down for one below its limit', () => {
    const plain = lognormalMle(exact(3, 4, 5)).meanLog;
    expect(lognormalMle([...exact(3, 4, 5), { low: 6, high: Infinity }]).meanLog).toBeGreaterThan(
      plain,
    );
    expect(lognormalMle([...exact(3, 4, 5), { low: 0, high: 2 }]).meanLog).toBeLessThan(plain);
  });

  it('reaches the maximum far from the start: one limit a billion times below the rest', () => {
    const fit = lognormalMle([...exact(1, 2, 3, 4), { low: 0, high: 1e-9 }]);
    expect(fit.converged).toBe(true);
    expect(fit.sdLog).toBeGreaterThan(5);
  });

  it('is not led astray by limits so far above the numbers that they say nothing', () => {
    const far = [116, 610000, 88.41, 84810].map((high) => ({ low: 0, high: high / 1000 }));
    const fit = lognormalMle([...exact(0.00026, 0.00011), ...far]);
    expect(fit.converged).toBe(true);
    // The nearest limit lies 13 standard deviations up: the two numbers alone decide.
    expect(fit.meanLog).toBeCloseTo(Math.log(0.00026 * 0.00011) / 2, 12);
    expect(fit.sdLog).toBeCloseTo(Math.log(26 / 11) / 2, 12);
  });

  it('takes a very narrow interval for the number it is', () => {
    const narrow = lognormalMle([...exact(1, 2), { low: 4, high: 4 * (1 + 1e-9) }]);
    const plain = lognormalMle(exact(1, 2, 4));
    // Tolerance: the interval itself is 1e-9 wide.
    expect(narrow.meanLog).toBeCloseTo(plain.meanLog, 8);
    expect(narrow.sdLog).toBeCloseTo(plain.sdLog, 8);
  });

  it('says that it did not converge where the spread can shrink for ever', () => {
    const fit = lognormalMle([...exact(5, 5), { low: 0, high: 5 }, { low: 2, high: 9 }]);
    expect(fit).toMatchObject({ converged: false, sdLog: 0 });
    expect(fit.median).toBeCloseTo(5, 14);
    expect(fit.quantile(0)).toBeCloseTo(5, 14);
  });

  it('converges for one exact number when an interval lies beside it', () => {
    expect(lognormalMle([...exact(5), { low: 0, high: 3 }]).converged).toBe(true);
  });

  it('gives the ends of the line for the quantiles 0 and 1', () => {
    const { quantile } = lognormalMle(exact(1, 2));
    expect([quantile(0), quantile(1)]).toEqual([0, Infinity]);
  });

  it('refuses nothing exact, one result, all results the same, zero, NaN and negative numbers', () => {
    for (const results of [
      [],
      exact(3),
      exact(3, 3, 3),
      [{ low: 0, high: 2 }],
      [
        { low: 0, high: 2 },
        { low: 2, high: 5 },
        { low: 5, high: 6 },
      ],
      exact(0, 1, 2),
      exact(Number.NaN, 1),
      exact(-1, 1),
      [{ low: 3, high: 2 }],
    ]) {
      expect(() => lognormalMle(results)).toThrow(
        expect.objectContaining({ code: 'statistics-input' }),
      );
    }
  });

  it('refuses a quantile of what is not a probability', () => {
    expect(() => lognormalMle(exact(1, 2)).quantile(2)).toThrow('probability');
  });
});

describe('Normal distribution by maximum likelihood', () => {
  it('gives the mean, the spread (n) and their standard errors of plain numbers', () => {
    const fit = normalMle(exact(-1, 3, 4, 6));
    expect(fit.mean).toBeCloseTo(3, 14);
    expect(fit.sd).toBeCloseTo(Math.sqrt(26 / 4), 14);
    expect(fit.uMean).toBeCloseTo(Math.sqrt(26 / 4) / 2, 14);
    expect(fit.uLogSd).toBeCloseTo(1 / Math.sqrt(8), 14);
  });

  it('accepts negative and open ends', () => {
    const fit = normalMle([...exact(-2, -1, 0), { low: -Infinity, high: -3 }]);
    expect(fit.mean).toBeLessThan(-1);
    expect(fit.quantile(0.5)).toBe(fit.mean);
  });

  it('refuses an empty list, NaN, ends in the wrong order and infinite numbers', () => {
    for (const results of [
      [],
      exact(Number.NaN, 1, 2),
      [...exact(1, 2), { low: 3, high: 2 }],
      exact(Infinity, 1, 2),
      exact(-Infinity, 1, 2),
    ]) {
      expect(() => normalMle(results)).toThrow(
        expect.objectContaining({ code: 'statistics-input' }),
      );
    }
  });
});
