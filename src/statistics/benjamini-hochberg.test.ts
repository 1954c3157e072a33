import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benjaminiHochberg } from './benjamini-hochberg.ts';

const SEED = { seed: 1, numRuns: 200 };
const probabilities = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 40 });

describe('False-discovery rate by Benjamini and Hochberg', () => {
  it('adjusts three p-values, in the order given', () => {
    expect(benjaminiHochberg([0.01, 0.04, 0.03])).toEqual([0.03, 0.04, 0.04]);
  });

  it('gives nothing for nothing, one back as it is, and equals back equal', () => {
    expect(benjaminiHochberg([])).toEqual([]);
    expect(benjaminiHochberg([0.2])).toEqual([0.2]);
    expect(benjaminiHochberg([0.5, 0.5])).toEqual([0.5, 0.5]);
    expect(benjaminiHochberg([0, 1])).toEqual([0, 1]);
  });

  it('refuses what is not a probability', () => {
    for (const p of [-0.1, 1.1, Number.NaN]) {
      expect(() => benjaminiHochberg([0.5, p])).toThrow('p-value');
    }
  });

  it('keeps the order of the p-values and never lowers one', () =>
    fc.assert(
      fc.property(probabilities, (values) => {
        const adjusted = benjaminiHochberg(values);
        values.forEach((p, i) => {
          expect(adjusted[i]).toBeGreaterThanOrEqual(p * (1 - 1e-15));
          expect(adjusted[i]).toBeLessThanOrEqual(1);
          values.forEach((q, j) => {
            if (p < q) expect(adjusted[i]).toBeLessThanOrEqual(adjusted[j] as number);
          });
        });
      }),
      SEED,
    ));

  it('rejects exactly what the step-up rule of the source rejects', () =>
    fc.assert(
      fc.property(probabilities, fc.constantFrom(0.05, 0.1, 0.3), (values, q) => {
        const sorted = [...values].sort((a, b) => a - b);
        let last = -1;
        sorted.forEach((p, k) => {
          if ((p * values.length) / (k + 1) <= q) last = k;
        });
        const rejected = benjaminiHochberg(values).filter((p) => p <= q).length;
        expect(rejected).toBe(
          last < 0 ? 0 : values.filter((p) => p <= (sorted[last] as number)).length,
        );
      }),
      SEED,
    ));
});
