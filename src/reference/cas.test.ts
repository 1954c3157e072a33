import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { casCheckDigit, readCas } from './cas.ts';

function problemOf(text: string): string {
  const reading = readCas(text);
  return reading.kind === 'problem' ? reading.problem : reading.kind;
}

describe('reading a CAS number', () => {
  it('drops a label and leading zeros and takes dashes of any kind', () => {
    for (const text of [
      '7439-92-1',
      ' 007439-92-1',
      'CAS 7439-92-1',
      '7439–92–1',
      '7439 - 92 - 1',
    ]) {
      expect(readCas(text)).toEqual({ kind: 'cas', cas: '7439-92-1' });
    }
  });

  it('knows the marks that stand for no number', () => {
    for (const text of ['', '  ', '-', 'N/A', 'n/a', 'none']) {
      expect(readCas(text)).toEqual({ kind: 'none' });
    }
  });

  it('tells a wrong digit and names the right one, without repairing it', () => {
    const reading = readCas('7439-92-2');
    expect(reading.kind === 'problem' && reading.problem).toBe('check-digit');
    expect(reading.kind === 'problem' && reading.message).toContain('should be 1');
  });

  it('tells a number that a spreadsheet turned into a date', () => {
    for (const text of ['7/5/04', '10/20/21', '05-Jul-04', '2004-07-05', '2004-07-05 00:00:00']) {
      expect(problemOf(text)).toBe('date');
    }
  });

  it('tells other text', () => {
    for (const text of ['lead', '7439-92', '7439921', '1-2-3', 'NaN']) {
      expect(problemOf(text)).toBe('form');
    }
  });

  it('always notices a wrong digit beside the check digit', () => {
    // That digit has the weight 1; with an even weight or 5 some changes escape the modulus 10.
    const property = fc.property(fc.integer({ min: 10, max: 9_999_999 }), (number) => {
      const digits = String(number);
      const last = Number(digits.at(-1));
      const changed = digits.slice(0, -1) + String((last + 1) % 10);
      expect(casCheckDigit(changed)).not.toBe(casCheckDigit(digits));
    });
    fc.assert(property, { seed: 1, numRuns: 300 });
  });
});
