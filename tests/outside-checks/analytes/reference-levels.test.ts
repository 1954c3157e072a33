import { describe, expect, it } from 'vitest';
import {
  analyteIndex,
  JURISDICTIONS,
  levelsOf,
  type ReferenceLevel,
} from '../../../src/reference/index.ts';

const all = analyteIndex([]).analytes.flatMap(({ key }) => levelsOf(key));

function level(key: string, jurisdiction: string, kind: string, basis?: string): ReferenceLevel {
  const found = levelsOf(key, [jurisdiction]).find(
    (known) => known.kind === kind && (basis === undefined || known.basis === basis),
  );
  if (found === undefined) throw new Error(`no ${kind} of ${key} in ${jurisdiction}`);
  return found;
}

describe('the collection of reference levels (2026): what was carried over', () => {
  it('holds 516 levels of five jurisdictions', () => {
    const counts = JURISDICTIONS.map((name) => [
      name,
      all.filter(({ jurisdiction }) => jurisdiction === name).length,
    ]);
    expect(Object.fromEntries(counts)).toEqual({
      'US-EPA': 242,
      WHO: 118,
      EU: 66,
      'CA-Health-Canada': 84,
      'California PHG': 6,
    });
    expect(all.length).toBe(516);
  });

  it('marks 357 as seen in a source and 159 as from memory', () => {
    expect(all.filter(({ isSeen }) => isSeen).length).toBe(357);
    expect(all.filter(({ verified }) => verified === 'from memory').length).toBe(159);
  });

  it('calls 19 of them no plain limit; the two EU ones that end in 2036 are limits until then', () => {
    expect(all.filter(({ plain }) => !plain).length).toBe(19);
  });

  it('leaves 11 without a canonical value, each with its reason', () => {
    const without = all.filter(({ canonicalValue }) => canonicalValue === null);
    expect(without.length).toBe(11);
    for (const { notConverted } of without) expect(notConverted).not.toBeNull();
  });
});

describe('levels by their source, in canonical units', () => {
  // Whole or finite decimal figures: the nearest double, no tolerance.
  const exact = [
    ['40 CFR 141.62(b)(3): barium, MCL 2 mg/L', 'barium', 'US-EPA', 'MCL', 2000],
    ['40 CFR 141.62(b)(4): cadmium, MCL 0.005 mg/L', 'cadmium', 'US-EPA', 'MCL', 5],
    ['40 CFR 141.62(b)(7): nitrate, MCL 10 mg/L as N', 'nitrate', 'US-EPA', 'MCL', 10],
    ['40 CFR 141.62(b)(16): arsenic, MCL 0.010 mg/L', 'arsenic', 'US-EPA', 'MCL', 10],
    ['40 CFR 141.61(a)(2): benzene, MCL 0.005 mg/L', 'benzene', 'US-EPA', 'MCL', 5],
    [
      '40 CFR 141.61(c)(1): ethylene dibromide, MCL 0.00005 mg/L',
      'ethylene-dibromide',
      'US-EPA',
      'MCL',
      50,
    ],
    [
      '40 CFR 141.61(c)(1): 2,3,7,8-TCDD, MCL 0.00000003 mg/L',
      'dioxin-2378-tcdd',
      'US-EPA',
      'MCL',
      30,
    ],
    ['40 CFR 141.61(c)(2): PFOA, MCL 4.0 ng/L', 'pfoa', 'US-EPA', 'MCL', 4],
    ['40 CFR 141.64(b): total trihalomethanes, MCL 0.080 mg/L', 'tthm', 'US-EPA', 'MCL', 80],
    [
      '40 CFR 141.66(b): radium-226 plus radium-228, MCL 5 pCi/L',
      'radium-226-228',
      'US-EPA',
      'MCL',
      5,
    ],
    ['40 CFR 141.66(e): uranium, MCL 30 ug/L', 'uranium', 'US-EPA', 'MCL', 30],
    ['40 CFR 141.80: lead, action level 0.015 mg/L', 'lead', 'US-EPA', 'action level', 15],
    ['40 CFR 141.80: copper, action level 1.3 mg/L', 'copper', 'US-EPA', 'action level', 1300],
    [
      '40 CFR 143.3: total dissolved solids, SMCL 500 mg/L',
      'total-dissolved-solids',
      'US-EPA',
      'SMCL',
      500,
    ],
    ['WHO Guidelines (2022), Table A3.3: lead, 0.01 mg/L', 'lead', 'WHO', 'guideline value', 10],
    [
      'WHO Guidelines (2022), Table A3.3: barium, 1.3 mg/L',
      'barium',
      'WHO',
      'guideline value',
      1300,
    ],
    [
      'Directive (EU) 2020/2184, Annex I Part B: lead, 10 ug/L until 12 January 2036',
      'lead',
      'EU',
      'parametric value until 2036',
      10,
    ],
    [
      'Directive (EU) 2020/2184, Annex I Part B: lead, 5 ug/L from then on',
      'lead',
      'EU',
      'parametric value from 2036',
      5,
    ],
    [
      'Directive (EU) 2020/2184, Annex I Part B: uranium, 30 ug/L',
      'uranium',
      'EU',
      'parametric value',
      30,
    ],
    [
      'Directive (EU) 2020/2184, Annex I Part B: sum of PFAS, 0.10 ug/L',
      'pfas-sum-eu20',
      'EU',
      'parametric value',
      100,
    ],
    [
      'Directive (EU) 2020/2184, Annex I Part B: boron, 1.5 mg/L',
      'boron',
      'EU',
      'parametric value',
      1.5,
    ],
    [
      'Health Canada, lead technical document (2019): lead, MAC 0.005 mg/L',
      'lead',
      'CA-Health-Canada',
      'MAC',
      5,
    ],
  ] as const;
  for (const [title, key, jurisdiction, kind, canonical] of exact) {
    it(title, () => expect(level(key, jurisdiction, kind).canonicalValue).toBe(canonical));
  }

  it('40 CFR 143.3: pH, SMCL 6.5 to 8.5', () => {
    expect(level('ph', 'US-EPA', 'SMCL')).toMatchObject({ canonicalLow: 6.5, canonicalValue: 8.5 });
  });

  it('40 CFR 141.61(c)(2): the hazard index divides by 10, 10, 10 and 2000 ng/L', () => {
    const divisors = ['hfpo-da', 'pfhxs', 'pfna', 'pfbs'].map(
      (key) => level(key, 'US-EPA', 'hazard-index HBWC').canonicalValue,
    );
    expect(divisors).toEqual([10, 10, 10, 2000]);
  });
});

describe('levels that need a change of basis or of unit', () => {
  it('WHO Guidelines (2022), Table A3.3: nitrate, 50 mg/L as NO3 is 11 mg/L as N', () => {
    // Printed as a whole number.
    expect(Math.round(level('nitrate', 'WHO', 'guideline value').canonicalValue ?? 0)).toBe(11);
  });

  it('WHO Guidelines (2022), Table A3.3: nitrite, 3 mg/L as NO2 is 0.9 mg/L as N', () => {
    // Printed with one decimal: half a unit in it.
    const value = level('nitrite', 'WHO', 'guideline value').canonicalValue ?? Number.NaN;
    expect(Math.abs(value - 0.9)).toBeLessThanOrEqual(0.05);
  });

  it('Health Canada, nitrate technical document: 45 mg/L as NO3 is the same limit as 10 mg/L as N', () => {
    const asNitrate = level('nitrate', 'CA-Health-Canada', 'MAC', 'as NO3').canonicalValue;
    const asNitrogen = level('nitrate', 'CA-Health-Canada', 'MAC', 'as N').canonicalValue;
    expect(asNitrogen).toBe(10);
    // The document rounds 44.3 to 45: to the whole number of mg/L as N.
    expect(Math.round(asNitrate ?? 0)).toBe(10);
  });

  it('Directive (EU) 2020/2184, Annex I Part C: ammonium, 0.50 mg/L as NH4, by 14.007/18.039', () => {
    // The nearest double of the quotient.
    expect(level('ammonia', 'EU', 'indicator parametric value').canonicalValue).toBeCloseTo(
      (0.5 * 14.007) / 18.039,
      15,
    );
  });

  it('WHO Guidelines, chapter 9: gross alpha, 0.5 Bq/L is 13.5 pCi/L', () => {
    const value = level('gross-alpha', 'WHO', 'screening level').canonicalValue ?? Number.NaN;
    // Printed with one decimal.
    expect(Math.abs(value - 13.5)).toBeLessThanOrEqual(0.05);
  });

  it('Directive (EU) 2020/2184, Annex I Part C: conductivity at 20 C is not turned into 25 C', () => {
    expect(level('conductivity', 'EU', 'indicator parametric value').canonicalValue).toBeNull();
  });
});
