import { describe, expect, it } from 'vitest';
import { leastSquaresLine } from './least-squares-line.ts';

const refused = expect.objectContaining({ code: 'statistics-input' });

describe('Straight line by least squares', () => {
  it('goes through points that lie on a line, without scatter', () => {
    const line = leastSquaresLine({ x: [0, 1, 2], y: [1, 3, 5] });
    expect(line).toMatchObject({ slope: 2, intercept: 1, residualSd: 0, uSlope: 0, n: 3 });
  });

  it('has no standard errors through two points', () => {
    expect(leastSquaresLine({ x: [0, 2], y: [1, 5] })).toEqual({
      slope: 2,
      intercept: 1,
      uSlope: null,
      uIntercept: null,
      covariance: null,
      residualSd: null,
      n: 2,
    });
  });

  it('is flat for equal y', () => {
    expect(leastSquaresLine({ x: [1, 2, 4], y: [3, 3, 3] })).toMatchObject({
      slope: 0,
      intercept: 3,
    });
  });

  it('does not change when all weights change by the same factor', () => {
    const points = { x: [1, 2, 4, 7], y: [1, 3, 4, 9] };
    const small = leastSquaresLine({ ...points, weights: [1, 2, 1, 0.5] });
    const large = leastSquaresLine({ ...points, weights: [8, 16, 8, 4] });
    expect(large.slope).toBeCloseTo(small.slope, 14);
    expect(large.uIntercept).toBeCloseTo(small.uIntercept ?? Number.NaN, 14);
  });

  it('counts a point of weight 2 as two equal points', () => {
    const doubled = leastSquaresLine({ x: [1, 2, 4, 4], y: [1, 3, 4, 4] });
    const weighted = leastSquaresLine({ x: [1, 2, 4], y: [1, 3, 4], weights: [1, 1, 2] });
    expect(weighted.slope).toBeCloseTo(doubled.slope, 14);
    expect(weighted.intercept).toBeCloseTo(doubled.intercept, 14);
  });

  it('refuses one point, equal x, lists of different length, NaN and weights not above zero', () => {
    for (const input of [
      { x: [], y: [] },
      { x: [1], y: [1] },
      { x: [0.1, 0.1, 0.1], y: [1, 2, 3] },
      { x: [1, 2], y: [1, 2, 3] },
      { x: [1, Number.NaN], y: [1, 2] },
      { x: [1, 2], y: [1, Infinity] },
      { x: [1, 2], y: [1, 2], weights: [1] },
      { x: [1, 2], y: [1, 2], weights: [1, 0] },
      { x: [1, 2], y: [1, 2], weights: [1, Number.NaN] },
    ]) {
      expect(() => leastSquaresLine(input)).toThrow(refused);
    }
  });
});
