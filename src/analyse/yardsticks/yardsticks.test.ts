import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { readBench } from '../../commands/read-bench.ts';
import { computeWaterUse } from '../water-use.ts';

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
    expect(row).toMatchObject({ within_2_3: false, reaches_40_percent: false });
  });

  it('meets a yardstick at the very figure', () => {
    const at = (drain: string) =>
      rowsOf([RO], { 'drain-runs.csv': csv(RUNS, `ro,1,1 L,${drain},tap-closed`) })[0];
    expect(at('2.3 L')?.within_2_3).toBe(true);
    expect(at('2.31 L')?.within_2_3).toBe(false);
    expect(at('1.5 L')?.reaches_40_percent).toBe(true);
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
