import { describe, expect, it } from 'vitest';
import { intervalOf } from '../model/index.ts';
import { judgeResult, type ResultCells } from './judge-result.ts';

function judge(cells: Partial<ResultCells>) {
  return judgeResult({
    result: '',
    sign: '',
    qualifier: '',
    mdl: null,
    rl: null,
    isCount: false,
    isUnit: (text) => ['mg/L', 'ug/L', 'MPN/100mL'].includes(text),
    ...cells,
  });
}
const codes = (cells: Partial<ResultCells>) => judge(cells).findings.map(({ code }) => code);
const LIMITS = { mdl: 0.2, rl: 1 };

describe('sign, value, limits and letters judged together', () => {
  it('a figure at or above the reporting limit is quantified', () => {
    expect(judge({ result: '1', ...LIMITS }).result).toMatchObject({
      kind: 'quantified',
      value: 1,
    });
  });

  it('a figure below the reporting limit is detected and not quantified', () => {
    const { result } = judge({ result: '0.62', ...LIMITS });
    expect(result).toMatchObject({ kind: 'notQuantified', stated: 0.62 });
    expect(result === null ? null : intervalOf(result, 'detection')).toEqual({ low: 0.2, high: 1 });
  });

  it('U beside a number makes it a limit, J beside one leaves it a measurement', () => {
    expect(judge({ result: '5', qualifier: 'U' }).result).toMatchObject({
      kind: 'notDetected',
      rl: 5,
    });
    expect(judge({ result: '5', qualifier: 'J', rl: 1 }).result).toMatchObject({
      kind: 'quantified',
      value: 5,
      isEstimate: true,
    });
  });

  it('ND with a figure between the limits and J was detected and not quantified', () => {
    const cells = { sign: 'ND', result: '0.87', qualifier: 'J,DX', mdl: 0.49, rl: 1.7 };
    expect(judge(cells).result).toMatchObject({ kind: 'notQuantified', mdl: 0.49, rl: 1.7 });
    expect(judge({ ...cells, qualifier: '' }).result?.kind).toBe('notDetected');
  });

  it('a sign and a cell that contradict each other are an error', () => {
    expect(codes({ sign: '>', result: '<0.5' })).toEqual(['result-sign-clash']);
    expect(codes({ sign: '<', result: '>5' })).toEqual(['result-sign-clash']);
    expect(codes({ sign: '>', result: '5', qualifier: 'U' })).toEqual(['result-sign-clash']);
  });

  it('a non-detect without any limit is an error', () => {
    expect(codes({ result: 'ND' })).toEqual(['result-limit-missing']);
    expect(codes({ result: 'BRL', mdl: 0.2 })).toEqual(['result-limit-missing']);
  });

  it('a limit above the reporting limit beside it is used and reported', () => {
    const { result, findings } = judge({ result: '<5', ...LIMITS });
    expect(result).toMatchObject({ kind: 'notDetected', rl: 5 });
    expect(findings.map(({ code }) => code)).toEqual(['result-limit-order']);
  });

  it('letters with two meanings are asked about and do not matter beside U', () => {
    for (const letter of ['E', 'B', 'K', 'A', 'T', 'V']) {
      expect(judge({ result: '1.2', qualifier: letter }).result, letter).toBeNull();
      expect(judge({ result: '1.2', qualifier: `U,${letter}` }).result?.kind, letter).toBe(
        'notDetected',
      );
    }
  });

  it('unknown letters are kept and reported', () => {
    const { result, findings } = judge({ result: '1.2 Q7', rl: 1 });
    expect(result?.qualifiers).toEqual(['Q7']);
    expect(findings.map(({ code }) => code)).toEqual(['result-qualifier-unknown']);
  });

  it('a second figure, a power of ten or a remark behind a figure is never dropped', () => {
    for (const result of ['12 34', '0.5; 0.7', '1.2 E3', '1.2 x10^3', '5 (spilled)', '<0.5 - <1']) {
      expect(judge({ result }).result, result).toBeNull();
      expect(codes({ result }), result).toEqual(['result-unreadable']);
    }
  });

  it('a unit behind the figure is given to the row, with letters behind it', () => {
    expect(judge({ result: '5.0 mg/L' }).cellUnit).toBe('mg/L');
    const both = judge({ result: '5.0 mg/L J', rl: 1 });
    expect([both.cellUnit, both.result?.qualifiers]).toEqual(['mg/L', ['J']]);
  });

  it('A and P are absent and present for bacteria, and asked about for a chemical', () => {
    expect(judge({ result: 'A', isCount: true }).result).toMatchObject({
      kind: 'notDetected',
      rl: 1,
    });
    expect(judge({ result: 'P', isCount: true }).result).toMatchObject({
      kind: 'aboveRange',
      limit: 1,
    });
    expect(judge({ result: 'A', rl: 1 }).result).toBeNull();
    expect(judge({ result: 'P', rl: 1 }).result).toBeNull();
  });

  it('too numerous to count is at least one, or the stated maximum', () => {
    expect(judge({ result: 'TNTC', isCount: true }).result).toMatchObject({ limit: 1 });
    expect(judge({ result: 'TNTC', isCount: true, countableMaximum: 200 }).result).toMatchObject({
      limit: 200,
    });
    expect(judge({ result: 'TNTC' }).result).toBeNull();
  });

  it('a temperature may be zero or below', () => {
    expect(judge({ result: '-0.5', mayBeNegative: true }).result).toMatchObject({ value: -0.5 });
    expect(judge({ result: '0', mayBeNegative: true }).result).toMatchObject({ value: 0 });
  });

  it('an uncertainty in its own column needs its coverage factor too', () => {
    const cells = { result: '3.1', uncertainty: '± 0.4' };
    expect(judge(cells).result).toMatchObject({ standardUncertainty: null });
    expect(judge({ ...cells, coverageFactor: 2 }).result).toMatchObject({
      standardUncertainty: 0.2,
    });
    expect(codes({ result: '3.1', uncertainty: 'high' })).toContain('number-unreadable');
  });
});
