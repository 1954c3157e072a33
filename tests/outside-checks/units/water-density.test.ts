import { describe, expect, it } from 'vitest';
import { volumeFromMassL, waterDensityGPerMl } from '../../../src/reference/index.ts';
import { halfLastDigit, readCsv } from './read-fixture.ts';

const ROWS = readCsv<'t_C' | 'iapws95_kg_m3' | 'tanaka_kg_m3' | 'mL_per_1000g_in_air'>(
  'water-density.csv',
);

describe('density of water', () => {
  for (const row of ROWS) {
    const temperature = Number(row.t_C);
    it(`IAPWS-95 (1995), computed independently: at ${temperature} degC within 0.0013 kg/m3`, () => {
      // 0.0012 kg/m3 is the largest difference between the two formulations from 0 to 40 degC;
      // the last digit of the table adds half of 0.0001.
      const difference = waterDensityGPerMl(temperature) * 1000 - Number(row.iapws95_kg_m3);
      expect(Math.abs(difference)).toBeLessThanOrEqual(0.0013);
    });

    it(`Tanaka et al., Metrologia 38 (2001) 301, from memory: at ${temperature} degC to the last digit`, () => {
      const difference = waterDensityGPerMl(temperature) * 1000 - Number(row.tanaka_kg_m3);
      expect(Math.abs(difference)).toBeLessThanOrEqual(halfLastDigit(row.tanaka_kg_m3) + 1e-9);
    });

    it(`derived from that density: mL of 1000 g weighed in air at ${temperature} degC`, () => {
      const difference =
        volumeFromMassL(1000, temperature) * 1000 - Number(row.mL_per_1000g_in_air);
      // Printed to 0.001 mL.
      expect(Math.abs(difference)).toBeLessThanOrEqual(0.0005 + 1e-9);
    });
  }
});

describe('volume of water weighed in air', () => {
  it('derived, V = m (1 - 0.0012/8.0)/(density - 0.0012): 946 g at 25 degC are 949.80261 mL', () => {
    // The case allows 0.01 mL.
    expect(Math.abs(volumeFromMassL(946, 25) * 1000 - 949.80261)).toBeLessThanOrEqual(0.01);
  });

  it('ISO 8655, Z factor at 20 degC and 1013 hPa, from memory: 1000 g are 1002.85 mL', () => {
    // Z is printed as 1.0029: 0.05 mL in 1000 mL.
    expect(Math.abs(volumeFromMassL(1000, 20) * 1000 - 1002.85)).toBeLessThanOrEqual(0.05);
  });
});
