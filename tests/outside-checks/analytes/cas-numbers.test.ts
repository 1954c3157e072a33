import { describe, expect, it } from 'vitest';
import { analyteIndex, lookUp, readCas } from '../../../src/reference/index.ts';

/** The rule written out a second time: last digit first, weights 1, 2, 3 …, modulo 10. */
function followsRule(cas: string): boolean {
  const digits = [...cas.replaceAll('-', '')].map(Number).reverse();
  const [check, ...others] = digits;
  return others.reduce((sum, digit, i) => sum + digit * (i + 1), 0) % 10 === check;
}

const index = analyteIndex([]);
const numbers = index.analytes.flatMap(({ key, cas }) => (cas === null ? [] : [{ key, cas }]));
const related = index.analytes.flatMap(({ key }) =>
  lookUp(key, index).found.flatMap((facts) => facts.relatedCas.map(({ cas }) => ({ key, cas }))),
);

describe('CAS, Check Digit Verification of CAS Registry Numbers: rule, from memory', () => {
  it('the example of the rule, 107-07-3, passes and its neighbours fail', () => {
    expect(readCas('107-07-3').kind).toBe('cas');
    for (const digit of '012456789') expect(readCas(`107-07-${digit}`).kind).toBe('problem');
  });

  it('covers 299 numbers of the tables', () => {
    expect(numbers.length).toBe(299);
    expect(new Set(numbers.map(({ cas }) => cas)).size).toBe(299);
    expect(related.length).toBeGreaterThan(30);
  });

  for (const { key, cas } of numbers) {
    it(`CAS Registry: ${cas}, ${key}`, () => {
      expect(followsRule(cas)).toBe(true);
      expect(readCas(cas)).toEqual({ kind: 'cas', cas });
    });
  }

  it('CAS Registry: every number of a related form follows the rule', () => {
    for (const { key, cas } of related) {
      expect([key, cas, followsRule(cas), readCas(cas).kind]).toEqual([key, cas, true, 'cas']);
    }
  });
});
