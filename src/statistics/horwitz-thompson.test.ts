import { describe, expect, it } from 'vitest';
import { horwitzThompsonRelativeSd } from './horwitz-thompson.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

describe('Reproducibility after Horwitz and Thompson', () => {
  it('is 16 % for a mass fraction of 1 mg/kg', () => {
    // 0.02 × 10^(6 × 0.1505) = 0.15998.
    expect(horwitzThompsonRelativeSd(1e-6)).toBeCloseTo(0.16, 4);
  });

  it('is 22 % for all smaller mass fractions and 1 % for a pure substance', () => {
    expect(horwitzThompsonRelativeSd(1e-12)).toBe(0.22);
    expect(horwitzThompsonRelativeSd(1)).toBe(0.01);
  });

  it('never rises by more than a rounding as the mass fraction grows', () => {
    let last = 0.221;
    for (let exponent = -10; exponent <= 0; exponent += 0.05) {
      const next = horwitzThompsonRelativeSd(10 ** exponent);
      expect(next).toBeLessThanOrEqual(last + 2e-3);
      last = next;
    }
  });

  it('refuses zero, negative, NaN and more than all', () => {
    for (const wrong of [0, -1, Number.NaN, 1.01, Infinity]) {
      expect(() => horwitzThompsonRelativeSd(wrong)).toThrow(refused);
    }
  });
});
