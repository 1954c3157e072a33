import { describe, expect, it } from 'vitest';
import type { UncertainSide } from '../reduction-statement.ts';
import { replicatePairs, summariseCensored } from './index.ts';

function side(low: number, high = low): UncertainSide {
  return {
    interval: { low, high },
    readings: { low, high },
    state: low === high ? 'quantified' : low === 0 ? 'notDetected' : 'between',
    estimate: low === high ? low : null,
    uncertainty: {
      relative: 0.1,
      additive: 0,
      counting: 0,
      from: 'stated',
      degreesOfFreedom: Number.POSITIVE_INFINITY,
    },
    isDecisionBound: false,
  };
}

const pair = (feed: number, product: UncertainSide) => ({ feed: side(feed), product });

describe('pairs of feed and product', () => {
  it('of figures, three or more, have an interval from their own scatter', () => {
    // Own derivation recomputed in R: ratio of means 97.90286976 %, geometric 97.93228103 % with t
    // limits 96.750907 and 98.684106 %; tolerance 1e-6 of a percent point and better.
    const { ofMeans, geometric } = replicatePairs(
      [pair(150, side(3)), pair(148, side(2.6)), pair(155, side(3.9))],
      0.95,
    );
    expect(ofMeans?.estimate).toBeCloseTo(0.9790286976, 9);
    expect(geometric?.estimate).toBeCloseTo(0.9793228103, 9);
    expect(geometric?.low).toBeCloseTo(0.96750907, 7);
    expect(geometric?.high).toBeCloseTo(0.98684106, 7);
  });

  it('of figures, two, have none', () => {
    const { ofMeans, geometric } = replicatePairs([pair(10, side(1)), pair(11, side(1))], 0.95);
    expect([ofMeans, geometric]).toEqual([null, null]);
  });

  it('with a censored one have none below eight pairs', () => {
    const pairs = [1, 1.2, 1.1].map((product) => pair(10, side(product)));
    const few = replicatePairs([...pairs, pair(10, side(0, 0.5))], 0.95);
    expect(few).toMatchObject({ n: 4, censored: 1, ofMeans: null, geometric: null });
  });

  it('with censored ones have the likelihood of the passage from eight pairs', () => {
    const figures = [1, 1.2, 0.8, 1.1, 0.9, 1.3].map((product) => pair(10, side(product)));
    const { geometric } = replicatePairs(
      [...figures, pair(10, side(0, 0.5)), pair(10, side(0, 0.5))],
      0.95,
    );
    expect(geometric?.method).toContain('2 censored');
    expect(geometric?.low ?? 1).toBeLessThan(geometric?.estimate ?? 0);
    expect(geometric?.estimate).toBeGreaterThan(0.89);
  });

  it('of no pair say nothing', () => {
    expect(replicatePairs([], 0.95)).toMatchObject({ n: 0, ofMeans: null, geometric: null });
  });
});

describe('a summary of results with non-detects', () => {
  const results = (figures: readonly number[], limits: readonly number[]) => [
    ...figures.map((value) => ({ low: value, high: value })),
    ...limits.map((limit) => ({ low: 0, high: limit })),
  ];

  it('is given from eight results with three figures, by three methods', () => {
    const summary = summariseCensored(results([1, 2, 3], [0.5, 0.5, 0.5, 0.5, 0.5]));
    expect(summary).toMatchObject({ n: 8, censored: 5, kaplanMeier: { low: 0.75 } });
    expect(summary?.kaplanMeier.high).toBeCloseTo(0.75 + (5 / 8) * 0.5, 12);
    expect(summary?.robustRos ?? 0).toBeGreaterThan(0.75);
  });

  it('is refused below eight results, below three figures, and without a censored one', () => {
    expect(summariseCensored(results([1, 2, 3], [0.5, 0.5, 0.5, 0.5]))).toBeNull();
    expect(summariseCensored(results([1, 2], [0.5, 0.5, 0.5, 0.5, 0.5, 0.5]))).toBeNull();
    expect(summariseCensored(results([1, 2, 3, 4, 5, 6, 7, 8], []))).toBeNull();
    expect(summariseCensored([])).toBeNull();
  });

  it('leaves out a method that equal figures defeat', () => {
    const summary = summariseCensored(results([1, 1, 1], [1, 1, 1, 1, 1]));
    expect(summary).toMatchObject({ lognormalMle: null });
  });
});
