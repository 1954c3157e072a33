import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import { readBench } from '../commands/read-bench.ts';
import { breakEvens, curveRatio, drainCurves } from './drain-curve.ts';
import { computeWaterUse } from './water-use.ts';

const RUNS = 'device,run,clean,drain,collected_until';
const RULES = 'device,rule,trigger,after,volume,switchable,drain_fraction';
const SCENARIOS = 'scenario,weekdays,window,pours_per_day,volume_each,spread';

function use(texts: Record<string, string>) {
  const bench = {
    'drain-runs.csv': csv(RUNS, 'ro,1,2 L,3 L,tap-closed'),
    'flush-rules.csv': csv(RULES, 'ro,rinse,idle,10 min,0.8 L,yes,1'),
    'scenarios.csv': csv(SCENARIOS, 'glasses,daily,08:00-20:00,4,250 ml,even'),
    ...texts,
  };
  return withBench(bench, (folder) => computeWaterUse(readBench(folder), 1));
}

const factOf = (found: ReturnType<typeof use>, device: string, variant: string) =>
  found.facts.find((fact) => fact.row.device === device && fact.row.variant === variant)?.row;

describe('a usage scenario', () => {
  it('adds the flushes to what drains while producing', () => {
    // 4 pours of 250 mL a day, 3 h apart: 1 L clean, 1.5 L while producing, 4 flushes of 0.8 L.
    const row = factOf(use({}), 'ro', 'standard');
    expect(row?.clean_L_per_day.estimate).toBeCloseTo(1, 12);
    expect(row?.producing_drain_L_per_day.estimate).toBeCloseTo(1.5, 12);
    expect(row?.flush_drain_L_per_day.estimate).toBeCloseTo(3.2, 12);
    expect(row?.total_drain_ratio.estimate).toBeCloseTo(4.7, 12);
    expect(row?.recovery.estimate).toBeCloseTo(1 / 5.7, 12);
    expect(row?.drain_L_per_year.estimate).toBeCloseTo(4.7 * 365, 9);
  });

  it('with the switchable flush off has a variant of its own', () => {
    const row = factOf(use({}), 'ro', 'flush-off');
    expect(row?.flush_drain_L_per_day.estimate).toBe(0);
    expect(row?.total_drain_ratio.estimate).toBeCloseTo(1.5, 12);
  });

  it('gives a device without a drain line a drain of zero', () => {
    const row = factOf(use({}), 'jug', 'standard');
    expect(row).toMatchObject({
      total_drain_ratio: { estimate: 0 },
      recovery: { estimate: 1 },
    });
  });

  it('is not tested, and never zero, for a device without a measured run', () => {
    const found = use({ 'drain-runs.csv': csv(RUNS) });
    expect(factOf(found, 'ro', 'standard')?.total_drain_ratio.estimate).toBeNull();
    expect(found.findings.map((item) => item.code)).toContain('drain-runs-missing');
  });

  it('knows weekdays: power-on is on a Monday', () => {
    const found = use({
      'bench.json': '{"title":"t","measures":"us","scenario_days":7}',
      'scenarios.csv': csv(SCENARIOS, 'weekend,weekends,08:00-20:00,1,1 L,even'),
    });
    expect(factOf(found, 'ro', 'standard')?.clean_L_per_day.estimate).toBeCloseTo(2 / 7, 12);
  });

  it('from a recording runs from its power-on to its end', () => {
    const found = use({
      'scenarios.csv': csv(SCENARIOS),
      'usage/day.csv': csv(
        'at,volume,what',
        '2026-07-06T06:00,,power-on',
        '2026-07-06T07:00,1 L,pour',
        '2026-07-06T18:00,,end',
      ),
    });
    const row = factOf(found, 'ro', 'standard');
    // Half a day: 2 L of clean water a day.
    expect(row?.clean_L_per_day.estimate).toBeCloseTo(2, 12);
    expect(row?.scenario).toBe('day');
  });

  it('refuses a recording whose pours overlap for a device, at the row that overlaps', () => {
    const found = use({
      'scenarios.csv': csv(SCENARIOS),
      'pours.csv': csv('device,run,volume,time', 'ro,1,1 L,60 s'),
      'usage/day.csv': csv('at,volume', '2026-07-06T07:00,2 L', '2026-07-06T07:01,1 L'),
    });
    const overlap = found.findings.find((item) => item.code === 'pours-overlap');
    expect(overlap?.place).toMatchObject({ file: 'usage/day.csv', line: 3, column: 1 });
  });
});

describe('the curve of a pour that stands alone', () => {
  const curves = (texts: Record<string, string>) => drainCurves(use(texts).drains);

  it('is ratio + fixed drain over the pour', () => {
    const { curves: found } = curves({});
    const standard = found[0];
    if (standard === undefined) throw new Error('no curve');
    expect(curveRatio(standard, 0.25)).toBeCloseTo(1.5 + 0.8 / 0.25, 12);
    expect(curveRatio(standard, 4)).toBeCloseTo(1.5 + 0.8 / 4, 12);
  });

  it('is refused for a tank, whose drain depends on how full it is', () => {
    const { curves: found, findings } = curves({
      'devices.csv': csv(
        'device,name,form,technology,tank,drain_line,acquired,interests',
        'ro,R,under-sink,reverse-osmosis,yes,yes,bought,none',
      ),
    });
    expect(found.every((curve) => curve.isolated === null)).toBe(true);
    expect(findings.map((item) => item.code)).toContain('tank-curve-refused');
  });

  it('crosses another at the break-even pour', () => {
    const devices = csv(
      'device,name,form,technology,tank,drain_line,acquired,interests',
      'ro,R,under-sink,reverse-osmosis,no,yes,bought,none',
      'old,O,under-sink,reverse-osmosis,no,yes,bought,none',
    );
    const { curves: found } = curves({
      'devices.csv': devices,
      'drain-runs.csv': csv(RUNS, 'ro,1,2 L,3 L,tap-closed', 'old,1,1 L,4 L,tap-closed'),
    });
    const ro = found.find((curve) => curve.drain.device.values.device === 'ro');
    const old = found.find((curve) => curve.drain.device.values.device === 'old');
    if (ro === undefined || old === undefined) throw new Error('no curve');
    // (0.8 - 0) / (4 - 1.5)
    const [pourL, ...others] = breakEvens(ro, old);
    expect(pourL).toBeCloseTo(0.32, 12);
    expect(others).toEqual([]);
  });
});
