import { describe, expect, it } from 'vitest';
import {
  balanceLimit,
  calculatedDissolvedSolids,
  calculatedHardness,
  conductivityAt25,
  estimatedConductivity,
  type IonConcentrations,
  ionBalance,
  linearConductivityAt25,
  milliequivalents,
  temperatureFactor,
} from '../../../src/analyse/chemistry/index.ts';
import { expectClose } from '../statistics/expect-close.ts';
import { readCsv, readJson } from './read-fixture.ts';

interface Case {
  readonly id: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, number | string | boolean>>;
}

const { cases } = readJson<{ cases: Case[] }>('chemistry.json');

function caseNamed(id: string): Case {
  const found = cases.find((item) => item.id === id);
  if (found === undefined) throw new RangeError(`no case ${id}`);
  return found;
}

function number(of: Case, name: string): number {
  const value = of.expected[name] ?? of.inputs[name];
  if (typeof value !== 'number') throw new RangeError(`${of.id} has no number ${name}`);
  return value;
}

const NO3_PER_N = 62.005 / 14.007;

/** The fixture counts nitrate as NO3; the tables keep it as N. */
function ionsOf({ inputs }: Case): IonConcentrations {
  const ions = inputs['ions_mg_L'] as Readonly<Record<string, number>>;
  const of = (name: string): number => ions[name] ?? 0;
  return {
    calcium: of('Ca'),
    magnesium: of('Mg'),
    sodium: of('Na'),
    potassium: of('K'),
    chloride: of('Cl'),
    sulfate: of('SO4'),
    nitrate: of('NO3') / NO3_PER_N,
    'total-alkalinity': inputs['alkalinity_mg_L_CaCO3'] as number,
  };
}

/** The worked example of the German standard, mmol/L as mg/L by molar mass. */
function exampleOfDin(): IonConcentrations {
  const { inputs } = caseNamed('CHM-10');
  const mmol = inputs['mmol_L'] as Readonly<Record<string, number>>;
  const of = (name: string): number => mmol[name] ?? 0;
  return {
    sodium: of('Na') * 22.99,
    potassium: of('K') * 39.098,
    calcium: of('Ca') * 40.078,
    magnesium: of('Mg') * 24.305,
    iron: of('Fe2') * 55.845,
    manganese: of('Mn2') * 54.938,
    nitrate: of('NO3') * 14.007,
    chloride: of('Cl') * 35.453,
    sulfate: of('SO4') * 96.06,
    'total-alkalinity': ((inputs['acid_capacity_4.3_mmol_L'] as number) * 100.087) / 2,
  };
}

const MOLAR_MASSES = {
  relative: 5e-4,
  absolute: 5e-4,
  reason: 'molar masses rounded to five figures on both sides',
};

describe('DIN 38402-62:2013, worked example on a public hydrochemistry page: ion balance', () => {
  it('derived: plain equivalents of cations 10.535 and anions 10.905 meq/L', () => {
    const balance = ionBalance(exampleOfDin());
    const expected = caseNamed('CHM-11');
    expectClose(balance.cationsMeqPerL, number(expected, 'cations_meq_L'), MOLAR_MASSES);
    expectClose(balance.anionsMeqPerL, number(expected, 'anions_meq_L'), MOLAR_MASSES);
  });

  it('derived: -1.73 % of the sum (Standard Methods), -3.45 % of the mean (DIN)', () => {
    const balance = ionBalance(exampleOfDin());
    const expected = caseNamed('CHM-11');
    const digits = { absolute: 0.01, reason: 'a small difference of two rounded sums' };
    expectClose(balance.percentOfSum, number(expected, 'percent_sum_basis'), digits);
    expectClose(balance.percentOfMean, number(expected, 'percent_mean_basis'), digits);
  });

  it('seen: the charge difference of -0.37 meq/L, which ion pairs do not change', () => {
    const seen = caseNamed('CHM-10');
    const difference = number(seen, 'cations_meq_L') - number(seen, 'anions_meq_L');
    expectClose(ionBalance(exampleOfDin()).differenceMeqPerL, difference, {
      absolute: 0.01,
      reason: 'half a unit in the last place of each of the two printed sums',
    });
  });
});

describe('Standard Methods 1030 E (from memory): ion balance of invented waters', () => {
  for (const item of cases.filter(({ id }) => /^CHM-2/.test(id))) {
    it(`${item.id}: sums, percent of the sum and the rule that applies`, () => {
      const balance = ionBalance(ionsOf(item));
      expectClose(balance.cationsMeqPerL, number(item, 'cations_meq'), MOLAR_MASSES);
      expectClose(balance.anionsMeqPerL, number(item, 'anions_meq'), MOLAR_MASSES);
      expectClose(balance.differenceMeqPerL, number(item, 'diff_meq'), {
        absolute: 0.005,
        reason: 'stated with the case',
      });
      expectClose(balance.percentOfSum, number(item, 'percent'), {
        absolute: 0.05,
        reason: 'stated with the case',
      });
      const limit = balanceLimit(balance.cationsMeqPerL, balance.anionsMeqPerL);
      expect(limit.rule).toBe(item.expected['rule']);
      expect(Math.abs(balance.differenceMeqPerL) <= limit.meqPerL).toBe(item.expected['pass']);
    });
  }
});

describe('Standard Methods 1030 E (from memory): calculated total dissolved solids', () => {
  for (const item of cases.filter(({ id }) => /^CHM-3/.test(id))) {
    it(`${item.id}: 0.6 alkalinity and the other ions, and 1.2 times that`, () => {
      const exact = { relative: 1e-7, reason: 'stated with the case; a sum of the inputs' };
      const solids = calculatedDissolvedSolids(ionsOf(item));
      expectClose(solids, number(item, 'tds_calc_mg_L'), exact);
      expectClose(1.2 * solids, number(item, 'measured_high_1.2'), exact);
    });
  }
});

describe('USGS geochemical program (run at 25 °C): conductivity of invented waters', () => {
  for (const item of cases.filter(({ id }) => /^CHM-5/.test(id))) {
    it(`${item.id}: estimated from limiting conductivities`, () => {
      expectClose(estimatedConductivity(ionsOf(item)), number(item, 'conductivity_25C_uS_cm'), {
        relative: 0.1,
        reason: 'an estimate without ion pairs is stated as good to 10 %',
      });
    });
  }
});

describe('ISO 7888:1985, table for natural waters (seen): conductivity at 25 °C', () => {
  it('factors of every whole degree from 0 to 35', () => {
    const rows = readCsv<'t_C' | 'f25_ISO7888_table'>('conductivity-f25.csv');
    expect(rows).toHaveLength(36);
    for (const row of rows) {
      expect(temperatureFactor(Number(row.t_C))).toBe(Number(row.f25_ISO7888_table));
    }
  });

  it('CHM-70: 512 uS/cm read at 12 °C', () => {
    const item = caseNamed('CHM-70');
    expectClose(
      linearConductivityAt25(number(item, 'reading_uS_cm'), number(item, 'T_C')),
      number(item, 'EC25_linear_2pct'),
      { relative: 1e-6, reason: 'stated with the case' },
    );
    expectClose(
      conductivityAt25(number(item, 'reading_uS_cm'), number(item, 'T_C')),
      number(item, 'EC25_ISO7888'),
      { absolute: 0.0005, reason: 'half a unit in the last printed digit' },
    );
  });
});

describe('Standard Methods 2340 B and equivalents', () => {
  it('CHM-01 (factors seen): hardness from 50 mg/L calcium and 12 mg/L magnesium', () => {
    const item = caseNamed('CHM-01');
    expectClose(
      calculatedHardness(number(item, 'Ca_mg_L'), number(item, 'Mg_mg_L')),
      number(item, 'hardness_mg_L_CaCO3'),
      { absolute: 1e-9, reason: 'stated with the case' },
    );
  });

  it('CHM-03 (derived): meq/L of 100 mg/L alkalinity as CaCO3', () => {
    const item = caseNamed('CHM-03');
    expectClose(milliequivalents('total-alkalinity', 100), number(item, 'meq_L'), {
      relative: 1e-5,
      reason: 'stated with the case',
    });
  });

  it('CHM-04 (from memory): 10 mg/L nitrate as N count as 44.268 mg/L as NO3 among the solids', () => {
    const item = caseNamed('CHM-04');
    expectClose(calculatedDissolvedSolids({ nitrate: 10 }), number(item, 'NO3_mg_L'), {
      relative: 0.001,
      reason: 'stated with the case; atomic weights of different years',
    });
  });
});
