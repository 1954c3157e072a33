import { describe, expect, it } from 'vitest';
import { kaplanMeier, lognormalMle } from '../../../../src/statistics/index.ts';
import { expectClose } from '../expect-close.ts';
import { readJson, toNumber } from '../read-fixture.ts';

interface FixtureSet {
  id: number;
  low: number[];
  high: (number | string)[];
  km: {
    leftover: number;
    zero: number;
    lowest: number;
    smallest_detect: number;
    sd: number;
    quantiles: (number | null)[];
  };
  mle: {
    meanlog: number;
    sdlog: number;
    median: number;
    mean: number;
    sd: number;
    quantiles: number[];
  };
}

const fixture = readJson<{ probabilities: number[]; sets: FixtureSet[] }>(
  'r-survival/fixture.json',
);
const sets = fixture.sets.map((set) => ({
  ...set,
  results: set.low.map((low, i) => ({ low, high: toNumber(set.high[i] ?? Number.NaN) })),
}));

const KM = {
  relative: 1e-9,
  absolute: 1e-12,
  reason:
    'products of the same fractions; R turns the scale over, which costs digits of small values',
};
const MLE = {
  relative: 1e-6,
  absolute: 1e-7,
  reason: 'survreg stops on the change of the likelihood, which leaves about half the digits',
};

describe('R survival 3.5-3 on 200 generated sets', () => {
  it('holds sets with non-detects, traces, open ends and none of these', () => {
    const results = sets.flatMap((set) => set.results);
    expect(sets).toHaveLength(200);
    expect(results.filter(({ low, high }) => low === 0 && high > 0).length).toBeGreaterThan(300);
    expect(results.filter(({ low, high }) => low > 0 && low < high).length).toBeGreaterThan(300);
    expect(results.filter(({ high }) => high === Infinity).length).toBeGreaterThan(20);
    expect(sets.filter((set) => set.results.every(({ low, high }) => low === high)).length).toBe(
      34,
    );
  });

  it('survfit: leftover, three means and spread of every set', () => {
    for (const { results, km } of sets) {
      const ours = kaplanMeier(results);
      expectClose(ours.leftover, km.leftover, KM);
      expectClose(ours.mean.zero, km.zero, KM);
      expectClose(ours.mean.lowest, km.lowest, KM);
      expectClose(ours.mean.smallestDetect, km.smallest_detect, KM);
      expectClose(ours.sd, km.sd, KM);
    }
  });

  it('quantile.survfit: seven quantiles of every set, null where they lie in the leftover', () => {
    for (const { results, km } of sets) {
      const ours = kaplanMeier(results);
      fixture.probabilities.forEach((p, i) => {
        const expected = km.quantiles[i] ?? null;
        if (expected === null) expect(ours.quantile(p)).toBeNull();
        else expectClose(ours.quantile(p), expected, KM);
      });
      expect(ours.median).toBe(ours.quantile(0.5));
    }
  });

  it('survreg interval2: parameters, median, mean, spread and quantiles of every set', () => {
    for (const { results, mle } of sets) {
      const ours = lognormalMle(results);
      expect(ours.converged).toBe(true);
      expectClose(ours.meanLog, mle.meanlog, MLE);
      expectClose(ours.sdLog, mle.sdlog, MLE);
      expectClose(ours.median, mle.median, MLE);
      expectClose(ours.mean, mle.mean, MLE);
      expectClose(ours.sd, mle.sd, MLE);
      fixture.probabilities.forEach((p, i) => {
        expectClose(ours.quantile(p), mle.quantiles[i] as number, MLE);
      });
    }
  });
});
