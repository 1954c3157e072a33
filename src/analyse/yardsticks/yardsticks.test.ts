import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { readBench } from '../../commands/read-bench.ts';
import { spreadUse } from '../drain-uncertainty/spread-use.ts';
import { computeWaterUse } from '../water-use.ts';
import { atLeast, atMost } from './index.ts';

const DEVICES = 'device,name,form,technology,tank,drain_line';
const RUNS = 'device,run,clean,drain,collected_until';
const SCENARIOS = 'scenario,weekdays,window,pours_per_day,volume_each,spread';

function rowsOf(devices: readonly string[], texts: Record<string, string> = {}) {
  const bench = {
    'devices.csv': csv(DEVICES, ...devices),
    'scenarios.csv': csv(SCENARIOS, 'glasses,daily,08:00-20:00,4,250 ml,even'),
    ...texts,
  };
  return withBench(bench, (folder) =>
    computeWaterUse(readBench(folder), 1).facts.map((fact) => fact.row.yardsticks),
  );
}

const RO = 'ro,Reverse osmosis,under-sink,reverse-osmosis,no,yes';

describe('a device beside the published yardsticks', () => {
  it('recovers while producing more than it is efficient in use, as flushes count in use only', () => {
    const [row] = rowsOf([RO], {
      'drain-runs.csv': csv(RUNS, 'ro,1,2 L,2 L,tap-closed'),
      'flush-rules.csv': csv('device,rule,trigger,after,volume', 'ro,rinse,idle,10 min,0.5 L'),
    });
    expect(row?.recovery_tank_bypassed).toBeCloseTo(0.5, 12);
    expect(row?.efficiency_in_use).toBeCloseTo(0.25, 12);
    expect(row).toMatchObject({ within_2_3: 'cannot-say', reaches_40_percent: 'cannot-say' });
  });

  it('meets or misses a yardstick with its whole range, the very figure included', () => {
    const range = (low: number, high: number) => ({ low, estimate: (low + high) / 2, high });
    expect(atMost(range(1, 2.3), 2.3)).toBe('meets');
    expect(atMost(range(2.2, 2.4), 2.3)).toBe('cannot-say');
    expect(atMost(range(2.3, 2.4), 2.3)).toBe('cannot-say');
    expect(atMost(range(2.31, 2.4), 2.3)).toBe('misses');
    expect(atLeast(range(0.4, 0.5), 0.4)).toBe('meets');
    expect(atLeast(range(0.39, 0.5), 0.4)).toBe('cannot-say');
    expect(atLeast(range(0.3, 0.39), 0.4)).toBe('misses');
  });

  it('cannot be said without a range, and is not tested without an estimate', () => {
    expect(atMost({ low: null, estimate: 1, high: null }, 2.3)).toBe('cannot-say');
    expect(atLeast({ low: null, estimate: 0.9, high: null }, 0.4)).toBe('cannot-say');
    expect(atMost({ low: null, estimate: null, high: null }, 2.3)).toBeNull();
    expect(atLeast({ low: null, estimate: null, high: null }, 0.4)).toBeNull();
  });

  it('is judged by the range once the draws are made', () => {
    const verdictOf = (drain: string) =>
      withBench(
        {
          'bench.json': '{"title":"t","scenario_days":28,"water_use":{"draws":200}}',
          'devices.csv': csv(DEVICES, RO),
          'scenarios.csv': csv(SCENARIOS, 'glasses,daily,08:00-20:00,4,250 ml,even'),
          'drain-runs.csv': csv(RUNS, `ro,1,1 L,${drain},tap-closed`),
        },
        (folder) => {
          const bench = readBench(folder);
          const [fact] = spreadUse(bench, computeWaterUse(bench, 1), { seed: 1, draws: 200 });
          return fact?.row.yardsticks?.within_2_3;
        },
      );
    expect(verdictOf('2 L')).toBe('meets');
    expect(verdictOf('2.3 L')).toBe('cannot-say');
    expect(verdictOf('2.6 L')).toBe('misses');
  });

  it('is not tested where its drain is not', () => {
    expect(rowsOf([RO])).toEqual([
      {
        recovery_tank_bypassed: null,
        efficiency_in_use: null,
        within_2_3: null,
        reaches_40_percent: null,
      },
    ]);
  });

  it('has no recovery of a tank that is not described, and that of filling it open where it is', () => {
    const tank = ['ro,Tank,under-sink,reverse-osmosis,yes,yes'];
    const runs = { 'drain-runs.csv': csv(RUNS, 'ro,1,1 L,5 L,shut-off') };
    expect(rowsOf(tank, runs)[0]?.recovery_tank_bypassed).toBeNull();
    const tanks = csv(
      'device,shell,precharge,feed_pressure,stop,restart,permeate_flow,reject_flow',
      'ro,14 L,7 psi,60 psi,40 psi,36 psi,0.2 L/min,0.6 L/min',
    );
    expect(rowsOf(tank, { ...runs, 'tanks.csv': tanks })[0]?.recovery_tank_bypassed).toBeCloseTo(
      0.25,
      12,
    );
  });

  it('is not concerned where it is no reverse osmosis or has no drain line', () => {
    expect(
      rowsOf(['a,Jug,pitcher,carbon,no,no', 'b,Box,countertop,reverse-osmosis,no,no']),
    ).toEqual([null, null]);
  });
});
