import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { readBench } from '../../commands/read-bench.ts';
import { randomStream } from '../../simulate/index.ts';
import { normalQuantile, sampleSd } from '../../statistics/index.ts';
import { type DrainFit, fitDrain } from '../drain-fit.ts';
import { computeWaterUse } from '../water-use.ts';
import { benchUncertainty } from './device-uncertainty.ts';
import { fitUncertainty } from './fit-uncertainty.ts';
import { fitScatter, NO_SCATTER, pooledScatter } from './run-scatter.ts';

const RUNS = 'device,run,clean,drain,collected_until,starts';
const JUG = {
  cylinder: 'B',
  vessel_tolerance: 0.01,
  scale_division_g: 1,
  stopwatch_s: 0.12,
  thermometer_degC: 0.5,
  gauge_kPa: 10,
} as const;
const EXACT = { ...JUG, vessel_tolerance: 1e-9 } as const;

function fitOf(rows: readonly string[]): DrainFit {
  return withBench({ 'drain-runs.csv': csv(RUNS, ...rows) }, (folder) => {
    const { fit } = fitDrain(readBench(folder), 'ro', 'standard');
    if (fit === null) throw new Error('no fit');
    return fit;
  });
}

describe('the standard error of a drain ratio', () => {
  it('is that of repeated fits of runs with such a scatter', () => {
    const runs = [
      [0.5, 1],
      [1, 1],
      [2, 1],
      [4, 1],
      [1, 4],
    ] as const;
    const relative = 0.03;
    const stream = randomStream(5);
    const exact = ([clean, starts]: (typeof runs)[number]) => 0.9 * clean + 0.05 * starts;
    const rowsOf = (noise: () => number) =>
      runs.map((run, index) => {
        const drain = exact(run) * (1 + relative * noise());
        return `ro,${index},${run[0]} L,${drain} L,tap-closed,${run[1]}`;
      });
    const fits = Array.from({ length: 150 }, () =>
      fitOf(rowsOf(() => normalQuantile(stream.nextFraction() + 2 ** -54))),
    ).filter(({ method }) => method === 'ratio and per-start');
    const told = fitUncertainty(
      fitOf(rowsOf(() => 0)),
      { relativeSd: relative, degreesOfFreedom: 99 },
      EXACT,
    );
    // A standard deviation of 150 is good to 6 %; three times that.
    expect(sampleSd(fits.map(({ ratio }) => ratio)) / told.uRatio).toBeGreaterThan(0.82);
    expect(sampleSd(fits.map(({ ratio }) => ratio)) / told.uRatio).toBeLessThan(1.18);
    expect(sampleSd(fits.map(({ perStartL }) => perStartL)) / told.uPerStartL).toBeGreaterThan(0.8);
    expect(sampleSd(fits.map(({ perStartL }) => perStartL)) / told.uPerStartL).toBeLessThan(1.2);
  });

  it('adds what the vessels may be off, for drain and clean water each', () => {
    const fit = fitOf(['ro,1,1 L,2 L,tap-closed,']);
    // One run: no scatter is known; 1 % half-width of a jug is 0.01 / √3 on each side.
    expect(fitUncertainty(fit, NO_SCATTER, JUG).uRatio).toBeCloseTo(
      2 * Math.hypot(0.01 / Math.sqrt(3), 0.01 / Math.sqrt(3)),
      9,
    );
  });

  it('is never smaller than what the graduation leaves open, even where runs agree', () => {
    const fit = fitOf(['ro,1,1 L,2 L,tap-closed,', 'ro,2,1 L,2 L,tap-closed,']);
    const { scatter } = fitUncertainty(fit, fitScatter(fit), {
      ...JUG,
      vessel_tolerance: undefined,
    });
    expect(scatter.ratioVariance).toBeGreaterThan(0);
  });

  it('pools the scatter of all devices by their degrees of freedom', () => {
    const scatter = pooledScatter([
      { relativeSd: 0.03, degreesOfFreedom: 1 },
      { relativeSd: 0.01, degreesOfFreedom: 3 },
      NO_SCATTER,
    ]);
    expect(scatter.degreesOfFreedom).toBe(4);
    expect(scatter.relativeSd).toBeCloseTo(Math.sqrt((9e-4 + 3e-4) / 4), 12);
    expect(pooledScatter([])).toEqual(NO_SCATTER);
  });
});

describe('isolated pours collected with their flush', () => {
  const bench = (...late: readonly string[]) =>
    withBench(
      {
        'drain-runs.csv': csv(
          RUNS,
          'ro,1,1 L,1.5 L,tap-closed,',
          'ro,2,2 L,3.01 L,tap-closed,',
          'ro,3,2 L,2.99 L,tap-closed,',
          ...late,
        ),
        'flush-rules.csv': csv('device,rule,trigger,after,volume', 'ro,rinse,idle,10 min,'),
        'flushes.csv': csv('device,rule,volume', 'ro,rinse,800 ml', 'ro,rinse,805 ml'),
      },
      (folder) => {
        const read = readBench(folder);
        return benchUncertainty(read, computeWaterUse(read, 1).drains).findings;
      },
    );

  it('say nothing where slope and intercept agree with ratio and flush', () => {
    expect(bench('ro,4,1 L,2.3 L,after-flush,1', 'ro,5,3 L,5.3 L,after-flush,1')).toEqual([]);
  });

  it('are a finding where they make another flush', () => {
    const [first] = bench('ro,4,1 L,2.9 L,after-flush,1', 'ro,5,3 L,5.9 L,after-flush,1');
    expect(first?.code).toBe('drain-ways-differ');
    expect(first?.message).toContain('1.4 L per pour');
  });

  it('say nothing with one such pour, or several of one size', () => {
    expect(bench('ro,4,1 L,2.9 L,after-flush,1')).toEqual([]);
    expect(bench('ro,4,1 L,2.9 L,after-flush,1', 'ro,5,1 L,2.9 L,after-flush,1')).toEqual([]);
  });
});
