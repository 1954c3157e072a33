import { describe, expect, it } from 'vitest';
import { logRatioInterval, ratioUncertainty } from './ratio-uncertainty.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

const plain = { numerator: 8, denominator: 40, uNumerator: 1, uDenominator: 4 };

describe('Uncertainty of a ratio', () => {
  it('adds relative uncertainties in quadrature and lets shared errors cancel', () => {
    // 0.2 × sqrt(0.125² + 0.1² - 2 × 0.75 × 0.0125) by hand.
    expect(ratioUncertainty({ ...plain, covariance: 3 })).toBeCloseTo(0.01658, 5);
    expect(ratioUncertainty(plain)).toBeCloseTo(0.2 * Math.hypot(0.125, 0.1), 14);
  });

  it('keeps the uncertainty of a numerator of zero', () => {
    expect(ratioUncertainty({ ...plain, numerator: 0 })).toBeCloseTo(1 / 40, 15);
  });

  it('refuses a denominator of zero, NaN and impossible covariances', () => {
    for (const wrong of [{ denominator: 0 }, { numerator: Number.NaN }, { covariance: 5 }]) {
      expect(() => ratioUncertainty({ ...plain, ...wrong })).toThrow(refused);
    }
  });
});

describe('Logarithmic interval of a ratio', () => {
  it('shrinks to the ratio without uncertainty', () => {
    const certain = { numerator: 1, denominator: 2, uNumerator: 0, uDenominator: 0, multiplier: 2 };
    expect(logRatioInterval(certain)).toEqual({ ratio: 0.5, low: 0.5, high: 0.5 });
  });

  it('reaches as far up as down in proportion, and never to zero', () => {
    const { ratio, low, high } = logRatioInterval({ ...plain, uNumerator: 20, multiplier: 3 });
    expect(low).toBeGreaterThan(0);
    expect(ratio / low).toBeCloseTo(high / ratio, 12);
  });

  it('refuses what has no logarithm and errors too opposite to be relative', () => {
    for (const wrong of [
      { numerator: 0 },
      { numerator: -1 },
      { denominator: -1 },
      { multiplier: 0 },
      { uNumerator: 100, uDenominator: 100, covariance: -9000 },
    ]) {
      expect(() => logRatioInterval({ ...plain, multiplier: 2, ...wrong })).toThrow(refused);
    }
  });
});
