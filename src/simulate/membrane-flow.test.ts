import { describe, expect, it } from 'vitest';
import { BenchError } from '../findings/index.ts';
import {
  type MembraneConditions,
  netDrivingPressureKPa,
  standardFlow,
  standardSaltPassage,
  temperatureFactor,
} from './membrane-flow.ts';
import {
  blendShare,
  concentrationFactor,
  drainConcentration,
  feedBrineFactor,
  osmoticPressureKPa,
} from './osmotic-pressure.ts';

const TAP: MembraneConditions = {
  feedKPa: 400,
  feedSolidsMgPerL: 500,
  productSolidsMgPerL: 20,
  recovery: 0.25,
  temperatureC: 15,
};

describe('the flow through a membrane', () => {
  it('stays as it is when the conditions do', () => {
    expect(standardFlow(0.3, TAP, TAP, 'power')).toBeCloseTo(0.3, 15);
    expect(standardSaltPassage(0.3, TAP, TAP, 'arrhenius')).toBeCloseTo(0.04, 15);
  });

  it('grows when cold water is brought to 25 degC, more by one default than by the other', () => {
    const warm = { ...TAP, temperatureC: 25 };
    const power = standardFlow(0.3, TAP, warm, 'power') ?? 0;
    const arrhenius = standardFlow(0.3, TAP, warm, 'arrhenius') ?? 0;
    expect(power).toBeGreaterThan(0.3);
    expect(arrhenius).toBeGreaterThan(power);
  });

  it('is driven by the whole feed pressure in pure water', () => {
    const pure = { ...TAP, feedSolidsMgPerL: 0, productSolidsMgPerL: 0 };
    expect(netDrivingPressureKPa(pure)).toBe(400);
    expect(standardSaltPassage(0.3, pure, TAP, 'power')).toBeNull();
  });

  it('is not standardised where osmosis leaves nothing to drive it', () => {
    expect(standardFlow(0.3, TAP, { ...TAP, feedKPa: 10 }, 'power')).toBeNull();
  });

  it.each([
    ['a recovery of 1', { recovery: 1 }],
    ['a negative pressure', { feedKPa: -1 }],
    ['solids that are no number', { feedSolidsMgPerL: Number.NaN }],
    ['more solids than drinking water can hold', { feedSolidsMgPerL: 1e6 }],
  ])('is refused for %s', (_what, change) => {
    expect(() => standardFlow(0.3, { ...TAP, ...change }, TAP, 'power')).toThrow(BenchError);
  });

  it('is refused below absolute zero', () => {
    expect(() => temperatureFactor(-300, 'arrhenius')).toThrow(BenchError);
    expect(() => osmoticPressureKPa(100, -300)).toThrow(BenchError);
  });
});

describe('the balance of solids', () => {
  it('leaves the feed as it is at no recovery', () => {
    expect(feedBrineFactor(0)).toBe(1);
    expect(concentrationFactor(0)).toBe(1);
  });

  it('has no drain concentration without drain', () => {
    expect(
      drainConcentration({ product: 1, drain: 0, feedSolids: 400, productSolids: 20 }),
    ).toBeNull();
  });

  it('blends only what lies between two waters', () => {
    expect(blendShare({ low: 300, high: 800, wanted: 300 })).toBe(0);
    expect(blendShare({ low: 300, high: 800, wanted: 800 })).toBe(1);
    expect(blendShare({ low: 300, high: 800, wanted: 900 })).toBeNull();
    expect(blendShare({ low: 300, high: 300, wanted: 300 })).toBeNull();
  });
});
