import { describe, expect, it } from 'vitest';
import { LETTER_LISTS } from '../../../src/normalise/lab-results/letter-lists.ts';
import { CONDITION_NOTES, RESULT_WORDS } from '../../../src/normalise/lab-results/result-words.ts';
import { readUnit } from '../../../src/reference/index.ts';
import { readFixture } from './read-fixture.ts';
import { bytesOf, codes, leftOut, readLab } from './read-lab.ts';

const NAME = 'wqp-results-shepherdstown.csv';
const raw = readFixture(NAME);
const reading = readLab(bytesOf(NAME), `lab/${NAME}`);
/** Raw rows by the line at which they start; no cell of this file holds a line break before. */
const kept = new Map(reading.results.map((item) => [item.line, item]));

describe('Water Quality Portal, 672 result rows (USGS, US EPA and state agencies)', () => {
  it('reads without a sidecar: 672 rows, every one a result, left out by reason, or asked about', () => {
    expect(raw).toHaveLength(672);
    expect(reading.file.layout).toBe('long, condition column');
    expect(reading.file.rowsRead).toBe(672);
    const out = reading.file.leftOut.reduce((sum, { count }) => sum + count, 0);
    expect(reading.file.results + out).toBe(672);
    expect(codes(reading.findings)['layout-unclear']).toBeUndefined();
  });

  it('leaves out the 8 rows that are not reported', () => {
    expect(leftOut(reading.file)['not tested']).toBe(8);
  });

  it('arsenic <0.0016 mg/L with a quantitation limit of 0.005: both limits kept, 0.0016 the tighter', () => {
    const arsenic = raw.find(
      (row) => row['CharacteristicName'] === 'Arsenic' && row['ResultMeasureValue'] === '<0.0016',
    );
    expect(arsenic?.['DetectionQuantitationLimitMeasure/MeasureValue']).toBe('0.005');
    const found = reading.results.find(
      ({ analyte, result }) => analyte === 'arsenic' && result.text.startsWith('<0.0016'),
    );
    // ug/L, exact: 0.0016 and 0.005 mg/L times 1000
    expect(found?.result).toMatchObject({ kind: 'notDetected', mdl: 1.6, rl: 5 });
    expect(found?.high).toBe(1.6);
  });

  it('every kept `<` row is not detected, every `>` row above the range', () => {
    for (const [index, row] of raw.entries()) {
      const found = kept.get(index + 2);
      if (found === undefined) continue;
      const text = row['ResultMeasureValue'] ?? '';
      if (text.startsWith('<')) expect(found.result.kind, text).toBe('notDetected');
      if (text.startsWith('>')) expect(found.result.kind, text).toBe('aboveRange');
    }
    expect(raw.filter((row) => row['ResultMeasureValue']?.startsWith('<'))).toHaveLength(54);
    expect(raw.filter((row) => row['ResultMeasureValue']?.startsWith('>'))).toHaveLength(3);
  });

  it('blank results follow their condition: 102 Not Detected, 70 below quantification, 2 not quantified', () => {
    const expected: Record<string, string> = {
      'Not Detected': 'notDetected',
      'Present Below Quantification Limit': 'notQuantified',
      'Detected Not Quantified': 'notQuantified',
    };
    const counts: Record<string, number> = {};
    for (const [index, row] of raw.entries()) {
      const condition = row['ResultDetectionConditionText'] ?? '';
      if (row['ResultMeasureValue'] !== '') continue;
      counts[condition] = (counts[condition] ?? 0) + 1;
      const found = kept.get(index + 2);
      if (found !== undefined) expect(found.result.kind, condition).toBe(expected[condition]);
    }
    expect(counts).toEqual({
      'Not Detected': 102,
      'Present Below Quantification Limit': 70,
      'Detected Not Quantified': 2,
      'Not Reported': 8,
    });
  });

  it('the 50 values between the instrument and the quantitation limit keep their figure', () => {
    let values = 0;
    for (const [index, row] of raw.entries()) {
      if (row['ResultDetectionConditionText'] !== 'Between Inst Detect and Quant Limit') continue;
      values += 1;
      const found = kept.get(index + 2);
      if (found === undefined) continue;
      expect(['notQuantified', 'quantified']).toContain(found.result.kind);
      expect(found.result.stated).toBeGreaterThan(0);
      expect(found.high).toBeGreaterThanOrEqual(found.result.stated ?? Number.NaN);
    }
    expect(values).toBe(50);
  });

  it('orthophosphate reported as P and as PO4 is one measurement: 0.07 and 0.2149 mg/L', () => {
    const pairs = raw.filter(
      (row) =>
        row['CharacteristicName'] === 'Orthophosphate' &&
        ['0.07', '0.2149'].includes(row['ResultMeasureValue'] ?? ''),
    );
    expect(pairs.length).toBeGreaterThanOrEqual(2);
    const found = reading.results.filter(
      ({ analyte, result }) => analyte === 'orthophosphate' && result.text === '0.07',
    );
    for (const { sample } of found) {
      const inSample = reading.results.filter(
        (item) => item.sample === sample && item.analyte === 'orthophosphate',
      );
      expect(inSample).toHaveLength(1);
    }
    expect(leftOut(reading.file)['the same result on another basis']).toBeGreaterThan(0);
  });

  it('asks about units the analyte is not kept in and results without a rule between them', () => {
    const asked = Object.keys(leftOut(reading.file)).filter((reason) => reason.startsWith('asked'));
    expect(asked).toEqual(['asked: basis or unit', 'asked: repeated', 'asked: unit']);
  });
});

describe('US EPA, Water Quality Exchange domain lists (WQXResultDetectionConditionRef, 26 conditions)', () => {
  const rows = readFixture('wqx-detection-conditions.csv');

  it('every condition is known, with the detection type the list of the agency gives', () => {
    const wanted: Record<string, readonly string[]> = {
      'Non-Detect': ['below', 'trace', 'missing'],
      'Over-Detect': ['above'],
      Other: ['missing', 'note'],
    };
    for (const row of rows) {
      const word = (row['Name'] ?? '').toLowerCase();
      const kind = CONDITION_NOTES.has(word) ? 'note' : RESULT_WORDS.get(word)?.kind;
      expect(wanted[row['TADA.Detection_Type'] ?? ''], word).toContain(kind);
    }
    expect(rows).toHaveLength(26);
  });
});

describe('US EPA, Water Quality Exchange domain lists (WQXMeasureQualifierCodeRef, 250 codes)', () => {
  const rows = readFixture('wqx-result-qualifiers.csv');
  const meaning = (code: string) => LETTER_LISTS.wqx.get(code);

  it('every code has a meaning', () => {
    expect(rows).toHaveLength(250);
    expect(rows.filter((row) => meaning(row['Code'] ?? '') === undefined)).toEqual([]);
    expect(LETTER_LISTS.wqx.size).toBe(250);
  });

  it('the codes the agency flags as non-detect bound the figure from above', () => {
    const flagged = rows.filter((row) => row['TADA.MeasureQualifierCode.Flag'] === 'Non-Detect');
    for (const row of flagged) {
      const code = row['Code'] ?? '';
      expect(
        ['below', 'below-detection', 'below-reporting', 'between', 'upper-bound'],
        code,
      ).toContain(meaning(code));
    }
    expect(flagged).toHaveLength(10);
  });

  it('the codes the agency flags as over-detect are above the range', () => {
    const flagged = rows.filter((row) => row['TADA.MeasureQualifierCode.Flag'] === 'Over-Detect');
    expect(flagged.map((row) => meaning(row['Code'] ?? ''))).toEqual(['above', 'above', 'above']);
  });
});

describe('US EPA, Water Quality Exchange domain lists (WQXunitRef): factors against our units', () => {
  const rows = readFixture('wqx-units.csv');

  /** Errors of the published table, each with the factor that follows from the names. */
  const EXCEPTIONS: Readonly<Record<string, string>> = {
    '#/100L': '1 per 100 L is 0.001 per 100 mL; the table says 1000',
    'MPN/100L': '1 per 100 L is 0.001 per 100 mL; the table says 1000',
    'mL/sec': '1 mL/s is 3.53e-5 cubic feet per second; the table says 35.3',
    milliMolar: '1 mmol/L is 1 mmol/L; the table says 0.001',
    '0/00': 'a mass fraction, which is no concentration',
    'cfu/100mL': '1 per 100 mL is 0.01 per mL; the table says 100',
    'cfu/L': '1 per L is 0.001 per mL; the table says 1000',
    'pfu/L': '1 per L is 0.1 per 100 mL; the table says 10',
    'ueq/L': '1 ueq/L is 0.001 meq/L; the table says 1000',
    'T.U.': 'a tritium unit is 0.118 Bq/L, 3.19 pCi/L; the table rounds to 3.22',
    FNU: 'infra-red and white light do not convert; the table says 1.267',
  };

  it('agrees wherever both units are known and measure the same', () => {
    const wrong: string[] = [];
    let compared = 0;
    for (const row of rows) {
      const [code = '', target = ''] = [row['Code'], row['Target.Unit']];
      // Marks of dead entries of the list.
      if (/\*\^|\*\*\*/.test(code)) continue;
      const [from, to] = [readUnit(code, {}), readUnit(target, {})];
      if (from.kind !== 'unit' || to.kind !== 'unit') continue;
      if (from.unit.dimension !== to.unit.dimension) continue;
      if (from.unit.offset.num !== 0 || to.unit.offset.num !== 0) continue;
      const ours =
        ((from.unit.toBase.num / from.unit.toBase.den) * to.unit.toBase.den) / to.unit.toBase.num;
      const theirs = Number(row['Conversion.Factor']);
      compared += 1;
      // The list prints six or more significant digits; 1e-4 allows for its rounded factors.
      if (Math.abs(ours / theirs - 1) > 1e-4 && !(code in EXCEPTIONS)) {
        wrong.push(`${code} to ${target}: ours ${ours}, theirs ${theirs}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(compared).toBeGreaterThan(40);
  });

  it('the known errors of the table are still in it', () => {
    const factor = (code: string) =>
      Number(rows.find((row) => row['Code'] === code)?.['Conversion.Factor']);
    expect(factor('#/100L')).toBe(1000);
    expect(factor('MPN/100L')).toBe(1000);
  });
});
