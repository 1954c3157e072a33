import { describe, expect, it } from 'vitest';
import { convert, exactRatio, ratioValue } from '../../../src/reference/index.ts';
import { halfLastDigit, readCsv, unitOf } from './read-fixture.ts';

const ROWS = readCsv<'from' | 'to' | 'factor' | 'kind' | 'source'>('conversion-factors.csv');

/** How the tables spell what the collection writes out. */
const SPELLED: Readonly<Record<string, string>> = {
  'US gallon': 'US gal',
  'imperial gallon': 'imp gal',
  'US fluid ounce': 'US fl oz',
  'imperial fluid ounce': 'imp fl oz',
  'US legal cup (nutrition labelling)': 'US legal cup',
  'US pint': 'US pint',
  'US quart': 'US qt',
  'imperial pint': 'imp pint',
  'imperial quart': 'imp qt',
  'US tablespoon': 'US tbsp',
  'US teaspoon': 'US tsp',
  'cubic foot': 'ft3',
  'hundred cubic feet (CCF, HCF)': 'CCF',
  'thousand US gallons (kgal)': 'US kgal',
  'grain per imperial gallon (Clark degree, as CaCO3)': 'degClark',
  pound: 'lb',
  'ounce (avoirdupois)': 'oz (mass)',
};

function factorBetween(from: string, to: string): number {
  const source = unitOf(SPELLED[from] ?? from);
  const target = unitOf(SPELLED[to] ?? to);
  // A degree of hardness is mg/L as CaCO3, which the collection writes as mg/L.
  const sameBasis = source.dimension === 'hardness' ? unitOf('mg/L CaCO3') : target;
  const result = convert(1, source, sameBasis);
  if (result.kind === 'problem') throw new Error(result.message);
  return result.value;
}

describe('conversion factors of a collection recomputed with a general units program', () => {
  it('holds 30 factors', () => {
    expect(ROWS.length).toBe(30);
  });

  for (const { from, to, factor, kind, source } of ROWS) {
    if (from === 'grain per US gallon') continue;
    const by = source === '' ? 'definition' : source;
    // Exact: the factor is a finite decimal, so the nearest double has to come out. Derived: the
    // collection prints 9 to 16 digits, so half a unit in the last one; at least one step of doubles.
    it(`${by}: 1 ${from} in ${to}, ${kind}`, () => {
      const got = factorBetween(from, to);
      const wanted = Number(factor);
      if (kind === 'exact') expect(got).toBe(wanted);
      else {
        const allowed = Math.max(halfLastDigit(factor), 2 * Number.EPSILON * wanted);
        expect(Math.abs(got - wanted)).toBeLessThanOrEqual(allowed);
      }
    });
  }

  it('NIST Handbook 44, Appendix C: a grain on a US gallon is 17.1180610453 mg/L; the trade says 17.118', () => {
    const row = ROWS.find(({ from }) => from === 'grain per US gallon');
    const perGallon = factorBetween('grain', 'mg') / factorBetween('US gallon', 'L');
    // 12 digits printed.
    expect(Math.abs(perGallon - Number(row?.factor))).toBeLessThanOrEqual(
      halfLastDigit('0.0000000000'),
    );
    // One division against one product of divisions: one step of doubles.
    const direct = ratioValue(exactRatio('64.79891/3.785411784'));
    expect(Math.abs(direct - perGallon)).toBeLessThanOrEqual(Number.EPSILON * direct);
    // The grain of hardness is the rounded factor of the trade, as CaCO3: 4 parts in a million less.
    expect(ratioValue(unitOf('gpg').toBase)).toBe(17.118);
    expect(Math.abs(17.118 / perGallon - 1)).toBeLessThan(4e-6);
  });
});

describe('factors printed in NIST Special Publication 811 (2008), Appendix B.9', () => {
  for (const { quantity, unit, to, printed } of readCsv<'quantity' | 'unit' | 'to' | 'printed'>(
    'nist-sp811-b9.csv',
  )) {
    // Half a unit in the last printed digit.
    it(`${quantity}: 1 ${unit} is ${printed} ${to}`, () => {
      const scaled =
        to === 'kg'
          ? factorBetween(unit, 'g') / 1000
          : to === 's'
            ? factorBetween(unit, 's')
            : factorBetween(unit, to);
      const wanted = Number(printed.replaceAll(' ', ''));
      const allowed = halfLastDigit(printed) + 2 * Number.EPSILON * wanted;
      expect(Math.abs(scaled - wanted)).toBeLessThanOrEqual(allowed);
    });
  }

  it('radiology: 1 curie is 3.7E+10 Bq, so 1 pCi/L is 0.037 Bq/L; 1 rem is 1.0E-02 Sv', () => {
    expect(factorBetween('pCi/L', 'Bq/L')).toBe(0.037);
    expect(factorBetween('mrem/yr', 'mSv/yr')).toBe(0.01);
  });

  it('temperature: t/degC = (t/degF - 32)/1.8 and t/degC = T/K - 273.15', () => {
    const inCelsius = (value: number, unit: string) => {
      const result = convert(value, unitOf(unit), unitOf('degC'));
      return result.kind === 'value' ? result.value : Number.NaN;
    };
    // Whole degrees that are whole in both scales have to come out exactly.
    for (const celsius of [-40, 0, 4, 10, 15, 20, 25, 30, 100]) {
      if ((celsius * 9) % 5 === 0) expect(inCelsius((celsius * 9) / 5 + 32, 'degF')).toBe(celsius);
    }
    expect(inCelsius(273.15, 'kelvin')).toBe(0);
    expect(inCelsius(298.15, 'kelvin')).toBe(25);
  });
});

describe('NIST Handbook 44, Appendix C: exact relations between units of volume', () => {
  const relations = [
    ['US gal', 231, 'in3'],
    ['US gal', 128, 'US fl oz'],
    ['US gal', 16, 'US cup'],
    ['US gal', 4, 'US qt'],
    ['US gal', 8, 'US pint'],
    ['US cup', 8, 'US fl oz'],
    ['US tbsp', 3, 'US tsp'],
    ['imp gal', 160, 'imp fl oz'],
    ['imp gal', 8, 'imp pint'],
    ['ft3', 1728, 'in3'],
  ] as const;
  for (const [large, count, small] of relations) {
    // Whole numbers on both sides: no tolerance.
    it(`1 ${large} is ${count} ${small}, exactly`, () => {
      expect(factorBetween(large, small)).toBe(count);
    });
  }
});
