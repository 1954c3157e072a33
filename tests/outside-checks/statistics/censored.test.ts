import { describe, expect, it } from 'vitest';
import {
  type CensoredResult,
  kaplanMeier,
  lognormalMle,
  normalMle,
  robustRos,
} from '../../../src/statistics/index.ts';
import { plottingPositions } from '../../../src/statistics/plotting-positions.ts';
import { expectClose } from './expect-close.ts';
import { readCsv, readJson } from './read-fixture.ts';

interface Published {
  method: 'km' | 'mle' | 'ros';
  stat: string;
  value: number;
  tol_abs: number;
  note: string;
  seen: string;
}

type Figures = Record<string, number | null>;

interface Case {
  id: string;
  title: string;
  source: string;
  published: Published[];
  info: {
    plotting_positions_published?: number[];
    prob_exceed_limits_published?: number[];
    imputed_nondetects_published_sorted?: number[];
    imputed_tolerance?: number;
  };
  computed: { values: { km?: Figures; mle?: Figures; ros?: Figures } };
}

const { cases } = readJson<{ cases: Case[] }>('censored-expected.json');
const rows = readCsv<'dataset' | 'lo' | 'hi'>('censored-data.csv');

function resultsOf(id: string): CensoredResult[] {
  return rows
    .filter((row) => row.dataset === id)
    .map(({ lo, hi }) => ({ low: Number(lo), high: Number(hi) }));
}

/** Every figure of a method under the name the case files give it; an absent name is a failure. */
function figures(method: string, results: CensoredResult[]): Figures {
  if (method === 'km') return kaplanMeierFigures(results);
  return method === 'mle' ? likelihoodFigures(results) : regressionFigures(results);
}

function kaplanMeierFigures(results: CensoredResult[]): Figures {
  const km = kaplanMeier(results);
  const { zero, lowest, smallestDetect } = km.mean;
  if (zero === null || lowest === null || smallestDetect === null || km.sd === null) return {};
  // The spread with the leftover moved from the lowest number to the smallest detect.
  const moved =
    km.leftover === 0 ? 0 : ((smallestDetect - zero) ** 2 - (lowest - zero) ** 2) / km.leftover;
  return {
    n: km.n,
    n_censored: km.nonDetects,
    leftover_below_lowest_detect: km.leftover,
    mean_leftover_at_zero: zero,
    mean_leftover_at_lowest_value: lowest,
    mean_survfit_rmean: lowest,
    mean_leftover_at_lowest_detect: smallestDetect,
    sd_leftover_at_lowest_value: km.sd,
    sd_leftover_at_lowest_detect: Math.sqrt(km.sd ** 2 + lowest ** 2 + moved - smallestDetect ** 2),
    q10: km.quantile(0.1),
    q25: km.quantile(0.25),
    q50: km.median,
    q75: km.quantile(0.75),
    q90: km.quantile(0.9),
  };
}

function likelihoodFigures(results: CensoredResult[]): Figures {
  const mle = lognormalMle(results);
  const ofLogs = normalMle(
    results.map(({ low, high }) => ({ low: Math.log(low), high: Math.log(high) })),
  );
  expect(mle.converged).toBe(true);
  return {
    meanlog: mle.meanLog,
    sdlog: mle.sdLog,
    median: mle.median,
    mean: mle.mean,
    sd: mle.sd,
    q25: mle.quantile(0.25),
    q75: mle.quantile(0.75),
    q90: mle.quantile(0.9),
    q95: mle.quantile(0.95),
    se_meanlog: ofLogs.uMean,
    se_logsdlog: ofLogs.uLogSd,
  };
}

function regressionFigures(results: CensoredResult[]): Figures {
  const ros = robustRos(results);
  return {
    meanlog: ros.meanLog,
    sdlog: ros.sdLog,
    mean: ros.mean,
    sd: ros.sd,
    median: ros.median,
    q25_type7: ros.quantile(0.25),
    q75_type7: ros.quantile(0.75),
  };
}

/** The completed values of the censored results, which only the quantiles give away. */
function completedNonDetects(results: CensoredResult[]): number[] {
  const ros = robustRos(results);
  const list = results.map((_, i) => ros.quantile(i / (results.length - 1)));
  for (const { low, high } of results) {
    if (low !== high) continue;
    const at = list.findIndex((value) => Math.abs(value - high) <= 1e-12 * high);
    list.splice(at, 1);
  }
  return list;
}

function positionsOf(results: CensoredResult[]): {
  positions: number[];
  exceedance: number[];
} {
  const exact = Float64Array.from(
    results.filter((r) => r.low === r.high).map((r) => r.high),
  ).sort();
  const limits = Float64Array.from(results.filter((r) => r.low < r.high).map((r) => r.high)).sort();
  const found = plottingPositions(exact, limits);
  const distinct = [...new Set(limits)];
  const exceedance = distinct.map((limit) => {
    const first = limits.indexOf(limit);
    const count = limits.filter((other) => other === limit).length;
    return 1 - (found.limits[first] as number) * (count + 1);
  });
  if ((exact[0] as number) < (limits[0] as number)) exceedance.unshift(1);
  const positions = [...found.exact, ...found.limits].sort((a, b) => a - b);
  return { positions, exceedance };
}

const NOT_RETURNED = new Set([
  'tie_quantile_equals_leftover',
  'n_dropped_limits_above_max_detect',
  'intercept',
  'slope',
]);
const QUANTILES: Record<string, number> = { q10: 0.1, q25: 0.25, q50: 0.5, q75: 0.75, q90: 0.9 };
const COMPUTED = {
  relative: 1e-6,
  reason: 'computed with R 4.2.2 and survival 3.5-3, printed to 12 figures, checked to 1e-6',
};

// The set in which nothing is quantified has no figures; what must be refused is tested below.
const withFigures = cases.filter(({ computed }) => computed.values.km !== undefined);

for (const { id, title, source, published, info, computed } of withFigures) {
  const results = resultsOf(id);

  describe(`${source}: ${title}`, () => {
    for (const { method, stat, value, tol_abs: absolute, note, seen } of published) {
      it(`${method} ${stat} is ${value} (${note}; ${seen})`, () => {
        expectClose(figures(method, results)[stat], value, {
          absolute,
          reason: 'printed digits of the source, as stated with the case',
        });
      });
    }

    for (const [method, values] of Object.entries(computed.values)) {
      it(`${method}: every figure computed with R agrees`, () => {
        const ours = figures(method, results);
        const { tie_quantile_equals_leftover: tied, leftover_below_lowest_detect: leftover } =
          values;
        for (const [stat, value] of Object.entries(values)) {
          if (NOT_RETURNED.has(stat)) continue;
          // Equal to the leftover, a quantile hangs on a convention; it is tested by itself elsewhere.
          if (tied === 1 && Math.abs((QUANTILES[stat] ?? -1) - (leftover ?? 0)) < 1e-9) continue;
          expect(ours, stat).toHaveProperty(stat);
          if (value === null) expect(ours[stat], stat).toBeNull();
          else expectClose(ours[stat], value, COMPUTED);
        }
      });
    }

    const { plotting_positions_published: positions } = info;
    if (positions !== undefined) {
      it('plotting positions as printed', () => {
        const sorted = [...positions].sort((a, b) => a - b);
        positionsOf(results).positions.forEach((value, i) => {
          expectClose(value, sorted[i] as number, {
            absolute: 0.0005,
            reason: 'half a unit of the last printed digit',
          });
        });
      });
    }

    const { prob_exceed_limits_published: exceedance } = info;
    if (exceedance !== undefined) {
      it('probabilities of exceeding each limit as printed', () => {
        const ours = positionsOf(results).exceedance;
        expect(ours).toHaveLength(exceedance.length);
        ours.forEach((value, i) => {
          expectClose(value, exceedance[i] as number, {
            absolute: 0.0001,
            reason: 'four printed digits, some cut instead of rounded',
          });
        });
      });
    }

    const { imputed_nondetects_published_sorted: imputed, imputed_tolerance: absolute = 0 } = info;
    if (imputed !== undefined) {
      it('completed non-detects of the regression on order statistics as printed', () => {
        const ours = completedNonDetects(results);
        expect(ours).toHaveLength(imputed.length);
        ours.forEach((value, i) => {
          expectClose(value, imputed[i] as number, {
            absolute,
            reason: 'printed digits of the source, partly truncated, as stated with the case',
          });
        });
      });
    }
  });
}

describe('Helsel (2005), chapter 8, arsenic with two limits and nothing quantified', () => {
  const results = resultsOf('two_limit_arsenic_nothing_quantified');

  it('Kaplan-Meier gives no mean, spread, median or quantile', () => {
    const km = kaplanMeier(results);
    expect(km).toMatchObject({ n: 24, nonDetects: 24, leftover: 1, sd: null, median: null });
    expect(km.mean).toEqual({ zero: null, lowest: null, smallestDetect: null });
    expect(km.quantile(0.9)).toBeNull();
  });

  it('likelihood and regression on order statistics are refused', () => {
    expect(() => lognormalMle(results)).toThrow('single number');
    expect(() => robustRos(results)).toThrow('single numbers');
  });
});
