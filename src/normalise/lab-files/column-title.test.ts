import { describe, expect, it } from 'vitest';
import { analyteIndex } from '../../reference/index.ts';
import { readColumnTitle } from './column-title.ts';

const read = (header: string) => readColumnTitle(header, analyteIndex([]));

describe('the head of a column of a wide file', () => {
  it('is an analyte with its unit in brackets, behind it, mangled or with underscores', () => {
    expect(read('Turbidity (NTU)')).toEqual({ kind: 'analyte', name: 'Turbidity', unit: 'NTU' });
    expect(read('Lead, ug/L')).toEqual({ kind: 'analyte', name: 'Lead', unit: 'ug/L' });
    expect(read('Lead.Amount..ppm.')).toEqual({ kind: 'analyte', name: 'Lead', unit: 'ppm' });
    expect(read('tds_mg_l')).toMatchObject({ kind: 'analyte', unit: 'mg/l' });
    expect(read('Fluoride\n(mg/L)')).toEqual({ kind: 'analyte', name: 'Fluoride', unit: 'mg/L' });
  });

  it('with two bracket groups keeps the last one as the unit', () => {
    expect(read('E.coli(Quanti-Tray) (MPN/100mL)')).toEqual({
      kind: 'analyte',
      name: 'E.coli',
      unit: 'MPN/100mL',
    });
  });

  it('without a unit is an analyte all the same', () => {
    expect(read('Natrium')).toEqual({ kind: 'analyte', name: 'Natrium', unit: null });
    expect(read('Nitrate2')).toEqual({ kind: 'analyte', name: 'Nitrate', unit: null });
  });

  it('can be a companion, a verdict, a role or nothing', () => {
    expect(read('remarkCode2')).toEqual({ kind: 'beside', role: 'sign', of: null });
    expect(read('Lead RL')).toMatchObject({ kind: 'beside', role: 'rl', of: 'lead' });
    expect(read('fluoride_within_standards').kind).toBe('verdict');
    expect(read('Sample ID').kind).toBe('role');
    expect(read('latitude').kind).toBe('other');
    expect(read('').kind).toBe('other');
    expect(read('valtraduite').kind).toBe('other');
  });

  it('with a unit and no known analyte holds figures that must not be lost', () => {
    expect(read('Unobtainium (ug/L)')).toEqual({
      kind: 'unknown-analyte',
      name: 'Unobtainium',
      unit: 'ug/L',
    });
  });
});
