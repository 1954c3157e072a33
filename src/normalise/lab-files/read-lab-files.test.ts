import { describe, expect, it } from 'vitest';
import type { Finding } from '../../findings/index.ts';
import {
  type LabLayoutFile,
  type LabLayoutSettings,
  labLayoutSchema,
  type ResultTable,
  resultAt,
} from '../../model/index.ts';
import { forEachRecord, sniffDelimiter } from '../../read/index.ts';
import { analyteIndex } from '../../reference/index.ts';
import { ResultTableBuilder } from '../result-table-builder.ts';
import type { LabSource } from './lab-source.ts';
import { readLabFiles } from './read-lab-files.ts';

const BENCH = ['F', 'P', 'field blank 1'];

function source(name: string, text: string, sidecar: Partial<LabLayoutFile> | null): LabSource {
  const path = `lab/${name}`;
  const settings = sidecar === null ? null : labLayoutSchema.parse(sidecar);
  return {
    path,
    stem: name.replace(/\.[^.]*$/, ''),
    open: (_encoding, delimiter) => {
      const split = delimiter ?? sniffDelimiter(text, path, false);
      return {
        encoding: 'utf-8',
        delimiter: split,
        findings: [],
        records: (onRecord) =>
          forEachRecord(text, { path, delimiter: split, comments: false }, onRecord),
      };
    },
    sidecar: settings as LabLayoutSettings | null,
    sidecarPath: sidecar === null ? null : path.replace(/\.[^.]*$/, '.layout.json'),
  };
}

interface Reading {
  readonly table: ResultTable;
  readonly findings: readonly Finding[];
  readonly codes: readonly string[];
  readonly texts: readonly string[];
  readonly out: Readonly<Record<string, number>>;
}

function read(
  files: Readonly<Record<string, string | readonly [string, Partial<LabLayoutFile>]>>,
): Reading {
  const builder = new ResultTableBuilder();
  const sources = Object.entries(files).map(([name, file]) =>
    typeof file === 'string' ? source(name, file, null) : source(name, file[0], file[1]),
  );
  const sampleOf = (lab: string, client: string) =>
    BENCH.includes(lab) ? BENCH.indexOf(lab) : BENCH.indexOf(client);
  const findings = readLabFiles(
    sources,
    { analytes: analyteIndex([]), samplesOf: () => sampleOf },
    builder,
  );
  const table = builder.build();
  for (const file of table.files) {
    const left = file.leftOut.reduce((sum, { count }) => sum + count, 0);
    expect(file.results + left, 'rows read = results + left out').toBe(file.rowsRead);
  }
  return {
    table,
    findings,
    codes: findings.filter(({ level }) => level !== 'note').map(({ code }) => code),
    texts: Array.from({ length: table.length }, (_, row) => resultAt(table, row).text),
    out: Object.fromEntries(
      (table.files[0]?.leftOut ?? []).map(({ reason, count }) => [reason, count]),
    ),
  };
}

const lines = (...rows: string[]) => `${rows.join('\n')}\n`;
const LONG = 'Sample ID,Analyte,Result,Units,RL';

describe('rows that are no results', () => {
  it('leaves out laboratory blanks, spikes, surrogates and recoveries by reason', () => {
    const { out, codes, texts } = read({
      'a.csv': lines(
        'Sample ID,QCCODE,Analyte,Result,Units,RL',
        'F,CS,Lead,5.1,ug/L,1',
        'LB-1,LB,Lead,ND,ug/L,1',
        'F,MS,Lead,25.5,ug/L,1',
        'F,CS,Toluene-d8,98.1,PERCENT,',
        'F,CS,Copper,101,PERCENT,',
        'QCTB,CS,Lead,ND,ug/L,1',
      ),
    });
    expect(texts).toEqual(['5.1']);
    expect(codes).toEqual([]);
    expect(out).toEqual({
      'field blank, by its name': 1,
      'laboratory blank': 1,
      'laboratory spike': 1,
      recovery: 1,
      'surrogate or internal standard': 1,
    });
  });

  it('keeps a field blank that samples.csv lists and leaves out one that it does not', () => {
    const { texts, out } = read({
      'a.csv': lines(
        'Sample ID,Sample Type,Analyte,Result,Units,RL',
        'field blank 1,Field Blank,Lead,0.7,ug/L,0.5',
        'TB-9,Trip Blank,Lead,0.9,ug/L,0.5',
      ),
    });
    expect(texts).toEqual(['0.7']);
    expect(out).toEqual({ 'field blank': 1 });
  });

  it('leaves out solids by matrix and by unit', () => {
    const { out } = read({
      'a.csv': lines(
        'Sample ID,Matrix,Analyte,Result,Units,RL',
        'F,SO,Lead,5,ug/L,1',
        'F,W,Lead,5,UG/KG,1',
        'F,W,Copper,5,ug/L,1',
      ),
    });
    expect(out).toEqual({ 'a solid or air, not water': 1, 'not water': 1 });
  });

  it('counts headings, footers and blank results, and calls a row of another width ragged', () => {
    const { out, codes } = read({
      'a.csv': lines(
        'Report of an invented laboratory',
        LONG,
        'Metals',
        'F,Lead,0.51,ug/L,1',
        'F,Copper,,ug/L,1',
        'F,Zinc,5',
        'P,Lead,7.25,ug/L,1',
        'Total,2',
        'End of report',
      ),
    });
    expect(out).toEqual({ 'asked: ragged row': 1, blank: 1, footer: 2, 'text line': 1 });
    expect(codes).toEqual(['row-ragged']);
  });

  it('never takes a row of total coliforms at the end for a footer', () => {
    const { texts } = read({
      'a.csv': lines(
        'Analyte,Units,F',
        'Lead,ug/L,0.5',
        'Copper,ug/L,1.5',
        'Zinc,ug/L,9.5',
        'Total Coliforms,MPN/100mL,<1',
      ),
    });
    expect(texts).toEqual(['0.5', '1.5', '9.5', '<1']);
  });

  it('reports an unknown sample of a client as an error', () => {
    const { codes } = read({ 'a.csv': lines(LONG, 'X-9,Lead,5.5,ug/L,1') });
    expect(codes).toEqual(['sample-unknown']);
  });
});

describe('the layout of a file', () => {
  it('asks where two columns could hold one role, and reads nothing', () => {
    const { codes, texts, table } = read({
      'a.csv': lines('Sample ID,Analyte,Result,Final Result,Units', 'F,Lead,5,6,ug/L'),
    });
    expect(codes).toEqual(['layout-role-ambiguous']);
    expect(texts).toEqual([]);
    expect(table.files[0]?.proposal?.questions).toHaveLength(1);
  });

  it('never reads a numeric twin of the result', () => {
    const { texts } = read({
      'a.csv': lines(
        'referenceprel,libmajparametre,rqana,valtraduite,unite',
        'F,Lead,"<0,5",0,µg/L',
      ),
    });
    expect(texts).toEqual(['<0,5']);
  });

  it('asks about dates that could be day or month first, and still reads the results', () => {
    const { codes, texts } = read({
      'a.csv': lines('Sample ID,Collected,Analyte,Result,Units', 'F,03/04/2026,Lead,5.5,ug/L'),
    });
    expect(codes).toEqual(['date-order-unclear']);
    expect(texts).toEqual(['5.5']);
  });

  it('takes the order from one date that proves it', () => {
    const { codes, table } = read({
      'a.csv': lines(
        'Sample ID,Sample Date,Sample Time,Analyte,Result,Units',
        'F,03/04/2026,1436,Lead,5.5,ug/L',
        'P,25/04/2026,0,Lead,0.5,ug/L',
      ),
    });
    expect(codes).toEqual([]);
    expect([...(table.files[0]?.collected ?? [])]).toEqual([
      [0, '2026-04-03T14:36'],
      [1, '2026-04-25T00:00'],
    ]);
  });

  it('asks about 1,234 where no cell proves the decimal mark', () => {
    const { codes } = read({ 'a.csv': lines(LONG, 'F,Calcium,"1,234",mg/L,') });
    expect(codes).toEqual(['decimal-unclear']);
  });

  it('asks about a cell that contradicts the proven mark', () => {
    const { codes, texts } = read({
      'a.csv': lines(LONG, 'F,Calcium,12.5,mg/L,1', 'P,Calcium,"0,5",mg/L,1'),
    });
    expect(texts).toEqual(['12.5']);
    expect(codes).toEqual(['decimal-unclear']);
  });

  it('asks about a wide column whose name is no analyte and has a unit', () => {
    const { codes } = read({
      'a.csv': lines('Sample ID,Lead (ug/L),Unobtainium (ug/L)', 'F,0.5,7.5'),
    });
    expect(codes).toEqual(['analyte-unknown']);
  });

  it('joins a list of samples by the number, and leaves a number with two names unknown', () => {
    const { codes, texts } = read({
      'results.csv': lines(LONG, 'N1,Lead,5.5,ug/L,1', 'N2,Lead,6.5,ug/L,1', 'N3,Lead,7.5,ug/L,1'),
      'names.csv': lines('Sample ID,Client ID', 'N1,F', 'N2,P', 'N3,F', 'N3,P'),
    });
    expect(texts).toEqual(['5.5', '6.5']);
    expect(codes).toEqual(['sample-unknown']);
  });

  it('reads limits in another unit than the result', () => {
    const { table } = read({
      'a.csv': lines(
        'Sample ID,Analyte,Result,Units,RL,Limit Unit',
        'F,Lead,ND,,0.001,mg/L',
        'P,Lead,0.4,ug/L,0.001,mg/L',
      ),
    });
    expect(resultAt(table, 0)).toMatchObject({ kind: 'notDetected', rl: 1 });
    expect(resultAt(table, 1)).toMatchObject({ kind: 'notQuantified', rl: 1, stated: 0.4 });
  });

  it('raises an error for an empty file', () => {
    expect(read({ 'a.csv': '' }).codes).toEqual(['file-empty']);
  });
});

describe('a sidecar', () => {
  const base: Partial<LabLayoutFile> = {
    layout: 'long',
    delimiter: ',',
    decimal_mark: '.',
    header_row: 1,
    header: ['No', 'What', 'Found', 'How'],
    columns: { lab_sample: 'No', analyte: 'What', result: 'Found', qualifier: 'How' },
    constants: { unit: 'ug/L' },
  };
  const text = lines('No,What,Found,How', 'F,Lead,5.5,E', 'P,Lead,-9,');

  it('rules: columns, constants, letters, sentinels and aliases', () => {
    const { codes, table, out } = read({
      'a.csv': [text, { ...base, letters: { E: 'above' }, sentinels: ['-9'], samples: { P: 'F' } }],
    });
    expect(codes).toEqual([]);
    expect(resultAt(table, 0)).toMatchObject({ kind: 'aboveRange', limit: 5.5 });
    expect(out).toEqual({ sentinel: 1 });
  });

  it('is refused where the header changed', () => {
    const { codes, texts } = read({ 'a.csv': [text.replace('Found', 'Result'), base] });
    expect(codes).toEqual(['layout-header-changed']);
    expect(texts).toEqual([]);
  });

  it('keeps a file unread as long as one of its questions is open', () => {
    const { codes, texts } = read({ 'a.csv': [text, { ...base, questions: ['which list?'] }] });
    expect(codes).toEqual(['layout-unclear']);
    expect(texts).toEqual([]);
  });

  it('names a column that is not there', () => {
    const columns = { ...base.columns, mdl: 'Limit' };
    expect(read({ 'a.csv': [text, { ...base, columns }] }).codes).toEqual(['layout-role-missing']);
  });

  it('gives a basis, a unit alias and a coverage factor', () => {
    const nitrate = lines('No,What,Found,How', 'F,Nitrate,3.0 ± 0.4,');
    const { table, codes } = read({
      'a.csv': [
        nitrate,
        {
          ...base,
          constants: { unit: 'ppm' },
          unit_aliases: { ppm: 'mg/L' },
          basis: { nitrate: 'as N' },
          coverage_factor: 2,
        },
      ],
    });
    expect(codes).toEqual([]);
    expect(resultAt(table, 0)).toMatchObject({ value: 3, standardUncertainty: 0.2 });
  });

  it('keeps rows by a filter and counts the others under its reason', () => {
    const { out } = read({
      'a.csv': [
        text,
        {
          ...base,
          letters: { E: 'note' },
          rows: [{ column: 'How', keep: ['E'], reason: 'other run' }],
        },
      ],
    });
    expect(out).toEqual({ 'other run': 1 });
  });
});

describe('two results for one sample and analyte', () => {
  const HEAD = 'Sample ID,Analyte,Fraction,Result,Units,RL,Qualifier,Dilution,Method,Report Date';
  const twice = (first: string, second: string) => {
    const reading = read({ 'a.csv': lines(HEAD, `F,${first}`, `F,${second}`) });
    const swapped = read({ 'a.csv': lines(HEAD, `F,${second}`, `F,${first}`) });
    expect(swapped.texts, 'the order of rows never decides').toEqual(reading.texts);
    return reading;
  };

  it('keeps one of two equal rows', () => {
    const { texts, out } = twice('Lead,,5.5,ug/L,1,,,M,', 'Lead,,5.5,ug/L,1,,,M,');
    expect(texts).toEqual(['5.5']);
    expect(out).toEqual({ 'the same result again': 1 });
  });

  it('keeps the later report', () => {
    const { texts } = twice('Lead,,5.5,ug/L,1,,,M,2026-07-20', 'Lead,,6.5,ug/L,1,,,M,2026-08-01');
    expect(texts).toEqual(['6.5']);
  });

  it('keeps the total before the dissolved fraction', () => {
    const { texts } = twice('Lead,Dissolved,5.5,ug/L,1,,,M,', 'Lead,Total,6.5,ug/L,1,,,M,');
    expect(texts).toEqual(['6.5']);
  });

  it('keeps orthophosphate as P where P and PO4 agree, and refuses where they do not', () => {
    const agree = twice(
      'Orthophosphate,,0.07,mg/L as P,0.01,,,M,',
      'Orthophosphate,,0.2149,mg/L as PO4,0.01,,,M,',
    );
    expect(agree.texts).toEqual(['0.07']);
    const differ = read({
      'a.csv': lines(
        HEAD,
        'F,Orthophosphate,,0.07,mg/L as P,0.01,,,M,',
        'F,Orthophosphate,,0.5,mg/L as PO4,0.01,,,M,',
      ),
    });
    expect(differ.codes).toEqual(['result-repeated']);
  });

  it('keeps the diluted run of a result above the range, else the lower dilution', () => {
    expect(twice('Lead,,>100,ug/L,1,,1,M,', 'Lead,,240.5,ug/L,10,,10,M,').texts).toEqual(['240.5']);
    expect(twice('Lead,,24.5,ug/L,1,,1,M,', 'Lead,,23.5,ug/L,10,,10,M,').texts).toEqual(['24.5']);
  });

  it('keeps the lower limit of two non-detects', () => {
    expect(twice('Lead,,<1.5,ug/L,,,,M,', 'Lead,,<0.5,ug/L,,,,N,').texts).toEqual(['<0.5']);
  });

  it('refuses what no rule decides', () => {
    const { codes, out } = read({
      'a.csv': lines(HEAD, 'F,Lead,,5.5,ug/L,1,,,M,', 'F,Lead,,6.5,ug/L,1,,,N,'),
    });
    expect(codes).toEqual(['result-repeated']);
    expect(out).toEqual({ 'asked: repeated': 1 });
  });

  it('refuses two exports of one job', () => {
    const text = lines(LONG, 'F,Lead,5.5,ug/L,1', 'F,Copper,6.5,ug/L,1', 'F,Zinc,7.5,ug/L,1');
    expect(read({ 'a.csv': text, 'b.csv': text.replace('7.5', '7.0') }).codes).toEqual([
      'lab-job-twice',
    ]);
  });
});
