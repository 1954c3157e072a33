import { describe, expect, it } from 'vitest';
import { intervalOf } from '../../src/model/index.ts';
import { type LabReading, readLab } from '../outside-checks/lab-exports/read-lab.ts';
import {
  ANALYTES,
  DELIMITERS,
  ENCODINGS,
  encode,
  FIGURES,
  LAYOUTS,
  type Layout,
  LINE_ENDS,
  recordsOf,
  textOf,
} from './write-export.ts';

/** What the bench knows of a result: sample, analyte, kind, bounds at either limit, unit. */
function statements({ table, results }: LabReading): string[] {
  return results
    .map(({ sample, analyte, result }) => {
      const { low, high } = intervalOf(result, 'reporting') ?? { low: null, high: null };
      const at = intervalOf(result, 'detection')?.high;
      const unit = table.conversions[result.conversion]?.toUnit;
      return `${sample} ${analyte} ${result.kind} ${low} ${high} ${at} ${unit}`;
    })
    .sort();
}

/** The same statements made from the figures without any reader. */
const KEYS = [
  'lead',
  'copper',
  'arsenic',
  'uranium',
  'chloroform',
  'calcium',
  'magnesium',
  'sodium',
].concat(['potassium', 'chloride', 'sulfate', 'fluoride', 'conductivity', 'turbidity', 'e-coli']);
const expected = FIGURES.map(({ sample, analyte, sign, value }) => {
  const index = ANALYTES.findIndex(({ name }) => name === analyte);
  const unit = (ANALYTES[index]?.unit ?? '').replace('µ', 'u');
  const x = Number(value);
  const [kind, low, high] =
    sign === '<'
      ? ['notDetected', 0, x]
      : sign === '>'
        ? ['aboveRange', x, Number.POSITIVE_INFINITY]
        : ['quantified', x, x];
  return `${sample} ${KEYS[index]} ${kind} ${low} ${high} ${high} ${unit}`;
}).sort();

function read(
  layout: Layout,
  delimiter: string,
  mark: '.' | ',',
  lineEnd: string,
  encoding: (typeof ENCODINGS)[number],
) {
  const bytes = encode(textOf(recordsOf(layout), delimiter, mark, lineEnd), encoding);
  return { bytes, reading: readLab(bytes, 'lab/export.csv') };
}

describe('the same 60 results in every layout, encoding, delimiter and decimal mark', () => {
  it('are 60 results of four samples', () => {
    expect(FIGURES).toHaveLength(60);
    expect(new Set(expected).size).toBe(60);
  });

  for (const layout of LAYOUTS) {
    for (const encoding of ENCODINGS) {
      it(`${layout}, ${encoding}: four delimiters, two decimal marks, three line ends`, () => {
        for (const delimiter of DELIMITERS) {
          for (const mark of ['.', ','] as const) {
            for (const lineEnd of LINE_ENDS) {
              const { reading } = read(layout, delimiter, mark, lineEnd, encoding);
              const errors = reading.findings.filter(({ level }) => level !== 'note');
              expect(errors, `${delimiter} ${mark}`).toEqual([]);
              expect(statements(reading), `${delimiter} ${mark}`).toEqual(expected);
            }
          }
        }
      });
    }

    it(`${layout}: the sidecar that check offers reads the same again`, () => {
      const { bytes, reading } = read(layout, ';', ',', '\r\n', 'utf-16le');
      const again = readLab(bytes, 'lab/export.csv', reading.file.proposal);
      expect(again.findings.filter(({ level }) => level !== 'note')).toEqual([]);
      expect(statements(again)).toEqual(expected);
      expect(again.file.proposal).toBeNull();
    });
  }

  it('a preamble, a units row, a footer and a DOS end mark change nothing', () => {
    const records = recordsOf('analytes across');
    const bare = (records[0] ?? []).map((cell) => cell.replace(/ \(.*$/, ''));
    const units = (records[0] ?? []).map((cell) => /\((.*)\)/.exec(cell)?.[1] ?? '');
    const preamble = 'Invented laboratory\nJob 7, page 1\n\n';
    const body = textOf([bare, units, ...records.slice(1)], ',', '.', '\n');
    const footer = '\n"ND: not detected, see notes"\nSigned,J. Doe\nEnd of report\n\u001a';
    const reading = readLab(encode(preamble + body + footer, 'utf-8'), 'lab/export.csv');
    expect(statements(reading)).toEqual(expected);
    expect(reading.file.leftOut).toEqual([{ reason: 'footer', count: 3 }]);
  });

  it('line breaks inside header cells change nothing', () => {
    const [header = [], ...rows] = recordsOf('analytes across');
    const broken = header.map((cell) =>
      cell.includes(' (') ? `"${cell.replace(' (', '\n(')}"` : cell,
    );
    const text = `${broken.join(',')}\n${textOf(rows, ',', '.', '\n')}`;
    expect(statements(readLab(encode(text, 'utf-8'), 'lab/export.csv'))).toEqual(expected);
  });
});
