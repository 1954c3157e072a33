import { describe, expect, it } from 'vitest';
import { mineralsGuidance } from '../../reference/index.ts';
import { guidanceVerdicts } from './guidance-verdicts.ts';

const of = (quantity: string, low: number, high = low) =>
  guidanceVerdicts(quantity, { low, high }).map(({ role, verdict }) => `${role}: ${verdict}`);

describe('a figure against published guidance', () => {
  it('lies below, within or above a range, ends included', () => {
    expect(of('ccpp', 2.9)).toEqual(['optimum range: below']);
    expect(of('ccpp', 3)).toEqual(['optimum range: within']);
    expect(of('ccpp', 10)).toEqual(['optimum range: within']);
    expect(of('ccpp', 10.1)).toEqual(['optimum range: above']);
    expect(of('ccpp', -40)).toEqual(['optimum range: below']);
  });

  it('cannot be told where an end of the range lies inside what is possible', () => {
    expect(of('ccpp', 0, 5)).toEqual(['optimum range: cannot-say']);
    expect(of('ccpp', 5, Number.POSITIVE_INFINITY)).toEqual(['optimum range: cannot-say']);
    expect(of('ccpp', 0, 2)).toEqual(['optimum range: below']);
  });

  it('is judged in the unit and basis of the source', () => {
    const alkalinity = of('total-alkalinity', 325.2);
    expect(alkalinity).toContain('maximum: within');
    expect(of('total-alkalinity', 325.4)).toContain('maximum: above');
  });

  it('gets no verdict without a figure or without guidance', () => {
    expect(guidanceVerdicts('ccpp', null)).toEqual([]);
    expect(of('fluoride', 0.7)).toEqual([]);
  });

  it('keeps with each piece how it was verified', () => {
    for (const { verified } of mineralsGuidance('magnesium')) {
      expect(verified).toMatch(/^(from memory|seen: .+)$/);
    }
  });
});
