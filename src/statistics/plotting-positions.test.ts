import { describe, expect, it } from 'vitest';
import { plottingPositions } from './plotting-positions.ts';

const of = (...values: number[]): Float64Array => Float64Array.from(values);

describe('Plotting positions of results censored at several limits', () => {
  it('are r / (n + 1) without limits', () => {
    const { exact } = plottingPositions(of(1, 2, 3), of());
    expect([...exact]).toEqual([0.25, 0.5, 0.75]);
  });

  it('spread the results below one limit between zero and the share below it', () => {
    const { exact, limits } = plottingPositions(of(2, 3), of(1, 1));
    // Half the results exceed the limit. Tolerance: roundings.
    expect([...limits].map((p) => p.toFixed(12))).toEqual(['0.166666666667', '0.333333333333']);
    expect([...exact].map((p) => p.toFixed(12))).toEqual(['0.666666666667', '0.833333333333']);
  });

  it('handle an exact number equal to a limit as one at or above it', () => {
    const { exact } = plottingPositions(of(1, 3), of(1));
    expect(exact[0]).toBeGreaterThan(1 / 3);
  });

  it('handle a limit with nothing exact between it and the next', () => {
    const { exact, limits } = plottingPositions(of(5), of(1, 2));
    expect([...exact, ...limits].every((p) => p > 0 && p < 1)).toBe(true);
  });
});
