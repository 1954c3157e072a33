import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostProbableNumber, type TubeSet } from './most-probable-number.ts';

const SERIES = [10, 1, 0.1];

function series(positive: readonly number[], tubes = 3): TubeSet[] {
  return positive.map((grew, at) => ({ volume: SERIES[at] ?? 1, tubes, positive: grew }));
}

describe('a most probable number', () => {
  it('is what makes the seen tubes most likely', () => {
    const logLikelihood = (sets: readonly TubeSet[], rate: number): number =>
      sets.reduce(
        (sum, { volume, tubes, positive }) =>
          sum +
          (positive === 0 ? 0 : positive * Math.log(-Math.expm1(-rate * volume))) -
          (tubes - positive) * rate * volume,
        0,
      );
    for (const counts of [
      [2, 1, 0],
      [3, 2, 1],
      [0, 0, 1],
      [3, 3, 2],
      [1, 0, 0],
    ]) {
      const sets = series(counts);
      const { estimate } = mostProbableNumber(sets);
      const at = estimate ?? Number.NaN;
      for (const factor of [0.999, 1.001]) {
        expect(logLikelihood(sets, at * factor)).toBeLessThan(logLikelihood(sets, at));
      }
    }
  });

  it('of one volume is the closed form', () => {
    const { estimate } = mostProbableNumber([{ volume: 10, tubes: 10, positive: 4 }]);
    expect(estimate).toBeCloseTo(-Math.log(0.6) / 10, 14);
  });

  it('without a positive tube has an upper limit only', () => {
    const found = mostProbableNumber(series([0, 0, 0]));
    expect(found).toMatchObject({ estimate: null, uLog: null, low: 0 });
    // exp(-λ 33.3) = 0.025
    expect(found.high).toBeCloseTo(-Math.log(0.025) / 33.3, 14);
  });

  it('without a negative tube has a lower limit only', () => {
    const found = mostProbableNumber([{ volume: 1, tubes: 3, positive: 3 }]);
    expect(found).toMatchObject({ estimate: null, high: Number.POSITIVE_INFINITY });
    // (1 - exp(-λ))³ = 0.025
    expect(found.low).toBeCloseTo(-Math.log(1 - 0.025 ** (1 / 3)), 12);
  });

  it('does not depend on how the tubes of one volume are written down, nor on their order', () => {
    const together = mostProbableNumber([
      { volume: 10, tubes: 4, positive: 3 },
      { volume: 1, tubes: 2, positive: 1 },
    ]);
    const apart = mostProbableNumber([
      { volume: 1, tubes: 2, positive: 1 },
      { volume: 10, tubes: 2, positive: 2 },
      { volume: 10, tubes: 2, positive: 1 },
    ]);
    expect(apart.estimate).toBeCloseTo(together.estimate ?? 0, 12);
    expect(apart.low).toBeCloseTo(together.low, 9);
    expect(apart.high).toBeCloseTo(together.high, 9);
  });

  it('scales with the volume and rises with every further positive tube', () => {
    const tube = fc.record({ tubes: fc.integer({ min: 1, max: 4 }), share: fc.nat(100) });
    const property = fc.property(fc.array(tube, { minLength: 2, maxLength: 3 }), (drawn) => {
      const sets = drawn.map(({ tubes, share }, at) => ({
        volume: SERIES[at] ?? 1,
        tubes,
        positive: Math.round((share / 100) * tubes),
      }));
      const found = mostProbableNumber(sets);
      expect(found.low).toBeLessThanOrEqual(found.estimate ?? found.low);
      expect(found.high).toBeGreaterThanOrEqual(found.estimate ?? found.high);
      const larger = mostProbableNumber(sets.map((set) => ({ ...set, volume: set.volume * 100 })));
      expect(larger.high * 100).toBeCloseTo(found.high, 8);
      const at = sets.findIndex(({ positive, tubes }) => positive < tubes);
      if (at < 0) return;
      const more = mostProbableNumber(
        sets.map((set, index) => (index === at ? { ...set, positive: set.positive + 1 } : set)),
      );
      expect(more.low).toBeGreaterThanOrEqual(found.low);
      expect(more.high).toBeGreaterThan(found.high);
    });
    fc.assert(property, { seed: 1, numRuns: 60 });
  });

  it('has limits that hold the truth in at least 95 % of all outcomes, at any concentration', () => {
    const tubes = 3;
    const outcomes: number[][] = [];
    for (let a = 0; a <= tubes; a += 1)
      for (let b = 0; b <= tubes; b += 1)
        for (let c = 0; c <= tubes; c += 1) outcomes.push([a, b, c]);
    const limits = outcomes.map((positive) => mostProbableNumber(series(positive)));
    const ways = [1, 3, 3, 1];
    for (let rate = 0.001; rate < 200; rate *= 1.13) {
      const held = outcomes.reduce((sum, positive, index) => {
        const chance = positive.reduce((product, grew, at) => {
          const p = -Math.expm1(-rate * (SERIES[at] ?? 1));
          return product * (ways[grew] ?? 0) * p ** grew * (1 - p) ** (tubes - grew);
        }, 1);
        const { low, high } = limits[index] ?? { low: 1, high: 0 };
        return low <= rate && rate <= high ? sum + chance : sum;
      }, 0);
      expect(held).toBeGreaterThanOrEqual(0.95 - 1e-9);
    }
  });

  it.each([
    ['no tubes', []],
    ['a volume of zero', [{ volume: 0, tubes: 3, positive: 1 }]],
    ['a negative volume', [{ volume: -1, tubes: 3, positive: 1 }]],
    ['a volume that is no number', [{ volume: Number.NaN, tubes: 3, positive: 1 }]],
    ['more positive tubes than tubes', [{ volume: 1, tubes: 3, positive: 4 }]],
    ['half a tube', [{ volume: 1, tubes: 3, positive: 0.5 }]],
    ['a set without tubes', [{ volume: 1, tubes: 0, positive: 0 }]],
  ])('of %s is refused', (_what, sets) => {
    expect(() => mostProbableNumber(sets)).toThrow(
      expect.objectContaining({ code: 'statistics-input' }),
    );
  });
});
