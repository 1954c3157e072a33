import { describe, expect, it } from 'vitest';
import {
  type Dimension,
  ratioValue,
  readUnit,
  type UnitContext,
} from '../../../src/reference/index.ts';
import { halfLastDigit, readCsv } from './read-fixture.ts';

type Column =
  | 'spelling'
  | 'canonical_unit'
  | 'factor'
  | 'offset'
  | 'dimension'
  | 'basis'
  | 'certainty'
  | 'source';
type Row = Record<Column, string>;

const ROWS = readCsv<Column>('unit-spellings.csv');

/** The dimensions of the collection by the names used here. */
const DIMENSIONS: Readonly<Record<string, Dimension>> = {
  'mass concentration': 'mass-concentration',
  'amount concentration': 'amount-concentration',
  'charge concentration': 'charge-concentration',
  hardness: 'hardness',
  conductivity: 'conductivity',
  'meter TDS': 'meter-tds',
  'turbidity (white light)': 'turbidity-white',
  'turbidity (infra-red)': 'turbidity-infrared',
  color: 'colour',
  odor: 'odour',
  pH: 'ph',
  temperature: 'temperature',
  pressure: 'pressure',
  'most probable number': 'most-probable-number',
  'plate count': 'plate-count',
  count: 'count',
  'plaque count': 'plaque-count',
  'gene copies': 'gene-copies',
  presence: 'presence',
  'log reduction': 'log-reduction',
  'activity concentration': 'activity-concentration',
  'fibre count': 'fibre-count',
  absorbance: 'absorbance',
  'specific absorbance': 'specific-absorbance',
  transmittance: 'transmittance',
  potential: 'potential',
  'mass fraction': 'salinity',
  ratio: 'ratio',
  'QC recovery': 'recovery',
  saturation: 'saturation',
  volume: 'volume',
  mass: 'mass',
  time: 'time',
  flow: 'flow',
};

function dimensionOf(row: Row): Dimension | undefined {
  if (row.dimension === 'power or energy') return row.factor.endsWith('J') ? 'energy' : 'power';
  if (row.dimension === 'count' && row.canonical_unit.includes('cysts')) return 'cyst-count';
  if (row.spelling === 'Wh' || row.spelling === 'kWh') return 'energy';
  return DIMENSIONS[row.dimension];
}

/** What a column that holds the quantity of the row says, in US measures. */
function contextOf(row: Row): UnitContext {
  const dimension = dimensionOf(row);
  return dimension === undefined ? { measures: 'us' } : { dimension, measures: 'us' };
}

const withCertainty = (certainty: string) => ROWS.filter((row) => row.certainty === certainty);

describe('562 unit spellings collected from public water-data exports and usage (2026)', () => {
  it('come as 460 sure, 65 read in a context, 30 asked about and 7 refused', () => {
    expect(ROWS.length).toBe(562);
    const counts = ['sure', 'context', 'ask', 'refuse'].map((word) => withCertainty(word).length);
    expect(counts).toEqual([460, 65, 30, 7]);
  });

  it('marked sure: all read with dimension, basis and factor of the collection', () => {
    for (const row of withCertainty('sure')) {
      const reading = readUnit(row.spelling, contextOf(row));
      if (reading.kind === 'problem') throw new Error(`${row.spelling}: ${reading.message}`);
      const { unit } = reading;
      expect([row.spelling, unit.dimension]).toEqual([row.spelling, dimensionOf(row)]);
      expect([row.spelling, unit.basis ?? '']).toEqual([row.spelling, row.basis]);
      // The collection takes 365.25 days for this one and 365.2425 days for every other year.
      if (row.spelling === 'kWh/yr') continue;
      const wanted = Number(row.factor.replace(/ [JW]$/, ''));
      const got = ratioValue(unit.toBase);
      // Half a unit in the last printed digit, and never more than 5 parts in 100000: short
      // factors such as 0.001 are exact, 10.009 and 14.254 are rounded.
      const allowed = Math.min(halfLastDigit(row.factor.replace(/ [JW]$/, '')), 5e-5 * wanted);
      expect([row.spelling, Math.abs(got - wanted) <= allowed + 1e-15]).toEqual([
        row.spelling,
        true,
      ]);
      if (row.offset !== '') expect(ratioValue(unit.offset)).toBeCloseTo(Number(row.offset), 9);
    }
  });

  it('marked sure: a kilowatt-hour per year of 365.2425 days is 2 parts in 100000 above the list', () => {
    const row = ROWS.find(({ spelling }) => spelling === 'kWh/yr');
    const reading = readUnit('kWh/yr', {});
    const factor = reading.kind === 'unit' ? ratioValue(reading.unit.toBase) : Number.NaN;
    // Exact by definition: 3.6e6 J in 31556952 s.
    expect(factor).toBe(3600000 / 31556952);
    // The list prints six digits.
    const days = 365.25 / 365.2425;
    expect(factor / Number(row?.factor.replace(' W', ''))).toBeCloseTo(days, 5);
  });

  it('marked sure: all but five read without a context; those five mean two things', () => {
    const silent = withCertainty('sure').filter(
      (row) => readUnit(row.spelling, { measures: 'us' }).kind === 'problem',
    );
    expect(silent.map(({ spelling }) => spelling)).toEqual(['mS', 'EC', 'CF', 'L/m', 'l/m']);
  });

  it('marked sure: seven words of volume ask for the measures of the bench', () => {
    const asking = withCertainty('sure').filter((row) => {
      const reading = readUnit(row.spelling, {});
      return reading.kind === 'problem' && reading.problem === 'measures-missing';
    });
    expect(asking.map(({ spelling }) => spelling)).toEqual([
      'fl oz',
      'fl. oz.',
      'floz',
      'qt',
      'quart',
      'tsp',
      'tbsp',
    ]);
  });

  it('marked context: without one only repaired signs and species behind a unit are read', () => {
    const read = withCertainty('context').filter(
      (row) => readUnit(row.spelling, {}).kind === 'unit',
    );
    expect(read.map(({ spelling }) => spelling)).toEqual([
      'µg/l Pb',
      'mg/L Na',
      'mg/l N',
      'mg/l Cl',
      'Âµg/L',
      'Âµg/l',
      'Î¼g/L',
      '&micro;g/L',
      '&mu;g/L',
      '\\u00b5g/L',
    ]);
  });

  it('marked context: where the column proves the dimension the unit has it', () => {
    let read = 0;
    for (const row of withCertainty('context')) {
      const reading = readUnit(row.spelling, contextOf(row));
      if (reading.kind === 'problem') continue;
      read += 1;
      expect([row.spelling, reading.unit.dimension]).toEqual([row.spelling, dimensionOf(row)]);
    }
    expect(read).toBe(50);
  });

  it('marked ask: none is read, with or without the dimension of the collection', () => {
    for (const row of withCertainty('ask')) {
      for (const context of [{}, contextOf(row)]) {
        expect([row.spelling, readUnit(row.spelling, context).kind]).toEqual([
          row.spelling,
          'problem',
        ]);
      }
    }
  });

  it('marked refuse: solids and doses are refused', () => {
    for (const row of withCertainty('refuse')) {
      const reading = readUnit(row.spelling, {});
      expect([row.spelling, reading.kind === 'problem' && reading.problem]).toEqual([
        row.spelling,
        'refused',
      ]);
    }
  });
});
