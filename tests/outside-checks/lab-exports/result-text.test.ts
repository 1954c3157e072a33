import { describe, expect, it } from 'vitest';
import { intervalOf, type QualifierList } from '../../../src/model/index.ts';
import { judgeResult, type ResultCells } from '../../../src/normalise/judge-result.ts';
import type { NumberMarks } from '../../../src/normalise/lab-results/lab-decimal.ts';
import { letterReader } from '../../../src/normalise/lab-results/letter-meaning.ts';
import { readUnit } from '../../../src/reference/index.ts';
import { readFixture } from './read-fixture.ts';

interface Row {
  readonly text: string;
  readonly kind: string;
  readonly lower_bound: string;
  readonly upper_bound: string;
  readonly qualifier: string;
  readonly language: string;
  readonly source: string;
}

/** Invented limits, below and above the figures of the rows that speak of limits. */
const MDL = 0.2;
const RL = 1.7;

const rows = readFixture('result-text.csv') as unknown as readonly Row[];

/** Rows that describe a pair of cells, or a code that stands beside a figure. */
const BESIDE_A_FIGURE: ReadonlySet<string> = new Set(
  [
    'J-R',
    'LTGTE',
    'K',
    'KK',
    'LL',
    '2-5B',
    'R7',
    'LK,R7,VC',
    'BA,LE,LK,V',
    'GT',
    'M (remark)',
  ].concat(
    ['LT;MDL', 'IDL;LT', 'J;U', 'LR;LT', 'J;RPO', '='],
    ['Value Decensored', 'Value affected by contamination', 'High Moisture'],
  ),
);
/** The figure such a code stands beside: between the two limits. */
const FIGURE = 0.62;

const WITHOUT_RANGE = ['Avg 4.2', '4.2 avg', '4.2 (mean of 3)'];
/** Asked about or checked below: V is one thing in one list and another in the next. */
const ASKED = ['-0.2', 'BA,LE,LK,V'];
const QC_SIGNS = ['SU', 'IN', 'SU in a sign column'];

function listOf(row: Row): QualifierList | null {
  if (row.qualifier.startsWith('C N P')) return 'epa-nfg';
  if (row.text.startsWith('M')) return 'usgs';
  if (['lab-defined', 'U', 'UJ', 'J', 'UB', 'UD'].includes(row.qualifier)) return null;
  return row.qualifier === '' ? null : 'wqx';
}

function marksOf(row: Row): NumberMarks {
  const decimal = /thousands comma|1,234|12,500/.test(row.text) ? '.' : null;
  return { decimal, thousands: null };
}

interface Limits {
  readonly mdl: number | null;
  readonly rl: number | null;
}
const BOTH: Limits = { mdl: MDL, rl: RL };
const ONLY_RL: Limits = { mdl: null, rl: RL };
const NONE: Limits = { mdl: null, rl: null };

const isUnit = (text: string): boolean => readUnit(text, {}).kind === 'unit' && text.length > 1;

function cellsOf(row: Row, limits: Limits): ResultCells {
  const base = {
    result: row.text,
    sign: '',
    qualifier: '',
    condition: '',
    ...limits,
    isCount: /absence|presence|TNTC/.test(`${row.kind} ${row.qualifier}`),
    isUnit,
    marks: marksOf(row),
    meaningOf: letterReader(listOf(row), {}),
    coverageFactor: 2,
  };
  if (row.text.startsWith('ND (J,DX)')) {
    return { ...base, sign: 'ND', result: '0.87', qualifier: 'J,DX' };
  }
  if (row.text.startsWith('ND in a sign')) return { ...base, sign: 'ND', result: '0' };
  if (row.text.startsWith('< in a sign')) return { ...base, sign: '<', result: String(FIGURE) };
  if (row.text === '=') return { ...base, sign: '=', result: '2.5' };
  if (/^(?:Value|High)/.test(row.text)) return { ...base, condition: row.text, result: '2.5' };
  if (BESIDE_A_FIGURE.has(row.text)) {
    const isPlain = row.qualifier === 'lab-defined';
    const qualifier = row.text.replace(' (remark)', '');
    return { ...base, qualifier, result: isPlain ? '2.5' : String(FIGURE) };
  }
  return base;
}

/** The printed number of a cell, read without the reader under test. */
function printed(text: string): number {
  const plain = /1'234/.test(text)
    ? '1234'
    : text.replace(/(\d) (?=\d{3})/, '$1').replace(/^(\d+),(\d{3})(?=\.|$)/, '$1$2');
  const match = /-?\d*[.,]?\d+(?:[eE][+-]?\d+)?/.exec(plain.replace(/(?<=\d),(?=\d)/, '.'));
  return Number(match?.[0] ?? Number.NaN);
}

function bound(rule: string, row: Row, cells: ResultCells): number | 'none' {
  const x = printed(cells.result) || printed(row.text);
  // No method names its maximum here: one colony, or the figure the cell itself prints.
  if (rule.startsWith('the countable maximum')) return row.text.includes('200') ? 200 : 1;
  if (rule.startsWith('0 (EMPC) or x')) return row.text.includes('EMPC') ? 0 : x;
  const options = rule.replace(/ \(.*$/, '').split(' else ');
  for (const option of options) {
    const word = option.trim();
    if (word === '0') return 0;
    if (word === 'x' || word === 'x without commas') return x;
    if (word === 'inf') return Number.POSITIVE_INFINITY;
    if (word === '1' || word.startsWith('<1 per')) return 1;
    if (word === '0.8') return 0.8;
    if ((word === 'MDL' || word === 'LD') && cells.mdl !== null) return cells.mdl;
    if ((word === 'RL' || word === 'LQ') && cells.rl !== null) return cells.rl;
  }
  return 'none';
}

/** Rows whose interval follows from the printed text and the limits by the rule of the table. */
const RULED = ['non-detect', 'detected-not-quantified', 'above-range', 'estimate', 'absence'];
const isSpecial = (row: Row): boolean =>
  ['E', 'KK LL'].includes(row.qualifier) ||
  row.text === 'Not Present' ||
  row.qualifier === '±' ||
  /\(BG\)|x or MDL/.test(row.upper_bound) ||
  row.lower_bound.startsWith('upper limit') ||
  row.text === '>0';

describe('result cells of public laboratory and agency exports (table result-text.csv, 386 rows)', () => {
  it('has all 386 rows with their kinds', () => {
    expect(rows).toHaveLength(386);
  });

  for (const row of rows) {
    const title = `"${row.text}" (${row.language}; ${row.source}) is ${row.kind} [${row.lower_bound}, ${row.upper_bound}]`;
    if (QC_SIGNS.includes(row.text)) continue;
    if (RULED.includes(row.kind) && !isSpecial(row)) {
      it(title, () => {
        for (const limits of limitsFor(row)) checkRuled(row, limits);
      });
    } else if (row.kind === 'quantified' && row.qualifier !== '±' && !ASKED.includes(row.text)) {
      it(title, () => checkQuantified(row));
    } else if (['not-tested', 'rejected', 'text'].includes(row.kind) && row.text !== '-9') {
      it(title, () => checkMissing(row));
    } else if (row.kind === 'range') {
      it(title, () => checkRange(row));
    }
  }
});

function limitsFor(row: Row): readonly Limits[] {
  const rule = `${row.lower_bound} ${row.upper_bound}`;
  if (!/MDL|RL|LD|LQ/.test(rule)) return [NONE];
  // "A else B": with both limits A holds, with the second one only B does.
  return /MDL else|LD/.test(rule) && !/^MDL$|^LD$/.test(row.lower_bound) && /RL|LQ/.test(rule)
    ? [BOTH, ONLY_RL]
    : [BOTH];
}

function checkRuled(row: Row, limits: Limits): void {
  const cells = cellsOf(row, limits);
  const { result } = judgeResult(cells);
  expect(result, 'a result').not.toBeNull();
  if (result === null) return;
  const interval = intervalOf(result, row.upper_bound === 'RL' ? 'reporting' : 'detection');
  // Exact: the bounds are printed figures or the limits of this test.
  expect(interval?.low).toBe(bound(row.lower_bound, row, cells));
  expect(interval?.high).toBe(bound(row.upper_bound, row, cells));
}

function checkQuantified(row: Row): void {
  const { result, cellUnit } = judgeResult(cellsOf(row, NONE));
  if (row.text === '<0.5 ug/L') {
    expect(result).toMatchObject({ kind: 'notDetected', rl: 0.5 });
    expect(cellUnit).toBe('ug/L');
    return;
  }
  const x = BESIDE_A_FIGURE.has(row.text) ? 2.5 : printed(row.text);
  expect(result).toMatchObject({ kind: 'quantified', value: x });
}

function checkMissing(row: Row): void {
  const reason = { 'not-tested': 'not-tested', rejected: 'rejected', text: 'verdict' }[row.kind];
  const { result } = judgeResult(cellsOf(row, NONE));
  expect(result).toMatchObject({ kind: 'missing', reason });
}

function checkRange(row: Row): void {
  const { result, findings } = judgeResult(cellsOf(row, NONE));
  if (WITHOUT_RANGE.includes(row.text)) {
    // The printed text holds no range, so that its bounds are asked for.
    expect(result).toBeNull();
    expect(findings.map(({ code }) => code)).toEqual(['result-unreadable']);
    return;
  }
  const numbers = row.text
    .replace(/^.*\((.*)\)$/, '$1')
    .replace(/nd|</gi, '0*')
    .split(/-|–|to/)
    .map((part) => (part.includes('*') ? 0 : Number(part)));
  expect(result === null ? null : intervalOf(result, 'reporting')).toEqual({
    low: Math.min(...numbers),
    high: Math.max(...numbers),
  });
  expect(findings.map(({ code }) => code)).toEqual(['result-range']);
}

const judged = (parts: Partial<ResultCells>) =>
  judgeResult({
    result: '',
    sign: '',
    qualifier: '',
    mdl: null,
    rl: null,
    isCount: false,
    isUnit,
    ...parts,
  });

describe('rows of the same table that ask, or depend on the file', () => {
  it('zero for a chemical: not detected up to RL, else MDL, with a finding; asked without limits', () => {
    for (const result of ['0', '0.00', '0.0']) {
      expect(judged({ result, mdl: MDL, rl: RL }).result).toMatchObject({
        kind: 'notDetected',
        mdl: MDL,
        rl: RL,
      });
      expect(judged({ result, mdl: MDL }).result).toMatchObject({ kind: 'notDetected', mdl: MDL });
      expect(judged({ result }).result).toBeNull();
      expect(judged({ result, isCount: true }).result).toMatchObject({
        kind: 'notDetected',
        rl: 1,
      });
    }
  });

  it('313.174 and 1,234 have two readings until the file proves its marks', () => {
    for (const result of ['313.174', '1,234', '12,500']) {
      expect(judged({ result }).result).toBeNull();
      expect(judged({ result }).findings[0]?.code).toBe('decimal-unclear');
    }
    const comma = { decimal: ',', thousands: null } as const;
    expect(judged({ result: '313.174', marks: comma }).result).toMatchObject({ value: 313174 });
    const point = { decimal: '.', thousands: null } as const;
    expect(judged({ result: '313.174', marks: point }).result).toMatchObject({ value: 313.174 });
  });

  it('-9 is asked about, never a measurement', () => {
    expect(judged({ result: '-9' }).result).toBeNull();
  });

  it('-0.2 is not detected up to its limit, or up to x + u', () => {
    expect(judged({ result: '-0.2', rl: 0.5 }).result).toMatchObject({ kind: 'notDetected' });
    // -0.2 + 0.5, to the rounding of one addition
    const { result } = judged({ result: '-0.2 ± 0.5' });
    expect(result?.rl).toBeCloseTo(0.3, 12);
  });

  it('plus-minus becomes a standard uncertainty with a stated coverage factor only', () => {
    for (const [result, value, spread] of [
      ['3.1 ± 0.4', 3.1, 0.4],
      ['3.1 +/- 0.4', 3.1, 0.4],
      ['3.1+-0.4', 3.1, 0.4],
      ['3.1±0.4 pCi/L', 3.1, 0.4],
      ['3.1 (0.4)', 3.1, 0.4],
      ['3,1 ± 0,4', 3.1, 0.4],
      ['0.5 ± 20%', 0.5, 0.1],
      ['12 ± 15 %', 12, 1.8],
    ] as const) {
      const unknown = judged({ result });
      expect(unknown.result).toMatchObject({ value, standardUncertainty: null });
      expect(unknown.findings[0]?.code).toBe('uncertainty-coverage-unknown');
      const known = judged({ result, coverageFactor: 2 }).result;
      expect(known).toMatchObject({ value, standardUncertainty: spread / 2 });
    }
  });

  it('E is above the range in one list, estimated in another, and asked about without a list', () => {
    for (const result of ['0.62 E', 'E 0.62', '250 E']) {
      const asked = judged({ result });
      expect(asked.result).toBeNull();
      expect(asked.findings[0]?.code).toBe('result-unreadable');
      const above = judged({ result, meaningOf: letterReader('epa-nfg', {}) }).result;
      expect(above?.kind).toBe('aboveRange');
    }
    const usgs = judged({
      result: '0.62 E',
      mdl: MDL,
      rl: RL,
      meaningOf: letterReader('usgs', {}),
    });
    expect(usgs.result).toMatchObject({ kind: 'notQuantified', mdl: MDL, rl: RL });
  });

  it('K, KK and LL of the WQX list are below, below and above the figure', () => {
    const wqx = letterReader('wqx', {});
    for (const qualifier of ['K', 'KK']) {
      expect(judged({ result: '0.62', qualifier, meaningOf: wqx }).result).toMatchObject({
        kind: 'notDetected',
        rl: 0.62,
      });
      expect(judged({ result: '0.62', qualifier }).result).toBeNull();
    }
    expect(judged({ result: '0.62', qualifier: 'LL', meaningOf: wqx }).result).toMatchObject({
      kind: 'aboveRange',
      limit: 0.62,
    });
  });

  it('two codes joined: the strictest holds; J;U is between only where the figure lies between', () => {
    const meaningOf = letterReader('wqx', {});
    for (const qualifier of ['LT;MDL', 'IDL;LT', 'LR;LT']) {
      expect(judged({ result: '0.62', qualifier, meaningOf }).result?.kind).toBe('notDetected');
    }
    const both = { qualifier: 'J;U', meaningOf, mdl: MDL, rl: RL };
    expect(judged({ ...both, result: '0.62' }).result?.kind).toBe('notQuantified');
    expect(judged({ ...both, result: '0.1' }).result?.kind).toBe('notDetected');
  });

  it('a cut-off flag that means two things in two lists is asked about; the others are kept', () => {
    const cells = { result: '2.5', qualifier: 'BA,LE,LK,V' };
    expect(judged(cells).result).toBeNull();
    const meaningOf = letterReader('lab', { V: 'note' });
    expect(judged({ ...cells, meaningOf }).result).toMatchObject({
      kind: 'quantified',
      value: 2.5,
      qualifiers: ['BA', 'LE', 'LK', 'V'],
    });
  });

  it('above the upper limit: at least the printed figure, and asked about without one', () => {
    for (const condition of ['Present Above Quantification Limit', 'Above Operating Range']) {
      expect(judged({ result: '', condition }).result).toBeNull();
      expect(judged({ result: '>6000', condition }).result).toMatchObject({ limit: 6000 });
      expect(judged({ result: '6000', condition }).result).toMatchObject({
        kind: 'aboveRange',
        limit: 6000,
      });
    }
  });

  it('BG and NG name the reporting and the detection limit', () => {
    for (const result of ['<BG', '< BG', 'u.d.B.']) {
      expect(judged({ result, mdl: MDL, rl: RL }).result).toMatchObject({ mdl: null, rl: RL });
    }
    for (const result of ['<NG', 'u.d.N.']) {
      expect(judged({ result, mdl: MDL, rl: RL }).result).toMatchObject({ mdl: MDL, rl: RL });
    }
  });

  it('n.d. in a file with decimal commas is asked about until the sidecar says what it means', () => {
    const marks = { decimal: ',', thousands: null } as const;
    expect(judged({ result: 'n.d.', rl: RL, marks }).result).toBeNull();
    expect(judged({ result: 'n.d.', rl: RL, marks, notDetected: 'reporting' }).result?.kind).toBe(
      'notDetected',
    );
    expect(judged({ result: 'n.d.', marks, notDetected: 'not-tested' }).result?.kind).toBe(
      'missing',
    );
    expect(judged({ result: 'n.d.', rl: RL }).result?.kind).toBe('notDetected');
  });

  it('words of another matter, dates, proportions and "not determined" are asked about', () => {
    const asked = ['n.b.', 'nicht bestimmt', 'n.best.', '1:78', '1:10', '01-Feb', '7/5/04'];
    for (const result of [...asked, '10/20/21', '2327-02-08', '01/02/1918']) {
      expect(judged({ result }).result, result).toBeNull();
      expect(judged({ result }).findings[0]?.code).toBe('result-unreadable');
    }
  });

  it('a unit in the result cell is a shifted row', () => {
    for (const result of ['mg/l', 'PSS', '%']) {
      const judgement = judged({ result, isUnit: (text) => ['mg/l', 'PSS', '%'].includes(text) });
      expect(judgement.findings[0]?.code).toBe('row-shifted');
    }
  });

  it('a presence has no upper end; for bacteria it is at least one', () => {
    for (const row of rows.filter(({ kind }) => kind === 'presence')) {
      const { result } = judged({ result: row.text, isCount: true });
      expect(result, row.text).toMatchObject({ kind: 'aboveRange', limit: 1 });
    }
  });

  it('a blank cell is no result by itself, and a non-detect beside U or a condition', () => {
    expect(judged({ result: '' }).result).toMatchObject({ kind: 'missing', reason: 'blank' });
    expect(judged({ result: '   ', qualifier: 'U', rl: RL }).result?.kind).toBe('notDetected');
    expect(judged({ result: '', condition: 'Not Detected', rl: RL }).result?.kind).toBe(
      'notDetected',
    );
    expect(judged({ result: 'Not Present' }).findings[0]?.code).toBe('result-limit-missing');
  });

  it('0.79990000000000006 is read as printed; that one value repeats is found over the file', () => {
    expect(judged({ result: '0.79990000000000006' }).result).toMatchObject({ value: 0.7999 });
  });
});
