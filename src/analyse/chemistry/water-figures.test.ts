import { describe, expect, it } from 'vitest';
import { calculatedDissolvedSolids } from './calculated-dissolved-solids.ts';
import {
  conductivityAt25,
  estimatedConductivity,
  ionicStrength,
  temperatureFactor,
} from './conductivity.ts';
import { calculatedHardness } from './hardness.ts';

describe('calculated dissolved solids', () => {
  it('count six tenths of the alkalinity, since bicarbonate loses gas on drying', () => {
    expect(calculatedDissolvedSolids({ 'total-alkalinity': 100, calcium: 40 })).toBe(100);
  });

  it('count silica as metasilicate, and are nothing without ions', () => {
    expect(calculatedDissolvedSolids({}, 60.084)).toBeCloseTo(76.083, 10);
    expect(calculatedDissolvedSolids({})).toBe(0);
  });

  it('are not a number where an ion is not', () => {
    expect(calculatedDissolvedSolids({ sodium: Number.NaN })).toBeNaN();
  });
});

describe('hardness', () => {
  it('comes from calcium and magnesium, and is zero in pure water', () => {
    expect(calculatedHardness(50, 12)).toBeCloseTo(174.266, 9);
    expect(calculatedHardness(0, 0)).toBe(0);
  });
});

describe('conductivity', () => {
  it('is zero without ions and rises less than the salt', () => {
    expect(estimatedConductivity({})).toBe(0);
    const once = estimatedConductivity({ sodium: 22.99, chloride: 35.453 });
    const tenfold = estimatedConductivity({ sodium: 229.9, chloride: 354.53 });
    expect(tenfold).toBeGreaterThan(8 * once);
    expect(tenfold).toBeLessThan(10 * once);
  });

  it('stands for 122 uS/cm of one meq/L of table salt', () => {
    expect(estimatedConductivity({ sodium: 22.99, chloride: 35.453 })).toBeCloseTo(122.2, 1);
  });

  it('knows the ionic strength: 1 mmol/L of gypsum has 0.004 mol/L', () => {
    expect(ionicStrength({ calcium: 40.078, sulfate: 96.06 })).toBeCloseTo(0.004, 12);
  });

  it('keeps a reading at 25 °C, raises one in the cold and refuses what the table does not hold', () => {
    expect(conductivityAt25(500, 25)).toBe(500);
    expect(conductivityAt25(500, 10)).toBe(714);
    expect(temperatureFactor(10.5)).toBeCloseTo((1.428 + 1.39) / 2, 12);
    expect(temperatureFactor(35)).toBe(0.822);
    expect(temperatureFactor(-1)).toBeNull();
    expect(temperatureFactor(36)).toBeNull();
    expect(temperatureFactor(Number.NaN)).toBeNull();
    expect(conductivityAt25(500, 80)).toBeNull();
  });
});
