import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { readBench } from '../../commands/read-bench.ts';
import { computeWaterUse } from '../water-use.ts';
import { benchUncertainty } from './device-uncertainty.ts';
import { inputRows } from './input-shares.ts';
import { spreadUse } from './spread-use.ts';

const RUNS = 'device,run,clean,drain,collected_until';
const FLUSHES = 'device,rule,volume';
const RULES = 'device,rule,trigger,after,volume,switchable';
const SCENARIOS = 'scenario,weekdays,window,pours_per_day,volume_each,spread';
const SEED = 3;

const TEXTS = {
  'drain-runs.csv': csv(
    RUNS,
    'ro,1,1 L,1.51 L,tap-closed',
    'ro,2,2 L,2.98 L,tap-closed',
    'ro,3,2 L,3.03 L,tap-closed',
  ),
  'flush-rules.csv': csv(RULES, 'ro,rinse,idle,10 min,,yes'),
  'flushes.csv': csv(FLUSHES, 'ro,rinse,790 ml', 'ro,rinse,800 ml', 'ro,rinse,815 ml'),
  'scenarios.csv': csv(
    SCENARIOS,
    'even,daily,08:00-20:00,4,250 ml,even',
    'chance,daily,08:00-20:00,4,250 ml,random',
  ),
};

function settings(water: object, more: object = {}): string {
  return JSON.stringify({ title: 't', scenario_days: 90, water_use: water, ...more });
}

function spread(texts: Record<string, string> = {}, options = {}) {
  const bench = { ...TEXTS, 'bench.json': settings({ draws: 400, years: 100 }), ...texts };
  return withBench(bench, (folder) => {
    const read = readBench(folder);
    expect(read.findings.filter(({ level }) => level === 'error')).toEqual([]);
    const use = computeWaterUse(read, SEED);
    const draws = read.settings.water_use.draws;
    const facts = spreadUse(read, use, { seed: SEED, draws, ...options });
    return {
      facts,
      inputs: facts.map((each) => inputRows(each, benchUncertainty(read, use.drains))),
    };
  });
}

const rowOf = (found: ReturnType<typeof spread>, device: string, scenario: string) => {
  const fact = found.facts.find(
    ({ row }) => row.device === device && row.scenario === scenario && row.variant === 'standard',
  );
  if (fact === undefined) throw new Error('no such fact');
  return fact.row;
};

describe('ranges of water use', () => {
  it('hold their estimate, and are wider than nothing where something was measured', () => {
    const found = spread();
    for (const { row } of found.facts) {
      for (const figure of [row.total_drain_ratio, row.recovery, row.clean_L_per_day]) {
        expect(figure.low).not.toBeNull();
        expect(figure.low ?? 0).toBeLessThanOrEqual(figure.estimate ?? 0);
        expect(figure.high ?? 0).toBeGreaterThanOrEqual(figure.estimate ?? 0);
      }
    }
    const { total_drain_ratio: ratio } = rowOf(found, 'ro', 'even');
    expect((ratio.high ?? 0) - (ratio.low ?? 0)).toBeGreaterThan(0.1);
  });

  it('are the same for the same seed, and of a device whatever else is left out', () => {
    const all = spread();
    expect(spread().facts.map(({ row }) => row)).toEqual(all.facts.map(({ row }) => row));
    const some = spread(
      {},
      { keeps: ({ row }: { row: { scenario: string } }) => row.scenario === 'chance' },
    );
    expect(rowOf(some, 'ro', 'chance')).toEqual(rowOf(all, 'ro', 'chance'));
    expect(rowOf(some, 'ro', 'even').recovery.low).toBeNull();
    expect(rowOf(spread({}, { seed: 4 }), 'ro', 'even')).not.toEqual(rowOf(all, 'ro', 'even'));
  });

  it('are none without draws', () => {
    const found = spread({ 'bench.json': settings({ draws: 0 }) });
    expect(rowOf(found, 'ro', 'even').total_drain_ratio).toMatchObject({ low: null, high: null });
  });

  it('of a device without a drain line are 0 to 0', () => {
    expect(rowOf(spread(), 'jug', 'even').total_drain_ratio).toEqual({
      low: 0,
      estimate: 0,
      high: 0,
    });
  });

  it('of a tank device are not given: its drain follows the filling of the tank', () => {
    const found = spread({
      'devices.csv': csv(
        'device,name,form,technology,tank,drain_line,acquired,interests',
        'ro,R,under-sink,reverse-osmosis,yes,yes,bought,none',
      ),
    });
    expect(rowOf(found, 'ro', 'even').total_drain_ratio.low).toBeNull();
  });

  it('follow the assumed spread of pour sizes: clean water is the estimate times a lognormal factor', () => {
    const found = spread({
      'bench.json': settings({ draws: 400, years: 100, pour_size_spread: 0.2 }),
    });
    const clean = rowOf(found, 'ro', 'even').clean_L_per_day;
    // exp(±1.96 s - s²/2) with s² = ln(1.04); 40 years leave the ends open by some hundredths.
    expect(Math.abs((clean.low ?? 0) - 0.665)).toBeLessThan(0.04);
    expect(Math.abs((clean.high ?? 0) - 1.446)).toBeLessThan(0.08);
  });

  it('of random pours hold the spread of years, which is that of a Poisson number of pours', () => {
    const found = spread({
      'bench.json': settings({ draws: 2000, years: 2000, pour_size_spread: 0 }),
    });
    const clean = rowOf(found, 'ro', 'chance').clean_L_per_day;
    // 360 pours expected: standard deviation √360 × 0.25 L / 90 days, times ±1.96.
    const expected = (2 * 1.96 * Math.sqrt(360) * 0.25) / 90;
    expect(Math.abs(((clean.high ?? 0) - (clean.low ?? 0)) / expected - 1)).toBeLessThan(0.1);
    const even = rowOf(found, 'ro', 'even').clean_L_per_day;
    expect(even.high).toBeCloseTo(even.low ?? 0, 12);
  });
});

describe('the share an input has in a range', () => {
  const shares = (water: object) => {
    const { facts, inputs } = spread({ 'bench.json': settings({ draws: 1000, ...water }) });
    const at = facts.findIndex(
      ({ row }) => row.device === 'ro' && row.variant === 'standard' && row.scenario === 'even',
    );
    return new Map((inputs[at] ?? []).map((row) => [row.input, row]));
  };

  it('is nearly all for the pour size where small pours bear a flush each', () => {
    expect(shares({}).get('pour-factor')?.share).toBeGreaterThan(0.8);
  });

  it('is none for a pour size that is known, and goes to ratio and flush then', () => {
    const found = shares({ pour_size_spread: 0 });
    const of = (input: string) => found.get(input)?.share ?? Number.NaN;
    expect(of('pour-factor')).toBe(0);
    expect(of('drain-ratio') + of('flush.rinse.volume')).toBeGreaterThan(0.95);
    expect(of('flush.rinse.volume')).toBeGreaterThan(0.3);
  });

  it('stands beside the standard error of the mean flush', () => {
    const row = shares({}).get('flush.rinse.volume');
    // Sample deviation of 790, 800, 815 mL: 12.58 mL, over √3 7.26 mL; class B cylinder 6 mL / √3.
    expect(row?.standard_uncertainty).toBeCloseTo(
      Math.hypot(12.5831 / Math.sqrt(3), 6 / Math.sqrt(3)) / 1000,
      6,
    );
    expect(row?.rests_on).toBe('flushes');
  });
});

const TANK_FILES = {
  'devices.csv': csv(
    'device,name,form,technology,tank,drain_line',
    'ro,R,under-sink,reverse-osmosis,no,yes',
    'tank,T,under-sink,reverse-osmosis,yes,yes',
    'closed,C,under-sink,reverse-osmosis,yes,yes',
  ),
  'tanks.csv': csv(
    'device,shell,precharge,feed_pressure,stop,restart,permeate_flow,reject_flow',
    'tank,14 L,7 psi,60 psi,40 psi,32 psi,0.2 L/min,0.6 L/min',
  ),
  'drain-runs.csv': csv(
    RUNS,
    'ro,1,1 L,1.51 L,tap-closed',
    'ro,2,2 L,2.98 L,tap-closed',
    'ro,3,2 L,3.03 L,tap-closed',
    'closed,1,1 L,4 L,shut-off',
  ),
};

describe('ranges of a tank that tanks.csv describes', () => {
  const found = (instruments: object = {}) =>
    spread({
      ...TANK_FILES,
      'bench.json': settings({ draws: 400, years: 100 }, { instruments }),
    });
  const width = ({ low, high }: { low: number | null; high: number | null }): number =>
    (high ?? Number.NaN) - (low ?? Number.NaN);

  it('hold the estimate of every figure', () => {
    for (const scenario of ['even', 'chance']) {
      const row = rowOf(found(), 'tank', scenario);
      for (const figure of [row.total_drain_ratio, row.recovery, row.drain_L_per_year]) {
        expect(width(figure)).toBeGreaterThan(0);
        expect(figure.low ?? 0).toBeLessThanOrEqual(figure.estimate ?? 0);
        expect(figure.high ?? 0).toBeGreaterThanOrEqual(figure.estimate ?? 0);
      }
    }
  });

  it('are wider the worse the gauge and the vessels are known', () => {
    const usual = width(rowOf(found(), 'tank', 'even').total_drain_ratio);
    const tank = (instruments: object): number =>
      width(rowOf(found(instruments), 'tank', 'even').total_drain_ratio);
    expect(tank({ gauge_kpa: 40 })).toBeGreaterThan(usual * 1.2);
    expect(tank({ vessel_tolerance: 0.2 })).toBeGreaterThan(usual * 1.2);
  });

  it('are the same bytes for the same seed, and do not depend on the other devices', () => {
    const first = rowOf(found(), 'tank', 'chance');
    expect(rowOf(found(), 'tank', 'chance')).toEqual(first);
    const alone = spread(
      { ...TANK_FILES, 'bench.json': settings({ draws: 400, years: 100 }) },
      { keeps: ({ row }: { row: { device: string } }) => row.device === 'tank' },
    );
    expect(rowOf(alone, 'tank', 'chance')).toEqual(first);
  });

  it('do not exist for a tank that is not described', () => {
    const { total_drain_ratio: ratio } = rowOf(found(), 'closed', 'even');
    expect(ratio).toEqual({ low: null, estimate: 4, high: null });
  });

  it('owe their width to inputs whose shares add up to all of it', () => {
    const { facts, inputs } = found();
    const at = facts.findIndex(({ row }) => row.device === 'tank' && row.scenario === 'even');
    const rows = inputs[at] ?? [];
    expect(rows.map((row) => row.input)).toContain('tank.reject-flow');
    expect(rows.map((row) => row.input)).not.toContain('drain-ratio');
    // Squared correlations of independent inputs add up to 1 at most, but for sampling: some hundredths.
    const told = rows.reduce((sum, row) => sum + (row.share ?? 0), 0);
    expect(told).toBeGreaterThan(0.9);
    expect(told).toBeLessThan(1.1);
  });

  it('move the drain in proportion to the drain flow alone', () => {
    const { facts } = found();
    const fact = facts.find(({ row }) => row.device === 'tank' && row.scenario === 'even');
    const { inputs, totalDrainRatio } = fact?.spread ?? {};
    const factor = inputs?.tank?.rejectFactor;
    const count = inputs?.tank?.tanks.length ?? 0;
    if (factor === undefined || totalDrainRatio === undefined) throw new Error('no draws');
    // Draws of one tank and year differ by their drain flow only.
    const perFactor = (draw: number) => (totalDrainRatio[draw] ?? 0) / (factor[draw] ?? 1);
    expect(count).toBe(200);
    expect(perFactor(0)).toBeCloseTo(perFactor(count), 9);
  });
});
