import { unit as mathUnit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { convert } from '../../../src/reference/index.ts';
import { unitOf } from './read-fixture.ts';

function ours(value: number, from: string, to: string): number {
  const result = convert(value, unitOf(from), unitOf(to));
  if (result.kind === 'problem') throw new Error(result.message);
  return result.value;
}

const VALUES = [0.001, 0.25, 1, 3, 47.5, 1000];

describe('mathjs 15.2.0 as a second opinion', () => {
  // mathjs goes through SI base units in doubles: up to four roundings of one part in 2^53.
  const DRIFT = 8 * Number.EPSILON;
  const pairs = [
    ['volume', 'US gal', 'gallon', 'L', 'litre', DRIFT],
    ['volume', 'US fl oz', 'floz', 'mL', 'ml', DRIFT],
    ['volume', 'US cup', 'cup', 'L', 'litre', DRIFT],
    ['volume', 'US pint', 'pint', 'L', 'litre', DRIFT],
    ['volume', 'US qt', 'quart', 'US gal', 'gallon', DRIFT],
    ['volume', 'ft3', 'cuft', 'L', 'litre', DRIFT],
    ['volume', 'in3', 'cuin', 'mL', 'ml', DRIFT],
    // mathjs calls a tablespoon 15 mL and a teaspoon 5 mL, which are the metric spoons.
    ['volume', 'metric tbsp', 'tablespoon', 'mL', 'ml', DRIFT],
    ['volume', 'metric tsp', 'teaspoon', 'mL', 'ml', DRIFT],
    ['mass', 'lb', 'lbm', 'g', 'gram', DRIFT],
    ['mass', 'oz (mass)', 'oz', 'g', 'gram', DRIFT],
    ['mass', 'grain', 'grain', 'mg', 'mg', DRIFT],
    ['mass', 'lb', 'lbm', 'oz (mass)', 'oz', DRIFT],
    // mathjs holds psi with 15 digits of another rounding, 6e-11 from the definition.
    ['pressure', 'psi', 'psi', 'kPa', 'kPa', 1e-10],
    ['pressure', 'bar', 'bar', 'psi', 'psi', 1e-10],
    ['pressure', 'atm', 'atm', 'kPa', 'kPa', DRIFT],
    ['pressure', 'mbar', 'mbar', 'kPa', 'kPa', DRIFT],
    // mathjs holds mmHg and torr with six digits.
    ['pressure', 'mmHg', 'mmHg', 'kPa', 'kPa', 4e-6],
    ['pressure', 'Torr', 'torr', 'kPa', 'kPa', 4e-6],
    ['power', 'kW', 'kW', 'W', 'W', DRIFT],
    ['energy', 'kWh', 'kWh', 'J', 'J', DRIFT],
  ] as const;

  for (const [quantity, from, mathFrom, to, mathTo, tolerance] of pairs) {
    it(`${quantity}: ${from} in ${to}, to ${tolerance.toExponential(1)} of the value`, () => {
      for (const value of VALUES) {
        const other = mathUnit(value, mathFrom).toNumber(mathTo);
        expect(Math.abs(ours(value, from, to) - other)).toBeLessThanOrEqual(tolerance * other);
      }
    });
  }

  it('temperature: degF and kelvin in degC, to 1e-12 degC at tap-water temperatures', () => {
    // mathjs adds 273.15 and takes it away again: a few roundings at the size of 300.
    for (const value of [32, 39.2, 50, 68, 77, 104]) {
      expect(ours(value, 'degF', 'degC')).toBeCloseTo(mathUnit(value, 'degF').toNumber('degC'), 12);
    }
    for (const value of [273.15, 277.15, 298.15]) {
      expect(ours(value, 'kelvin', 'degC')).toBeCloseTo(mathUnit(value, 'K').toNumber('degC'), 12);
    }
  });

  it('mass concentration: mathjs drifts on 5 mg/L and the ratios do not', () => {
    expect(mathUnit(5, 'mg/L').toNumber('ug/L')).not.toBe(5000);
    expect(ours(5, 'mg/L', 'ug/L')).toBe(5000);
    expect(ours(70, 'ng/L', 'ug/L')).toBe(0.07);
  });
});
