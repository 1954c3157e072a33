import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../../../src/model/index.ts';
import { BenchText, type Cells } from '../../planted-faults/bench-text.ts';

type PublicRow = Readonly<Record<string, string>>;

/** One column of the public file: its header, the analyte and the unit it is read in. */
type Column = readonly [header: string, analyte: string, unit: string];

function rowsOf(name: string): PublicRow[] {
  const text = readFileSync(new URL(`../lab-exports/${name}`, import.meta.url), 'utf8');
  return parse(text, { columns: true }) as PublicRow[];
}

/** The rows as feeds of a bench, one event each, in the units the file claims. */
function benchOf(rows: readonly PublicRow[], columns: readonly Column[]): Bench {
  const lab = rows.flatMap((row, at) =>
    columns.flatMap(([header, analyte, unit]): Cells[] => {
      const text = (row[header] ?? '').replace(',', '.');
      if (!/^\d+(\.\d+)?$/.test(text)) return [];
      return [
        { 'Sample ID': `W${at + 1}`, Analyte: analyte, Result: text, Units: unit, RL: '0.001' },
      ];
    }),
  );
  return new BenchText({})
    .add('devices.csv', [
      { device: 'none', name: 'None', form: 'inline', technology: 'carbon', drain_line: 'no' },
    ])
    .add(
      'samples.csv',
      rows.map((_, at) => ({ sample: `W${at + 1}`, position: 'feed', event: `e${at + 1}` })),
    )
    .add('lab/lab.csv', lab)
    .read();
}

/** Numbers of the wells whose results a code names. */
function wells(bench: Bench, code: string): number[] {
  const { results, tables } = bench;
  const found = bench.findings.flatMap((item) => {
    if (item.code !== code || item.place.file !== 'lab/lab.csv') return [];
    const index = results.line.indexOf(item.place.line ?? -1);
    return Number(tables.samples[results.sample[index] ?? -1]?.values.sample.slice(1));
  });
  return [...new Set(found)].sort((a, b) => a - b);
}

describe('Mhango, Paterson and Rattray, boreholelabdata (CC BY 4.0): 32 wells in Malawi', () => {
  const rows = rowsOf('malawi-borehole-lab.csv');
  const bench = benchOf(rows, [
    ['conductivity', 'Specific Conductance', 'uS/cm'],
    ['tds_mg_l', 'Total Dissolved Solids', 'mg/L'],
    ['chloride_mg_l', 'Chloride', 'mg/L'],
    ['sulphate_mg_l', 'Sulfate as SO4', 'mg/L'],
    ['nitrate_mg_l', 'Nitrate as NO3', 'mg/L as NO3'],
    ['sodium_mg_l', 'Sodium', 'mg/L'],
    ['potassium_mg_l', 'Potassium', 'mg/L'],
    ['calcium_mg_l', 'Calcium as Ca', 'mg/L'],
    ['magnesium_mg_l', 'Magnesium as Mg', 'mg/L'],
    ['hardness_mg_l', 'Hardness, Total as CaCO3', 'mg/L as CaCO3'],
    ['alkalinity_mg_l', 'Alkalinity, Total as CaCO3', 'mg/L as CaCO3'],
  ]);
  const inMilli = rows.flatMap((row, at) => (Number(row['conductivity']) < 10 ? at + 1 : []));

  it('the ten wells in mS/cm and g/L, and no other, have a conductivity that cannot be', () => {
    expect(inMilli).toHaveLength(10);
    expect(wells(bench, 'conductivity-off')).toEqual(inMilli);
  });

  it('the same ten, and no other, have dissolved solids below what their ions weigh', () => {
    expect(wells(bench, 'dissolved-solids-off')).toEqual(inMilli);
  });

  it('nine of the ten lie near a factor of 1,000 from the middle of all wells', () => {
    const found = wells(bench, 'unit-suspect');
    expect(found).toHaveLength(9);
    expect(inMilli).toEqual(expect.arrayContaining(found));
  });

  it('of the wells with all major ions one does not balance: it repeats figures of another', () => {
    // Wells 14 and 23 print the same calcium, magnesium and sodium beside other anions.
    expect(wells(bench, 'ion-balance-off')).toEqual([23]);
    expect(wells(bench, 'hardness-disagrees')).toEqual([23]);
    for (const ion of ['calcium_mg_l', 'magnesium_mg_l', 'sodium_mg_l']) {
      expect(rows[22]?.[ion]).toBe(rows[13]?.[ion]);
    }
  });
});

describe('Utilities of the district of Heilbronn, 2015 (open data, MIT): 505 supply zones', () => {
  const rows = rowsOf('heilbronn-district-2015.csv');
  const bench = benchOf(rows, [
    ['Härtegrad', 'Hardness, Total', 'dH'],
    ['Natrium', 'Sodium', 'mg/L'],
    ['Kalium', 'Potassium', 'mg/L'],
    ['Calcium', 'Calcium as Ca', 'mg/L'],
    ['Magnesium', 'Magnesium as Mg', 'mg/L'],
    ['Chlorid', 'Chloride', 'mg/L'],
    ['Sulfat', 'Sulfate as SO4', 'mg/L'],
  ]);

  it('hardness in German degrees fits calcium and magnesium in all but eight zones', () => {
    const off = wells(bench, 'hardness-disagrees');
    expect(off).toHaveLength(8);
    for (const zone of off) {
      const of = (header: string) => Number((rows[zone - 1]?.[header] ?? '').replace(',', '.'));
      const degrees = (2.497 * of('Calcium') + 4.118 * of('Magnesium')) / 17.848;
      expect(Math.abs(of('Härtegrad') / degrees - 1)).toBeGreaterThan(0.15);
    }
  });

  it('nothing else is told of 505 real waters but that they differ', () => {
    const codes = bench.findings.flatMap(({ code, level }) => (level === 'note' ? [] : code));
    expect(new Set(codes)).toEqual(new Set(['hardness-disagrees', 'sample-without-result']));
  });
});
