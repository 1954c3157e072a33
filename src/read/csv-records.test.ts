import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BenchError } from '../findings/index.ts';
import { forEachRecord } from './csv-records.ts';
import { sniffDelimiter } from './sniff-delimiter.ts';

function records(text: string, delimiter = ',', comments = false) {
  const found: { cells: readonly string[]; line: number }[] = [];
  forEachRecord(text, { path: 'x.csv', delimiter, comments }, (cells, line) => {
    found.push({ cells, line });
  });
  return found;
}

describe('the records of a CSV text', () => {
  it('carry the line at which they start, also behind line breaks inside cells', () => {
    expect(records('a,b\n"1\n2",x\n\nc,d')).toEqual([
      { cells: ['a', 'b'], line: 1 },
      { cells: ['1\n2', 'x'], line: 2 },
      { cells: ['c', 'd'], line: 5 },
    ]);
  });

  it('end with LF, CR LF or CR alone', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      expect(records(`a,b${end}c,d${end}`).map(({ cells }) => cells)).toEqual([
        ['a', 'b'],
        ['c', 'd'],
      ]);
    }
  });

  it('keep a quote inside a plain cell, and undouble quotes of a quoted one', () => {
    expect(records('4\'25",x\n"12""",y')[0]?.cells).toEqual(['4\'25"', 'x']);
    expect(records('"12""",y')[0]?.cells).toEqual(['12"', 'y']);
  });

  it('leave out comment lines only where comments are allowed', () => {
    expect(records('# a\nb', ',', true)).toEqual([{ cells: ['b'], line: 2 }]);
    expect(records('# a\nb')).toHaveLength(2);
  });

  it('stop where the reader has seen enough', () => {
    let seen = 0;
    forEachRecord('a\nb\nc', { path: 'x', delimiter: ',', comments: false }, () => {
      seen += 1;
      return seen < 2;
    });
    expect(seen).toBe(2);
  });

  it('name the line of a quote that is never closed or has text behind it', () => {
    for (const text of ['a\n"b', 'a\n"b"c,d']) {
      expect(() => records(text)).toThrow(BenchError);
      try {
        records(text);
      } catch (error) {
        expect((error as BenchError).finding.place.line).toBe(2);
      }
    }
  });

  it('are none for an empty text', () => {
    expect(records('')).toEqual([]);
  });

  it('agree with a second parser on any quoted table', () => {
    const cell = fc.string({
      maxLength: 6,
      unit: fc.constantFrom('a', '1', ',', '"', '\n', ' ', ';'),
    });
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), { minLength: 1 }),
        (rows) => {
          const text = rows
            .map((row) => row.map((each) => `"${each.replaceAll('"', '""')}"`).join(','))
            .join('\n');
          const other = parse(text, { relax_column_count: true, skip_empty_lines: true });
          expect(records(text).map(({ cells }) => cells)).toEqual(other);
        },
      ),
      { seed: 1, numRuns: 300 },
    );
  });
});

describe('the delimiter', () => {
  it('is the one that splits the records most steadily', () => {
    expect(sniffDelimiter('a;b;c\n1,5;2;3\n2,5;3;4\n', 'x', false)).toBe(';');
    expect(sniffDelimiter('a\tb\n1\t2\n', 'x', false)).toBe('\t');
    expect(sniffDelimiter('a|b|c\n1|2|3\n', 'x', false)).toBe('|');
    expect(sniffDelimiter('one column\n', 'x', false)).toBe(',');
  });
});
