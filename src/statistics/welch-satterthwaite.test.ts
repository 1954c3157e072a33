import { describe, expect, it } from 'vitest';
import { welchSatterthwaite } from './welch-satterthwaite.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

describe('Effective degrees of freedom', () => {
  it('lie between the smallest and the sum of the parts', () => {
    const two = welchSatterthwaite([
      { u: 1, degreesOfFreedom: 4 },
      { u: 1, degreesOfFreedom: 4 },
    ]);
    expect(two).toBeCloseTo(8, 13);
    expect(welchSatterthwaite([{ u: 3, degreesOfFreedom: 7 }])).toBeCloseTo(7, 13);
  });

  it('rise where a part is taken as known', () => {
    const nu = welchSatterthwaite([
      { u: 0.57, degreesOfFreedom: 9 },
      { u: 0.25, degreesOfFreedom: Infinity },
    ]);
    expect(nu).toBeCloseTo(12.796, 3);
  });

  it('do not change with the unit, however small', () => {
    const tiny = welchSatterthwaite([
      { u: 1e-120, degreesOfFreedom: 4 },
      { u: 1e-120, degreesOfFreedom: 4 },
    ]);
    expect(tiny).toBeCloseTo(8, 13);
  });

  it('are infinite where nothing that matters is uncertain', () => {
    expect(welchSatterthwaite([{ u: 0, degreesOfFreedom: 3 }])).toBe(Infinity);
    expect(welchSatterthwaite([{ u: 2, degreesOfFreedom: Infinity }])).toBe(Infinity);
  });

  it('refuse no part, a negative part and degrees of freedom not above zero', () => {
    expect(() => welchSatterthwaite([])).toThrow(refused);
    expect(() => welchSatterthwaite([{ u: -1, degreesOfFreedom: 3 }])).toThrow(refused);
    expect(() => welchSatterthwaite([{ u: Number.NaN, degreesOfFreedom: 3 }])).toThrow(refused);
    expect(() => welchSatterthwaite([{ u: 1, degreesOfFreedom: 0 }])).toThrow(refused);
  });
});
