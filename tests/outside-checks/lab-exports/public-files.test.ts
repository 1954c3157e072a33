import { describe, expect, it } from 'vitest';
import type { LabLayoutFile } from '../../../src/model/index.ts';
import { decodeText, forEachRecord } from '../../../src/read/index.ts';
import { bytesOf, codes, type LabReading, leftOut, readLab } from './read-lab.ts';

/** Every figure ends as a result, left out for a reason, or asked about. */
function expectAllCounted({ file }: LabReading): void {
  const out = file.leftOut.reduce((sum, { count }) => sum + count, 0);
  expect(file.results + out).toBe(file.rowsRead);
}

function headerOf(name: string, delimiter: string): string[] {
  let header: readonly string[] = [];
  const { text } = decodeText(bytesOf(name), name);
  forEachRecord(text, { path: name, delimiter, comments: false }, (cells) => {
    header = cells.map((cell) => cell.trim());
    return false;
  });
  return [...header];
}

function sidecar(name: string, parts: Partial<LabLayoutFile>): LabLayoutFile {
  const delimiter = parts.delimiter ?? ',';
  return {
    layout: 'analytes-across',
    delimiter,
    decimal_mark: '.',
    header_row: 1,
    header: headerOf(name, delimiter),
    columns: {},
    ...parts,
  };
}

const kinds = ({ results }: LabReading, kind: string) =>
  results.filter(({ result }) => result.kind === kind);

describe('US Geological Survey, dataRetrieval, Choptank River nitrate: 7 samples, 14 values', () => {
  const name = 'usgs-nitrate-remarks.csv';

  it('is refused without a sidecar: no sample number and no unit stand in the file', () => {
    const reading = readLab(bytesOf(name), `lab/${name}`);
    expect(reading.results).toHaveLength(0);
    expect(codes(reading.findings)).toEqual({ 'layout-role-missing': 1 });
    expectAllCounted(reading);
  });

  // mg/L as N by the documentation of the source; each value column read by itself.
  const read = (column: string, sign: string) =>
    readLab(
      bytesOf(name),
      `lab/${name}`,
      sidecar(name, {
        delimiter: ';',
        sample_from: ['cdate'],
        columns: { collected: 'cdate' },
        series: [{ column, analyte: 'Nitrate', unit: 'mg/L', basis: 'as N', sign }],
      }),
    );

  it('holds 14 values of which <0.99, <0.25, <.50 and <1.24 are not detected', () => {
    const first = read('Nitrate', 'remarkCode');
    const second = read('Nitrate2', 'remarkCode2');
    expect([first.file.results, second.file.results]).toEqual([7, 7]);
    // Exact: the printed limits.
    expect(kinds(first, 'notDetected').map(({ high }) => high)).toEqual([0.99, 1.24]);
    expect(kinds(second, 'notDetected').map(({ high }) => high)).toEqual([0.25, 0.5]);
    expect(first.file.collected.get(0)).toBe('1999-10-07');
    expectAllCounted(first);
  });
});

describe('City of New York, DEP, distribution monitoring 2015-2016 (excerpt): 633 records', () => {
  const name = 'nyc-distribution-2015-2016.csv';
  const reading = readLab(
    bytesOf(name),
    `lab/${name}`,
    sidecar(name, {
      columns: { collected: 'Sample Date', collected_time: 'Sample Time' },
      sample_from: ['Sample Site', 'Sample Date', 'Sample Time', 'Location'],
      series: [
        { column: 'Residual Free Chlorine (mg/L)', analyte: 'free chlorine', unit: 'mg/L' },
        { column: 'Turbidity (NTU)', analyte: 'turbidity', unit: 'NTU' },
        { column: 'Fluoride (mg/L)', analyte: 'fluoride', unit: 'mg/L' },
        {
          column: 'Coliform (Quanti-Tray) (MPN /100mL)',
          analyte: 'total coliform',
          unit: 'MPN/100mL',
        },
        { column: 'E.coli(Quanti-Tray) (MPN/100mL)', analyte: 'E. coli', unit: 'MPN/100mL' },
      ],
    }),
  );
  const of = (key: string) => reading.results.filter(({ analyte }) => analyte === key);

  it('reads 633 records with line breaks inside ten cells: 5 x 633 figures', () => {
    expect(reading.file.rowsRead).toBe(5 * 633);
    expectAllCounted(reading);
    // Line breaks inside quoted cells move the later records down.
    expect(reading.results.at(-1)?.line).toBeGreaterThan(634);
  });

  it('counts 34 blank turbidities, 538 blank fluorides and one dash in each microbial column', () => {
    expect(leftOut(reading.file)).toMatchObject({ blank: 34 + 538, 'not tested': 2 });
  });

  it('holds 574 coliform results below 1, 18 above 200.5 and 40 numbers', () => {
    const coliform = of('total-coliform').map(({ result }) => result);
    expect(coliform.filter(({ kind }) => kind === 'notDetected')).toHaveLength(574);
    const above = coliform.filter((result) => result.kind === 'aboveRange');
    expect(above).toHaveLength(18);
    expect(new Set(above.map((result) => result.kind === 'aboveRange' && result.limit))).toEqual(
      new Set([200.5]),
    );
    expect(coliform.filter(({ kind }) => kind === 'quantified')).toHaveLength(40);
  });

  it('holds 632 E. coli results below 1', () => {
    expect(of('e-coli').map(({ low, high }) => [low, high])).toEqual(
      Array.from({ length: 632 }, () => [0, 1]),
    );
  });

  it('proves month-first dates', () => {
    expect(reading.file.collected.get(0)).toBe('2015-01-01T12:19');
    expect(codes(reading.findings)['date-order-unclear']).toBeUndefined();
  });

  it('asks which coliforms are meant where no sidecar says so', () => {
    const { proposal } = readLab(bytesOf(name), `lab/${name}`).file;
    expect(proposal?.series?.map(({ analyte }) => analyte)).toContain('Coliform');
  });
});

describe('City of Toronto, lead at residential taps 2015: 982 samples', () => {
  const name = 'toronto-lead-2015.csv';

  it('is asked about ppm without a sidecar', () => {
    const reading = readLab(bytesOf(name), `lab/${name}`);
    expect(leftOut(reading.file)).toEqual({ 'asked: unit': 982 });
    expect(codes(reading.findings)).toMatchObject({ 'unit-ambiguous': 1 });
  });

  const proposal = readLab(bytesOf(name), `lab/${name}`).file.proposal;
  const reading = readLab(
    bytesOf(name),
    `lab/${name}`,
    proposal === null ? null : { ...proposal, unit_aliases: { ppm: 'mg/L' } },
  );

  it('with ppm as mg/L: 982 results, 212 below 0.05 ug/L, the highest 928 ug/L', () => {
    expect(reading.file.results).toBe(982);
    const below = kinds(reading, 'notDetected');
    expect(below).toHaveLength(212);
    // Exact up to one rounding of the decimal conversion of 0.00005 mg/L.
    for (const { high } of below) expect(high).toBeCloseTo(0.05, 15);
    const highest = Math.max(...kinds(reading, 'quantified').map(({ high }) => high));
    expect(highest).toBeCloseTo(928, 12);
    expectAllCounted(reading);
  });
});

describe('openwashdata, Malawi borehole laboratory data (Mhango, Paterson, Rattray): 32 wells', () => {
  const name = 'malawi-borehole-lab.csv';
  const asked = readLab(bytesOf(name), `lab/${name}`);

  it('is interleaved with verdict columns that are never read', () => {
    const read = asked.file.proposal?.series?.map(({ column }) => String(column)) ?? [];
    expect(read.filter((column) => /within/.test(column))).toEqual([]);
    expect(read).toContain('fluoride_mg_l');
    expectAllCounted(asked);
  });

  it('asks about what has no unit or basis, and about -9 in fluoride', () => {
    expect(codes(asked.findings)).toMatchObject({ 'unit-missing': 1, 'basis-unstated': 3 });
    expect(leftOut(asked.file)).toMatchObject({ 'asked: unit': 43 });
    expect(
      asked.findings.some(({ place }) => place.field === 'fluoride_mg_l' && place.cell === '-9'),
    ).toBe(true);
    expect(asked.results.filter(({ analyte }) => analyte === 'nitrate')).toEqual([]);
  });

  it('with a sidecar: -9 is left out twice as a sentinel, dates are month first', () => {
    const { proposal } = asked.file;
    const reading = readLab(
      bytesOf(name),
      `lab/${name}`,
      proposal === null ? null : { ...proposal, sentinels: ['-9'] },
    );
    expect(leftOut(reading.file)).toMatchObject({ sentinel: 2 });
    expect(reading.file.collected.get(0)).toBe('2019-02-12');
    expectAllCounted(reading);
  });
});

describe('Heilbronn district, drinking-water values 2015: 505 supply zones, decimal commas', () => {
  const name = 'heilbronn-district-2015.csv';

  it('is no file of samples: without a sidecar nothing of it is read', () => {
    const reading = readLab(bytesOf(name), `lab/${name}`);
    expect(reading.results).toHaveLength(0);
    expect(reading.file.proposal?.decimal_mark).toBe(',');
    expect(codes(reading.findings)).toEqual({ 'layout-role-missing': 1 });
  });

  const columns = ['Natrium', 'Kalium', 'Calcium', 'Magnesium', 'Chlorid', 'Sulfat'];
  const reading = readLab(
    bytesOf(name),
    `lab/${name}`,
    sidecar(name, {
      decimal_mark: ',',
      sample_from: [1, 2, 3, 4, 'Anmerkungen'],
      series: [
        ...columns.map((column) => ({ column, analyte: column, unit: 'mg/L' })),
        { column: 'Nitrat', analyte: 'Nitrat', unit: 'mg/L', basis: 'as NO3' },
        { column: 5, analyte: 'total hardness', unit: '°dH' },
      ],
    }),
  );

  it('reads 8 x 505 cells: 14 k.A. not tested, each range a warning of its own', () => {
    expect(reading.file.rowsRead).toBe(8 * 505);
    expect(leftOut(reading.file)['not tested']).toBe(14);
    expect(kinds(reading, 'notQuantified')).toHaveLength(41);
    expectAllCounted(reading);
  });

  it('reads a range whose high end comes first from low to high', () => {
    const ranges = kinds(reading, 'notQuantified');
    expect(ranges.every(({ low, high }) => low <= high)).toBe(true);
    const written = ranges.find(({ result }) => result.text === '15-7,8');
    expect(written?.high).toBeGreaterThan(written?.low ?? Number.NaN);
  });
});

describe('AguaClara Reach, bench logger files (MIT licence)', () => {
  it('a tab-separated text named .xls: 400 turbidities before treatment, mean 111.497', () => {
    const name = 'aguaclara-turbidity-2018-06-14.xls';
    const read = (column: string) =>
      readLab(
        bytesOf(name),
        `lab/${name}`,
        sidecar(name, {
          delimiter: '\t',
          sample_from: [1, 2],
          series: [{ column, analyte: 'turbidity', unit: 'NTU' }],
        }),
      );
    // A printed zero is no turbidity and is asked about; in the published means it counts as zero.
    const mean = ({ results, file }: LabReading) =>
      results.reduce((sum, { high }) => sum + high, 0) / file.rowsRead;
    const influent = read('Influent Turbidity (NTU)');
    expect(influent.file.rowsRead).toBe(400);
    expect(leftOut(influent.file)).toEqual({ 'asked: result': 34 });
    // Half a unit in the last printed digit of the published means.
    expect(mean(influent)).toBeCloseTo(111.497, 3);
    expect(mean(read('Effluent Turbidity ()'))).toBeCloseTo(0.3834, 4);
  });

  it('a logger file is never taken for a lab export', () => {
    for (const name of ['aguaclara-turbidity-2018-06-14.xls', 'aguaclara-datalog-2019-11-05.tsv']) {
      const reading = readLab(bytesOf(name), `lab/${name}`);
      expect(reading.results).toHaveLength(0);
      expect(codes(reading.findings)).toEqual({ 'layout-unclear': 1 });
    }
  });

  it('carriage returns only: 67 records with the header; the state log has 35 lines', () => {
    const count = (name: string) => {
      let records = 0;
      const { text } = decodeText(bytesOf(name), name);
      forEachRecord(text, { path: name, delimiter: '\t', comments: false }, () => {
        records += 1;
      });
      return records;
    };
    expect(count('aguaclara-datalog-2019-11-05.tsv')).toBe(67);
    expect(count('aguaclara-statelog-2013-06-20.xls')).toBe(35);
  });
});
