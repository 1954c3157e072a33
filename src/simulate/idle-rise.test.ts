import { describe, expect, it } from 'vitest';
import { BenchError } from '../findings/index.ts';
import {
  firstWaterMean,
  litresToLevel,
  restingPlateau,
  restingProduct,
  saltFlowLPerS,
} from './idle-rise.ts';

const REST = { product: 15, feed: 400, productL: 0.1, feedL: 0.25, saltFlowLPerS: 1.28e-4 };
const WATER = { stood: 180, running: 15, heldL: 0.12 };

describe('a membrane at rest', () => {
  it('begins where it ran and rises to the plateau', () => {
    expect(restingProduct(REST, 0)).toBe(15);
    expect(restingProduct(REST, 1e6)).toBeCloseTo(restingPlateau(REST).plateau, 9);
  });

  it('keeps its concentration where both sides are equal', () => {
    expect(restingProduct({ ...REST, product: 400 }, 600)).toBeCloseTo(400, 10);
  });

  it('lets no salt flow be told where the product is not below the feed', () => {
    expect(saltFlowLPerS({ productFlowLPerS: 0.003, product: 400, feedSide: 400 })).toBeNull();
  });

  it.each([-1, Number.NaN])('is refused for a pause of %s s', (seconds) => {
    expect(() => restingProduct(REST, seconds)).toThrow(BenchError);
  });
});

describe('the first water after a pause', () => {
  it('is what stood, for a sip of it, and what runs, for a lot of it', () => {
    expect(firstWaterMean(WATER, 1e-9, 'mixed')).toBeCloseTo(180, 4);
    expect(firstWaterMean(WATER, 0.1, 'plug')).toBe(180);
    expect(firstWaterMean(WATER, 1e6, 'mixed')).toBeCloseTo(15, 4);
  });

  it('needs no litres to a level above it, and never reaches one it does not come down to', () => {
    expect(litresToLevel(WATER, 200)).toBe(0);
    expect(litresToLevel(WATER, 15)).toBeNull();
    expect(litresToLevel({ ...WATER, stood: 15 }, 15)).toBe(0);
  });

  it('is refused without a held volume and for no water', () => {
    expect(() => firstWaterMean({ ...WATER, heldL: 0 }, 1, 'mixed')).toThrow(BenchError);
    expect(() => firstWaterMean(WATER, 0, 'plug')).toThrow(BenchError);
  });
});
