import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Dimension, readUnit } from '../reference/index.ts';
import { type QuantityContext, readQuantity } from './quantity-text.ts';

function context(dimension: Dimension, more: Partial<QuantityContext> = {}): QuantityContext {
  return {
    dimensions: [dimension],
    headerUnit: null,
    measures: 'us',
    isStopwatch: false,
    ...more,
  };
}

function read(cell: string, dimension: Dimension, more: Partial<QuantityContext> = {}): number {
  const reading = readQuantity(cell, context(dimension, more));
  if ('problem' in reading) throw new Error(`${reading.problem}: ${reading.message}`);
  return reading.value.value;
}

function problemOf(
  cell: string,
  dimension: Dimension,
  more: Partial<QuantityContext> = {},
): string | null {
  const reading = readQuantity(cell, context(dimension, more));
  return 'problem' in reading ? reading.problem : null;
}

function headerUnit(spelling: string) {
  const reading = readUnit(spelling, {});
  if (reading.kind === 'problem') throw new Error(reading.message);
  return reading.unit;
}

describe('volumes as people write them', () => {
  it.each([
    ['650 ml', 0.65],
    ['650ml', 0.65],
    ['1 L 250 mL', 1.25],
    ['1 qt + 1 cup', 0.946352946 + 0.2365882365],
    ['2 x 500 ml', 1],
    ['2 × 500 ml', 1],
    ['2x500 ml', 1],
    ['1/2 gal', 1.892705892],
    ['½ gal', 1.892705892],
    ['1 1/2 cups', 0.35488235475],
    ['1½ cups', 0.35488235475],
    ['47.5 fl oz', 47.5 * 0.0295735295625],
    ['0,5 L', 0.5],
    ['~1.2 L', 1.2],
    ['1 gal', 3.785411784],
    ['2 m3', 2000],
  ])('%s', (cell, litres) => {
    // One rounding of a double each for the product and the sum.
    expect(read(cell, 'volume')).toBeCloseTo(litres, 12);
  });

  it('keeps exact factors exact: a US gallon, a fluid ounce, a tablespoon', () => {
    expect(read('1 US gal', 'volume')).toBe(3.785411784);
    expect(read('1 US fl oz', 'volume')).toBe(0.0295735295625);
    expect(read('1 US tbsp', 'volume')).toBe(0.01478676478125);
  });

  it('marks a figure that its writer calls approximate', () => {
    const reading = readQuantity('~1.2 L', context('volume'));
    expect('value' in reading && reading.value.isApproximate).toBe(true);
  });

  it('takes a bare number in the unit of its header', () => {
    expect(read('250', 'volume', { headerUnit: headerUnit('mL') })).toBe(0.25);
    expect(read('2 x 500', 'volume', { headerUnit: headerUnit('mL') })).toBe(1);
  });
});

describe('times, temperatures and pressures', () => {
  it.each([
    ['4.2 s', 4.2],
    ['0:04.2', 4.2],
    ['1:23', 83],
    ['1:04:25', 3865],
    ['4\'25"', 265],
    ['1m23s', 83],
    ['1 min 23 s', 83],
    ['83 s', 83],
    ['4,25 s', 4.25],
  ])('a stopwatch shows %s', (cell, seconds) => {
    expect(read(cell, 'time', { isStopwatch: true })).toBeCloseTo(seconds, 12);
  });

  it('asks what one colon means where no stopwatch was used', () => {
    expect(problemOf('8:00', 'time')).toBe('unit-ambiguous');
  });

  it('refuses minutes and seconds above 59', () => {
    expect(problemOf('1:75', 'time', { isStopwatch: true })).toBe('quantity-unreadable');
  });

  it('reads F, C and K as temperatures in a temperature column', () => {
    expect(read('77 F', 'temperature')).toBe(25);
    expect(read('25 °C', 'temperature')).toBe(25);
    expect(read('-5 C', 'temperature')).toBe(-5);
  });

  it('reads gauge pressure', () => {
    // 50 pounds-force per square inch: 50 x 6.894757293168361 kPa (NIST SP 811).
    expect(read('50 psi', 'pressure')).toBeCloseTo(50 * 6.894757293168361, 10);
  });
});

describe('cells that are asked about', () => {
  it.each([
    ['250', 'volume', 'unit-missing'],
    ['250 blob', 'volume', 'unit-unknown'],
    ['250 g', 'volume', 'dimension-wrong'],
    ['1 L 250 g', 'volume', 'dimension-wrong'],
    ['1,250 ml', 'volume', 'decimal-unclear'],
    ['1 oz', 'volume', 'unit-ambiguous'],
    ['5 ML', 'volume', 'unit-ambiguous'],
    ['as usual', 'volume', 'quantity-unreadable'],
    ['-', 'volume', 'quantity-unreadable'],
    ['1 250 ml', 'volume', 'unit-missing'],
    ['1/0 gal', 'volume', 'quantity-unreadable'],
  ] as const)('%s as a %s raises %s', (cell, dimension, code) => {
    expect(problemOf(cell, dimension)).toBe(code);
  });

  it('asks for measures where the size of a unit depends on the country', () => {
    for (const cell of ['1 cup', '1 gal', '8 fl oz', '1 pint', '1 tablespoon']) {
      expect(problemOf(cell, 'volume', { measures: null })).toBe('measures-missing');
    }
  });

  it('reads a gallon as imperial where the bench says so', () => {
    expect(read('1 gal', 'volume', { measures: 'imperial' })).toBe(4.54609);
  });

  it('does not choose between the unit of the cell and that of the header', () => {
    expect(problemOf('250 L', 'volume', { headerUnit: headerUnit('mL') })).toBe('unit-clash');
  });
});

describe('properties of quantities', () => {
  it('a volume is the same in millilitres and in litres', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (millilitres) => {
        const whole = Math.floor(millilitres / 1000);
        const mixed = read(`${whole} L ${millilitres % 1000} mL`, 'volume');
        // A sum of two roundings against one: a few units of the last place.
        expect(mixed).toBeCloseTo(read(`${millilitres} mL`, 'volume'), 9);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('no text ever throws or gives a figure that is not finite', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 20 }), (cell) => {
        const reading = readQuantity(cell, context('volume'));
        if ('value' in reading) expect(Number.isFinite(reading.value.value)).toBe(true);
      }),
      { seed: 1, numRuns: 2000 },
    );
  });
});
