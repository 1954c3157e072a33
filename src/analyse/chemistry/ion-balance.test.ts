import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceLimit, ionBalance } from './ion-balance.ts';
import { IONS, type Ion } from './ions.ts';

describe('the ion balance of a water', () => {
  it('is zero for equal equivalents, as in table salt', () => {
    const balance = ionBalance({ sodium: 22.99, chloride: 35.453 });
    expect(balance.cationsMeqPerL).toBe(1);
    expect(balance.anionsMeqPerL).toBe(1);
    expect(balance.percentOfSum).toBe(0);
  });

  it('has no percentage without any ion, and none for waters of zeros', () => {
    expect(ionBalance({}).percentOfSum).toBeNull();
    expect(ionBalance({ sodium: 0, chloride: 0 }).percentOfMean).toBeNull();
  });

  it('is 100 % of the sum where only one side was measured', () => {
    expect(ionBalance({ calcium: 40 }).percentOfSum).toBe(100);
    expect(ionBalance({ sulfate: 40 }).percentOfSum).toBe(-100);
  });

  it('counts two charges of calcium and of sulfate', () => {
    const balance = ionBalance({ calcium: 40.078, sulfate: 96.06 });
    expect(balance.cationsMeqPerL).toBe(2);
    expect(balance.anionsMeqPerL).toBe(2);
  });

  it('does not change its percentage when the water is diluted', () => {
    const water = fc.dictionary(
      fc.constantFrom(...IONS),
      fc.double({ min: 0.01, max: 1e4, noNaN: true }),
    );
    fc.assert(
      fc.property(water, fc.double({ min: 0.001, max: 1, noNaN: true }), (ions, share) => {
        const diluted = Object.fromEntries(
          Object.entries(ions).map(([ion, value]) => [ion as Ion, value * share]),
        );
        const [a, b] = [ionBalance(ions).percentOfSum, ionBalance(diluted).percentOfSum];
        if (a === null) expect(b).toBeNull();
        else expect(b).toBeCloseTo(a, 6);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe('the difference that is accepted', () => {
  it('is absolute for a permeate, which any percentage would fail', () => {
    expect(balanceLimit(0.2, 0.1)).toEqual({ meqPerL: 0.2, rule: '0.2 meq/L' });
    expect(balanceLimit(0, 0).meqPerL).toBe(0.2);
  });

  it('changes its rule above 3 and above 10 meq/L of anions', () => {
    expect(balanceLimit(3, 3).rule).toBe('0.2 meq/L');
    expect(balanceLimit(3, 3.001).rule).toBe('2 %');
    expect(balanceLimit(10, 10)).toEqual({ meqPerL: 0.4, rule: '2 %' });
    expect(balanceLimit(10, 10.001).rule).toBe('5 %');
  });
});
