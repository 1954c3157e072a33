import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { duplicateVerdict } from './duplicate-verdict.ts';

const point = (value: number) => ({ low: value, high: value });
const below = (limit: number) => ({ low: 0, high: limit });

describe('two results of one water', () => {
  it('agree when they are equal, also when both are zero', () => {
    expect(duplicateVerdict(point(5), point(5), 1, 20).agrees).toBe(true);
    expect(duplicateVerdict(point(0), point(0), 1, 20)).toEqual({
      rule: 'none',
      agrees: true,
      percent: null,
    });
  });

  it('are held to the percentage from five times the limit on, and below to one limit', () => {
    expect(duplicateVerdict(point(5), point(6.2), 1, 20).rule).toBe('percent');
    expect(duplicateVerdict(point(4.9), point(5.8), 1, 20)).toMatchObject({
      rule: 'limit',
      agrees: true,
    });
    expect(duplicateVerdict(point(2), point(3.5), 1, 20).agrees).toBe(false);
  });

  it('are held to the percentage where the lab gives no limit', () => {
    expect(duplicateVerdict(point(1), point(1.5), null, 20)).toMatchObject({
      rule: 'percent',
      agrees: false,
    });
  });

  it('agree when both were not detected, even against different limits', () => {
    expect(duplicateVerdict(below(1), below(1), 1, 20).agrees).toBe(true);
    expect(duplicateVerdict(below(1), below(50), 1, 20).agrees).toBe(true);
  });

  it('agree when a non-detect could have been the other figure', () => {
    expect(duplicateVerdict(below(3), point(2), 3, 20).agrees).toBe(true);
    expect(duplicateVerdict(below(1), point(2), 1, 20).agrees).toBe(true);
    expect(duplicateVerdict(below(1), point(2.1), 1, 20).agrees).toBe(false);
  });

  it('cannot disagree with a result above the range that may reach them', () => {
    expect(duplicateVerdict({ low: 50, high: Infinity }, point(60), 1, 20).agrees).toBe(true);
    expect(duplicateVerdict({ low: 50, high: Infinity }, point(10), 1, 20).agrees).toBe(false);
  });

  it('say the same in either order', () => {
    const value = fc.double({ min: 0, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(value, value, fc.double({ min: 0.01, max: 100, noNaN: true }), (a, b, limit) => {
        expect(duplicateVerdict(point(a), point(b), limit, 20)).toEqual(
          duplicateVerdict(point(b), point(a), limit, 20),
        );
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});
