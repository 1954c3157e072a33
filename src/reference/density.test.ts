import { describe, expect, it } from 'vitest';
import { BenchError } from '../findings/index.ts';
import { volumeFromMassL, waterDensityGPerMl } from './density.ts';

describe('the density of water', () => {
  it('is highest at 4 degC and falls on both sides', () => {
    const at = [0, 2, 4, 10, 20, 30, 40].map(waterDensityGPerMl);
    expect(Math.max(...at)).toBe(at[2]);
    // 20 degC: 0.998207 in tables; half a unit in the last digit.
    expect(waterDensityGPerMl(20)).toBeCloseTo(0.998207, 6);
  });

  it('is refused outside 0 to 40 degC', () => {
    for (const temperature of [-0.1, 40.1, 77, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => waterDensityGPerMl(temperature)).toThrow(BenchError);
    }
  });
});

describe('the volume of weighed water', () => {
  it('is larger than the mass, by density and by the air it displaces', () => {
    expect(volumeFromMassL(1000, 20)).toBeGreaterThan(1.0028);
    expect(volumeFromMassL(1000, 20)).toBeLessThan(1.0029);
  });

  it('grows in proportion to the mass, through zero', () => {
    expect(volumeFromMassL(0, 20)).toBe(0);
    expect(volumeFromMassL(2000, 20)).toBe(2 * volumeFromMassL(1000, 20));
    expect(volumeFromMassL(-10, 20)).toBeLessThan(0);
    expect(volumeFromMassL(Number.NaN, 20)).toBeNaN();
  });
});
