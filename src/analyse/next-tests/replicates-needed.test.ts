import { describe, expect, it } from 'vitest';
import { withBench } from '../../../tests/benches/write-bench.ts';
import { readBench } from '../../commands/read-bench.ts';
import type { Analyte } from '../../reference/index.ts';
import { randomStream } from '../../simulate/index.ts';
import { normalQuantile, studentTQuantile } from '../../statistics/index.ts';
import { riseProbability, type UncertainSide } from '../reduction-statement.ts';
import { combineUncertainties, standardUncertainty } from '../uncertainty/index.ts';
import { type LabTerms, plannedFigure } from './planned-figure.ts';
import { plannedBench } from './planned-pair.ts';
import { replicatesNeeded } from './replicates-needed.ts';

const bench = withBench({}, readBench);
const planned = plannedBench(bench);
const lead = bench.analytes.byKey('lead') as Analyte;
const TERMS: LabTerms = { limit: 0.5, detectionLimit: 0.1, uncertainty: null };
const points = (value: number, power = 0.8) =>
  ({ margin: { kind: 'points', value }, power }) as const;
const needed = (passage: number, plan: ReturnType<typeof points>, terms = TERMS, level = 0.05) =>
  replicatesNeeded(planned, lead, terms, { feed: 100, passage, level }, plan).samples;

describe('samples that tell two devices apart', () => {
  it('are more for a smaller margin, a higher power and more pairs', () => {
    expect(needed(0.2, points(0.02)) ?? 0).toBeGreaterThan(needed(0.2, points(0.1)) ?? 0);
    expect(needed(0.2, points(0.05, 0.99)) ?? 0).toBeGreaterThan(needed(0.2, points(0.05)) ?? 0);
    expect(needed(0.2, points(0.05), TERMS, 0.05 / 91) ?? 0).toBeGreaterThan(
      needed(0.2, points(0.05)) ?? 0,
    );
  });

  it('take a factor between what passes as well as points of the reduction', () => {
    const factor = replicatesNeeded(
      planned,
      lead,
      TERMS,
      { feed: 100, passage: 0.2, level: 0.05 },
      { margin: { kind: 'ratio', value: 1.25 }, power: 0.8 },
    );
    expect(factor.samples).toBe(needed(0.2, points(0.05)));
  });

  it('do not exist where both products would lie below the limit', () => {
    const setting = { feed: 1, passage: 0.01, level: 0.05 };
    expect(replicatesNeeded(planned, lead, TERMS, setting, points(0.05))).toEqual({
      samples: null,
      why: 'both-below-limit',
    });
  });

  it('are one or none where the lab states its uncertainty, which results share', () => {
    const stated = (uncertainty: number) => ({ ...TERMS, uncertainty });
    expect(needed(0.2, points(0.1), stated(0.02))).toBe(1);
    expect(
      replicatesNeeded(
        planned,
        lead,
        stated(0.2),
        { feed: 100, passage: 0.2, level: 0.05 },
        points(0.05),
      ),
    ).toEqual({ samples: null, why: 'stated-uncertainty' });
  });

  it('are too many to name beyond two hundred', () => {
    const setting = { feed: 100, passage: 0.5, level: 0.05 };
    expect(replicatesNeeded(planned, lead, TERMS, setting, points(0.0005)).why).toBe('too-many');
  });
});

const TRIALS = 2000;

/** Shares of trials in which the t test and the tool's own test tell the devices apart. */
function simulate(passage: number, margin: number, samples: number, level: number) {
  const stream = randomStream(11, samples);
  const worse = (passage + margin) * 100;
  const { uncertainty } = planned.sideOf(plannedFigure(worse, TERMS), lead);
  const sd = standardUncertainty(uncertainty, worse);
  const draw = (mean: number): number[] =>
    Array.from({ length: samples }, () => mean + sd * normalQuantile(stream.nextFraction() || 0.5));
  const critical = studentTQuantile(1 - level / 2, 2 * samples - 2);
  let byT = 0;
  let byTool = 0;
  for (let trial = 0; trial < TRIALS; trial += 1) {
    const [a, b] = [draw(passage * 100), draw(worse)];
    const [meanA, meanB] = [meanOf(a), meanOf(b)];
    const pooled = Math.sqrt((squares(a, meanA) + squares(b, meanB)) / (2 * samples - 2));
    if (meanB - meanA > critical * pooled * Math.sqrt(2 / samples)) byT += 1;
    const above = riseProbability(sideOf(a), sideOf(b), planned.options) ?? 1;
    if (2 * above <= level) byTool += 1;
  }
  return { byT: byT / TRIALS, byTool: byTool / TRIALS };
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const squares = (values: readonly number[], mean: number): number =>
  values.reduce((sum, value) => sum + (value - mean) ** 2, 0);

/** The mean of replicates as the tool joins them. */
function sideOf(values: readonly number[]): UncertainSide {
  const mean = meanOf(values);
  const all = values.map((value) => planned.sideOf(plannedFigure(value, TERMS), lead));
  const parts = all.map(({ uncertainty }, at) => ({ uncertainty, size: values[at] ?? 0 }));
  const point = { low: mean, high: mean };
  const first = all[0] as UncertainSide;
  return {
    ...first,
    interval: point,
    readings: point,
    estimate: mean,
    uncertainty: combineUncertainties(parts, 'mean'),
  };
}

describe('the number of samples, simulated with a fixed seed', () => {
  // 2,000 trials: a power of 0.8 has a standard error of 0.009; four of them are allowed.
  it.each([
    [0.2, 0.05, 0.05],
    [0.5, 0.06, 0.05],
    [0.3, 0.08, 0.05 / 28],
  ])(
    'reaches a power of 0.8, and one sample fewer does not: passage %f, margin %f, level %f',
    (passage, margin, level) => {
      const samples = needed(passage, points(margin), TERMS, level) ?? 0;
      expect(samples).toBeGreaterThan(2);
      const { byT, byTool } = simulate(passage, margin, samples, level);
      expect(byT).toBeGreaterThan(0.8 - 0.036);
      // The tool knows or assumes the scatter, so it needs no more than the t test.
      expect(byTool).toBeGreaterThan(0.8 - 0.036);
      const fewer = simulate(passage, margin, samples - 1, level);
      expect(fewer.byT).toBeLessThan(0.8 + 0.036);
    },
    60_000,
  );
});
