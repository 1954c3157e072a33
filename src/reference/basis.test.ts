import { describe, expect, it } from 'vitest';
import { analyteIndex } from './analyte-index.ts';
import { type Conversion, conversionTo } from './basis.ts';
import { readUnit } from './read-unit.ts';
import { applyLinear, type Unit } from './unit.ts';
import { namedUnits } from './unit-index.ts';

const index = analyteIndex([]);

function unit(spelling: string): Unit {
  const reading = readUnit(spelling, {});
  if (reading.kind === 'problem') throw new Error(reading.message);
  return reading.unit;
}

function conversion(key: string, spelling: string, basis: string | null = null) {
  const analyte = index.byKey(key);
  if (analyte === undefined) throw new Error(`no analyte ${key}`);
  return conversionTo(analyte, unit(spelling), basis);
}

function converted(key: string, spelling: string, basis: string | null = null): Conversion {
  const result = conversion(key, spelling, basis);
  if (result.kind === 'problem') throw new Error(result.message);
  return result;
}

function problem(key: string, spelling: string, basis: string | null = null): string {
  const result = conversion(key, spelling, basis);
  return result.kind === 'problem' ? result.problem : 'none';
}

function canonical(value: number, key: string, spelling: string, basis: string | null = null) {
  const { ratio, offset } = converted(key, spelling, basis);
  return applyLinear(value, ratio, offset);
}

describe('a result in the canonical unit and basis', () => {
  it('changes nothing and says nothing where the laboratory reports it so', () => {
    expect(converted('lead', 'ug/L')).toMatchObject({
      factor: 1,
      steps: [],
      basisConverted: false,
    });
    expect(converted('nitrate', 'mg/L as N').steps).toEqual([]);
    expect(converted('temperature', '°C').steps).toEqual([]);
  });

  it('converts a mass exactly', () => {
    expect(canonical(5, 'lead', 'mg/L')).toBe(5000);
    expect(canonical(70, 'lead', 'ng/L')).toBe(0.07);
    expect(canonical(0, 'lead', 'mg/L')).toBe(0);
    expect(canonical(Number.NaN, 'lead', 'mg/L')).toBeNaN();
  });

  it('converts nitrate as NO3 to nitrate as N by 14.007/62.005 and says so', () => {
    expect(converted('nitrate', 'mg/L as NO3')).toMatchObject({
      ratio: { num: 14007, den: 62005 },
      steps: ['mg/L as NO3 to mg/L as N: x 14.007/62.005'],
      basisConverted: true,
    });
    expect(converted('nitrate', 'mg/L', 'as NO3').ratio).toEqual({ num: 14007, den: 62005 });
    expect(converted('nitrate', 'mg/L', 'nitrate').ratio).toEqual({ num: 14007, den: 62005 });
  });

  it('asks for the basis where two are in common use', () => {
    for (const key of [
      'nitrate',
      'nitrite',
      'ammonia',
      'orthophosphate',
      'total-phosphorus',
      'silica',
      'monochloramine',
      'bicarbonate',
    ]) {
      expect(problem(key, 'mg/L')).toBe('basis-unstated');
    }
  });

  it('uses the customary basis where there is one', () => {
    for (const key of [
      'calcium',
      'total-hardness',
      'total-alkalinity',
      'sulfate',
      'chlorine-free',
      'total-organic-carbon',
      'nitrate-nitrite',
      'boron',
    ]) {
      expect(converted(key, 'mg/L')).toMatchObject({ factor: 1, basisConverted: false });
    }
  });

  it('refuses a unit and a name that state different bases', () => {
    expect(problem('nitrate', 'mg/L as N', 'as NO3')).toBe('basis-unknown');
    expect(problem('total-hardness', 'mg/L', 'mmol/L')).toBe('basis-unknown');
  });

  it('refuses a basis the analyte does not have, and takes its own symbol', () => {
    expect(problem('lead', 'mg/L as N')).toBe('basis-unknown');
    expect(problem('nitrate', 'mg/L as P')).toBe('basis-unknown');
    expect(converted('lead', 'ug/L Pb').factor).toBe(1);
    expect(converted('chloride', 'mg/L Cl').factor).toBe(1);
    expect(converted('chromium-6', 'ug/L as Cr').factor).toBe(1);
  });

  it('converts moles and equivalents through molar mass and charge', () => {
    expect(converted('lead', 'umol/L')).toMatchObject({ factor: 207.2, basisConverted: true });
    expect(converted('nitrate', 'mmol/L').factor).toBe(14.007);
    expect(converted('calcium', 'meq/L').factor).toBe(20.039);
    expect(converted('total-alkalinity', 'meq/L').factor).toBe(50.044);
    expect(converted('total-hardness', 'mmol/L').factor).toBe(100.087);
    expect(converted('total-hardness', 'meq/L').factor).toBe(50.0435);
    expect(converted('sulfate', 'meq/L').factor).toBe(48.03);
  });

  it('says where molar mass or charge are missing', () => {
    expect(problem('benzene', 'umol/L')).toBe('no-molar-mass');
    expect(problem('silica', 'meq/L')).toBe('no-molar-mass');
    expect(problem('total-alkalinity', 'mmol/L')).toBe('no-molar-mass');
  });

  it('converts degrees of hardness for what hardness is made of, and for nothing else', () => {
    expect(canonical(10, 'total-hardness', 'gpg')).toBe(171.18);
    expect(converted('calcium', 'gpg').steps).toEqual([
      'gpg to mg/L as CaCO3: x 17.118',
      'mg/L as CaCO3 to mg/L as Ca: x 40.078/100.087',
    ]);
    expect(problem('lead', 'gpg')).toBe('dimension');
    expect(problem('chloride', '°dH')).toBe('dimension');
  });

  it('never converts between mass and activity, organisms or kinds of light', () => {
    expect(problem('uranium', 'pCi/L')).toBe('dimension');
    expect(problem('uranium-activity', 'ug/L')).toBe('dimension');
    expect(problem('e-coli', 'CFU/100mL')).toBe('dimension');
    expect(problem('turbidity', 'FNU')).toBe('dimension');
    expect(problem('lead', 'psi')).toBe('dimension');
  });

  it('names the way out where a laboratory counts otherwise', () => {
    const result = conversion('e-coli', 'CFU/100mL');
    expect(result.kind === 'problem' && result.remedy).toContain('analytes.csv');
  });

  it('converts temperatures with their offset and explains it', () => {
    expect(canonical(77, 'temperature', '°F')).toBe(25);
    expect(converted('temperature', '°F').steps).toEqual(['degF to degC: minus 32, then x 5/9']);
  });

  it('has an exact ratio for every analyte, unit and basis that converts', () => {
    let conversions = 0;
    for (const analyte of index.analytes) {
      for (const known of namedUnits().values()) {
        for (const basis of [null, ...analyte.bases.map((item) => item.basis)]) {
          const result = conversionTo(analyte, known, basis);
          if (result.kind === 'problem') continue;
          conversions += 1;
          expect(Number.isSafeInteger(result.ratio.num)).toBe(true);
          expect(result.factor).toBeGreaterThan(0);
        }
      }
    }
    expect(conversions).toBeGreaterThan(2000);
  });
});
