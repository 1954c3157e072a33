import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BASE_UNITS } from './dimensions.ts';
import { readUnit, unitNamed } from './read-unit.ts';
import { convert, fromBase, toBase, type Unit, unitText } from './unit.ts';
import { namedUnits } from './unit-index.ts';

function unit(name: string): Unit {
  const found = unitNamed(name);
  if (found === undefined) throw new Error(`no unit ${name}`);
  return found;
}

describe('converting between units of one dimension', () => {
  it('turns 5 mg/L into exactly 5000 ug/L and 70 ng/L into exactly 0.07 ug/L', () => {
    expect(convert(5, unit('mg/L'), unit('ug/L'))).toEqual({ kind: 'value', value: 5000 });
    expect(convert(70, unit('ng/L'), unit('ug/L'))).toEqual({ kind: 'value', value: 0.07 });
  });

  it('turns 77 F, 32 F and 298.15 K into exactly 25, 0 and 25 degC', () => {
    expect(toBase(77, unit('degF'))).toBe(25);
    expect(toBase(32, unit('degF'))).toBe(0);
    expect(toBase(-40, unit('degF'))).toBe(-40);
    expect(toBase(298.15, unit('kelvin'))).toBe(25);
    expect(fromBase(25, unit('degF'))).toBe(77);
  });

  it('turns a kelvin straight into a degree Fahrenheit', () => {
    // One step of doubles at 300: half a unit in the last place of 77.
    expect(convert(298.15, unit('kelvin'), unit('degF'))).toEqual({
      kind: 'value',
      value: expect.closeTo(77, 12),
    });
  });

  it('leaves zero, NaN and infinity what they are', () => {
    expect(toBase(0, unit('psi'))).toBe(0);
    expect(toBase(Number.NaN, unit('psi'))).toBeNaN();
    expect(toBase(Number.POSITIVE_INFINITY, unit('mL'))).toBe(Number.POSITIVE_INFINITY);
  });

  it('leaves a value untouched between a unit and itself', () => {
    expect(convert(0.1, unit('psi'), unit('psi'))).toEqual({ kind: 'value', value: 0.1 });
  });

  it('names both units and both dimensions where they differ', () => {
    const result = convert(1, unit('psi'), unit('L'));
    expect(result.kind === 'problem' && result.problem).toBe('dimension');
    expect(result.kind === 'problem' && result.message).toBe('psi measures pressure, L volume');
  });

  it('keeps light, organisms, mass and activity apart', () => {
    const pairs = [
      ['NTU', 'FNU'],
      ['MPN/100mL', 'CFU/100mL'],
      ['CFU/100mL', 'count/100mL'],
      ['ug/L', 'pCi/L'],
      ['mg/L', 'mmol/L'],
      ['mg/L', 'ppm'],
    ] as const;
    for (const [from, to] of pairs) {
      expect(convert(1, unit(from), unit(to)).kind).toBe('problem');
    }
  });

  it('does not change a basis by itself', () => {
    const asN = readUnit('mg/L as N', {});
    if (asN.kind === 'problem') throw new Error(asN.message);
    const result = convert(1, asN.unit, unit('mg/L'));
    expect(result.kind === 'problem' && result.problem).toBe('basis');
    expect(unitText(asN.unit)).toBe('mg/L as N');
  });

  it('has a base unit of factor 1 in every dimension', () => {
    for (const [dimension, name] of Object.entries(BASE_UNITS)) {
      const base = unit(name);
      expect(base.dimension).toBe(dimension);
      expect(base.toBase).toEqual({ num: 1, den: 1 });
      expect(base.offset.num).toBe(0);
    }
  });
});

describe('round trips', () => {
  const groups = new Map<string, Unit[]>();
  for (const known of namedUnits().values()) {
    groups.set(known.dimension, [...(groups.get(known.dimension) ?? []), known]);
  }
  const pairs = [...groups.values()].flatMap((units) =>
    units.flatMap((from) => units.map((to): [Unit, Unit] => [from, to])),
  );

  it('bring a value back to within a few units in the last place', () => {
    const value = fc.integer({ min: -1e9, max: 1e9 }).map((thousandths) => thousandths / 1000);
    const property = fc.property(value, fc.constantFrom(...pairs), (start, [from, to]) => {
      const there = convert(start, from, { ...to, basis: from.basis });
      if (there.kind === 'problem') throw new Error(there.message);
      const back = convert(there.value, { ...to, basis: from.basis }, from);
      if (back.kind === 'problem') throw new Error(back.message);
      // Four roundings of one part in 2^53; an offset adds its own size.
      const size = Math.max(
        Math.abs(start),
        from.offset.num === 0 && to.offset.num === 0 ? 0 : 500,
      );
      expect(Math.abs(back.value - start)).toBeLessThanOrEqual(8 * Number.EPSILON * size);
    });
    fc.assert(property, { seed: 1, numRuns: 2000 });
  });

  it('keep the order of two values', () => {
    const value = fc.double({ min: 0, max: 1e9, noNaN: true });
    const property = fc.property(
      value,
      value,
      fc.constantFrom(...namedUnits().values()),
      (a, b, of) => {
        if (a <= b) expect(toBase(a, of)).toBeLessThanOrEqual(toBase(b, of));
      },
    );
    fc.assert(property, { seed: 1, numRuns: 1000 });
  });
});
