import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { calculatedHardness } from '../../../src/analyse/chemistry/index.ts';
import { calciteOf, magnesiaOf } from '../../../src/analyse/minerals/dissolved-stone.ts';
import { hardnessInUnits } from '../../../src/analyse/minerals/hardness-units.ts';
import {
  alkalinityParts,
  calciteSaturationIndex,
  precipitationPotential,
} from '../../../src/analyse/saturation/index.ts';
import { analyteIndex, conversionTo, unitNamed } from '../../../src/reference/index.ts';
import { expectClose } from '../statistics/expect-close.ts';

interface Case {
  readonly id: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, number>>;
}

const { cases } = JSON.parse(readFileSync(new URL('chemistry.json', import.meta.url), 'utf8')) as {
  readonly cases: readonly Case[];
};

function figure(id: string, name: string): number {
  const found = cases.find((item) => item.id === id);
  const value = found?.expected[name] ?? found?.inputs[name];
  if (typeof value !== 'number') throw new RangeError(`${id} has no number ${name}`);
  return value;
}

const STATED = 'stated with the case';

function analyteNamed(name: string) {
  const reading = analyteIndex([]).resolve(name, null);
  if (reading.kind !== 'found') throw new RangeError(`no analyte ${name}`);
  return reading.analyte;
}

/** mg/L as the analyte is kept in one mg/L on another basis. */
function factorFrom(name: string, basis: string): number {
  const unit = unitNamed('mg/L');
  if (unit === undefined) throw new RangeError('no unit mg/L');
  const conversion = conversionTo(analyteNamed(name), unit, basis);
  if (conversion.kind !== 'conversion') throw new RangeError(`${name} ${basis}`);
  return conversion.factor;
}

describe('units of hardness by their definitions (from memory)', () => {
  it.each([
    ['mmol/L', 'mmol_L'],
    ['degdH', 'deg_dH'],
    ['degfH', 'deg_fH'],
    ['degClark', 'deg_Clark'],
    ['gpg', 'grains_per_us_gal'],
  ])('CHM-02: 174.266 mg/L as CaCO3 in %s', (unit, name) => {
    const found = hardnessInUnits(figure('CHM-02', 'hardness_mg_L_CaCO3')).find(
      (each) => each.unit === unit,
    );
    expectClose(found?.value, figure('CHM-02', name), { relative: 2e-5, reason: STATED });
  });
});

describe('factors between bases', () => {
  it('CHM-03 (derived): 100 mg/L alkalinity as CaCO3 is 121.93 mg/L as HCO3', () => {
    expectClose(
      figure('CHM-03', 'alkalinity_mg_L_CaCO3') / factorFrom('total alkalinity', 'as HCO3'),
      figure('CHM-03', 'HCO3_mg_L'),
      { relative: 1e-5, reason: STATED },
    );
  });

  it('CHM-05 (from memory): 3.2845 mg/L nitrite is 1 mg/L as N', () => {
    expectClose(
      figure('CHM-05', 'NO2_mg_L') * factorFrom('nitrite', 'as NO2'),
      figure('CHM-05', 'NO2_N_mg_L'),
      { relative: 0.001, reason: STATED },
    );
  });

  it('CHM-06, 40 CFR 141.25: the factor printed with uranium makes 30 ug/L 20.1 pCi/L', () => {
    const printed = /([\d.]+) pCi\/ug/.exec(analyteNamed('uranium').note ?? '')?.[1];
    expectClose(figure('CHM-06', 'U_ug_L') * Number(printed), figure('CHM-06', 'U_pCi_L'), {
      absolute: 1e-9,
      reason: STATED,
    });
  });

  it('never turns a mass of uranium into an activity by itself', () => {
    const unit = unitNamed('pCi/L');
    if (unit === undefined) throw new RangeError('no unit pCi/L');
    expect(conversionTo(analyteNamed('uranium'), unit, null).kind).not.toBe('conversion');
  });
});

describe('hardness from compounds, engineering-chemistry textbook p. 1.10, example 5', () => {
  // mg/L of the compound over its rounded molar mass, times the cation's.
  const calcium = (mgPerL: number, molarMass: number) => (mgPerL / molarMass) * 40.078;
  const magnesium = (29.2 / 146) * 24.305;
  const reason = 'the textbook rounds molar masses to whole numbers and CaCO3 to 100';

  it('CHM-07: temporary hardness of the bicarbonates, 40 mg/L', () => {
    const found = calculatedHardness(calcium(32.4, 162), magnesium);
    expectClose(found, figure('CHM-07', 'temporary_mg_L_CaCO3'), { relative: 1.5e-3, reason });
  });

  it('CHM-07: permanent hardness of calcium sulfate, 10 mg/L', () => {
    const found = calculatedHardness(calcium(13.6, 136), 0);
    expectClose(found, figure('CHM-07', 'permanent_mg_L_CaCO3'), { relative: 1.5e-3, reason });
  });

  it('CHM-07: total hardness, 50 mg/L', () => {
    const found = calculatedHardness(calcium(32.4, 162) + calcium(13.6, 136), magnesium);
    expectClose(found, figure('CHM-07', 'total_mg_L_CaCO3'), { relative: 1.5e-3, reason });
  });
});

describe('precipitation potential by the fall in alkalinity (marble test), definition seen', () => {
  it('CHM-66: alkalinity 120 falling to 108.5 is a potential of +11.5 mg/L', () => {
    const start = figure('CHM-66', 'initial_alk_mg_L_CaCO3');
    const end = figure('CHM-66', 'after_marble_test_mg_L_CaCO3');
    const water = (calcium: number) => ({
      pH: 7.9,
      temperatureC: 20,
      calciumMgPerL: calcium,
      alkalinityMgPerL: start,
      ionicStrengthMolPerL: 0.006,
    });
    // The calcium at which this water has the potential of the case.
    let [low, high] = [1, 400];
    for (let step = 0; step < 80; step += 1) {
      const middle = (low + high) / 2;
      const found = precipitationPotential(water(middle))?.potentialMgPerL ?? Number.NaN;
      if (found < figure('CHM-66', 'CCPP_mg_L_CaCO3')) low = middle;
      else high = middle;
    }
    const found = precipitationPotential(water(low));
    expectClose(found?.potentialMgPerL, start - end, { absolute: 1e-6, reason: 'bisection' });
    // Calcite took as much calcium and alkalinity; what is left is just saturated.
    const left = {
      ...water(low - (start - end) * (40.078 / 100.087)),
      pH: found?.finalPH ?? Number.NaN,
      alkalinityMgPerL: end,
    };
    expectClose(calciteSaturationIndex(left), 0, { absolute: 1e-5, reason: 'bisection' });
  });
});

describe('parts of alkalinity, Standard Methods 4500-CO2 D (from memory)', () => {
  const parts = alkalinityParts(figure('CHM-67', 'pH'), figure('CHM-67', 'alkalinity_mg_L_CaCO3'));

  it.each([
    ['bicarbonate', parts.bicarbonate, 'HCO3_as_CaCO3'],
    ['carbonate', parts.carbonate, 'CO3_as_CaCO3'],
    ['hydroxide', parts.hydroxide, 'OH_as_CaCO3'],
    ['carbon dioxide', parts.carbonDioxide, 'CO2'],
  ])('CHM-67: %s of 200 mg/L alkalinity at pH 7', (_, found, name) => {
    expectClose(found, figure('CHM-67', name), { relative: 1e-4, reason: STATED });
  });
});

describe('stones that dissolve, stoichiometry (derived)', () => {
  it('CHM-71: 30 mg/L calcite brings 12.01 mg/L calcium and uses 13.19 mg/L carbon dioxide', () => {
    const found = calciteOf(figure('CHM-71', 'Ca_gain_mg_L'));
    const reason = `${STATED}; molar masses to five figures`;
    const near = { relative: 4e-5, reason };
    expectClose(found.stoneMgPerL, figure('CHM-71', 'CaCO3_dissolved_mg_L'), near);
    expectClose(found.hardnessMgPerL, figure('CHM-71', 'hardness_gain_mg_L_CaCO3'), near);
    expectClose(found.carbonDioxideUsedMgPerL, figure('CHM-71', 'CO2_used_mg_L'), near);
  });

  it('CHM-72: 10 mg/L magnesia brings 6.03 mg/L magnesium and uses 21.84 mg/L carbon dioxide', () => {
    const found = magnesiaOf(figure('CHM-72', 'Mg_gain_mg_L'));
    const near = { relative: 4e-5, reason: `${STATED}; molar masses to five figures` };
    expectClose(found.stoneMgPerL, figure('CHM-72', 'MgO_dissolved_mg_L'), near);
    expectClose(found.hardnessMgPerL, figure('CHM-72', 'hardness_gain_mg_L_CaCO3'), near);
    expectClose(found.carbonDioxideUsedMgPerL, figure('CHM-72', 'CO2_used_mg_L'), near);
  });
});
