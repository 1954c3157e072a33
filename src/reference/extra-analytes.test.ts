import { describe, expect, it } from 'vitest';
import { analyteIndex } from './analyte-index.ts';
import type { ExtraAnalyte } from './extra-analytes.ts';

function row(parts: Partial<ExtraAnalyte> & { key: string }): ExtraAnalyte {
  return { name: null, cas: null, unit: null, aliases: [], ...parts };
}

function keyOf(extra: readonly ExtraAnalyte[], name: string): string {
  const reading = analyteIndex(extra).resolve(name, null);
  return reading.kind === 'found' ? reading.analyte.key : reading.kind;
}

describe('analytes and aliases a bench adds', () => {
  it('adds aliases to an analyte of the tables', () => {
    const extra = [row({ key: 'lead', aliases: ['Pb by ICP', 'Test 17'] })];
    expect(keyOf(extra, 'test 17')).toBe('lead');
    expect(keyOf([], 'test 17')).toBe('unknown');
    expect(analyteIndex(extra).problems).toEqual([]);
  });

  it('lets an alias settle a name with two meanings', () => {
    expect(keyOf([row({ key: 'conductivity', aliases: ['EC'] })], 'EC')).toBe('conductivity');
    expect(keyOf([row({ key: 'chlorine-total', aliases: ['Chlorine'] })], 'chlorine')).toBe(
      'chlorine-total',
    );
  });

  it('adds a new analyte with its unit and CAS number', () => {
    const index = analyteIndex([
      row({
        key: 'sucralose',
        name: 'Sucralose',
        cas: '56038-13-2',
        unit: 'ng/L',
        aliases: ['E955'],
      }),
    ]);
    expect(index.problems).toEqual([]);
    expect(index.resolve('e955', null).kind).toBe('found');
    expect(index.resolve(null, '56038-13-2').kind).toBe('found');
    expect(index.byKey('sucralose')).toMatchObject({ unit: 'ng/L', cas: '56038-13-2', bases: [] });
  });

  it('reports a new analyte without a usable unit and leaves it out', () => {
    const extra = [row({ key: 'thing-a' }), row({ key: 'thing-b', unit: 'cups' })];
    const index = analyteIndex(extra);
    expect(index.problems.map(({ row: at, problem }) => [at, problem])).toEqual([
      [0, 'unit-missing'],
      [1, 'unit-unusable'],
    ]);
    expect(index.byKey('thing-a')).toBeUndefined();
  });

  it('reports a name that belongs to another analyte and does not move it', () => {
    const extra = [row({ key: 'zinc', aliases: ['Pb', 'Zn by ICP'] })];
    const index = analyteIndex(extra);
    expect(index.problems.map(({ problem }) => problem)).toEqual(['name-clash']);
    expect(keyOf(extra, 'Pb')).toBe('lead');
    expect(keyOf(extra, 'Zn by ICP')).toBe('zinc');
  });

  it('reports a new key that is a name of another analyte', () => {
    const index = analyteIndex([row({ key: 'pb', unit: 'ug/L' })]);
    expect(index.problems[0]?.message).toContain('"lead"');
    expect(index.byKey('pb')).toBeUndefined();
  });

  it('reports a key that stands twice and a CAS number that fails its check digit', () => {
    const index = analyteIndex([
      row({ key: 'thing', unit: 'ug/L', cas: '56038-13-3' }),
      row({ key: 'thing', unit: 'ug/L' }),
    ]);
    expect(index.problems.map(({ row: at, problem }) => [at, problem])).toEqual([
      [0, 'cas'],
      [1, 'key-repeated'],
    ]);
  });

  it('lets a bench keep counts and turbidity in another way of measuring', () => {
    const index = analyteIndex([
      row({ key: 'e-coli', unit: 'CFU/100 mL' }),
      row({ key: 'turbidity', unit: 'FNU' }),
    ]);
    expect(index.problems).toEqual([]);
    expect(index.byKey('e-coli')?.unit).toBe('CFU/100mL');
    expect(index.byKey('turbidity')?.unit).toBe('FNU');
  });

  it('does not let a bench change any other unit', () => {
    const index = analyteIndex([
      row({ key: 'lead', unit: 'mg/L' }),
      row({ key: 'zinc', unit: 'ug/L' }),
      row({ key: 'uranium', unit: 'pCi/L' }),
    ]);
    expect(index.problems.map(({ row: at, problem }) => [at, problem])).toEqual([
      [0, 'unit-unusable'],
      [2, 'unit-unusable'],
    ]);
    expect(index.byKey('lead')?.unit).toBe('ug/L');
  });
});
