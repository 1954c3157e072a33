import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { readBench } from '../../commands/read-bench.ts';
import { refillTank } from '../../simulate/index.ts';
import { breakEvens, curveRatio, drainCurves } from '../drain-curve.ts';
import { computeWaterUse } from '../water-use.ts';

const DEVICES = csv(
  'device,name,form,technology,tank,drain_line,acquired,interests',
  'ro,Tank device,under-sink,reverse-osmosis,yes,yes,bought,none',
  'direct,Tankless device,under-sink,reverse-osmosis,no,yes,bought,none',
);
const TANKS = 'device,shell,precharge,feed_pressure,stop,restart,permeate_flow,reject_flow';
const TANK = 'ro,14 L,7 psi,60 psi,40 psi,36 psi,0.2 L/min,0.6 L/min';
const SCENARIOS = 'scenario,weekdays,window,pours_per_day,volume_each,spread';
const RUNS = 'device,run,clean,drain,collected_until';

function use(texts: Record<string, string> = {}) {
  const bench = {
    'devices.csv': DEVICES,
    'tanks.csv': csv(TANKS, TANK),
    'drain-runs.csv': csv(RUNS, 'direct,1,2 L,3 L,tap-closed'),
    'scenarios.csv': csv(SCENARIOS, 'glasses,daily,08:00-20:00,12,250 ml,even'),
    ...texts,
  };
  return withBench(bench, (folder) => computeWaterUse(readBench(folder), 1));
}

const tankFact = (found: ReturnType<typeof use>) =>
  found.facts.find((fact) => fact.row.device === 'ro');

const codes = (found: ReturnType<typeof use>): string[] => found.findings.map((item) => item.code);

describe('a device whose tank is described', () => {
  it('drains what its refills take, without any measured run', () => {
    const found = use();
    const fact = tankFact(found);
    // 3 L a day; half a litre from full starts a filling, so every litre is one of the last half.
    expect(fact?.row.clean_L_per_day.estimate).toBeCloseTo(3, 10);
    expect(fact?.row.total_drain_ratio.estimate).toBeGreaterThan(6);
    expect(fact?.row.tank?.starts_per_day).toBeGreaterThan(3);
    expect(fact?.row.tank?.shortfall_L_per_day).toBe(0);
    expect(codes(found)).not.toContain('drain-runs-missing');
    expect(codes(found)).not.toContain('tank-ratio-fixed');
  });

  it('is as full at the end of the comparison as at its start', () => {
    const { row, tank, simulated } = tankFact(use()) ?? {};
    expect(simulated?.producingDrainL).toBeCloseTo(
      (tank?.drainL ?? 0) + (tank?.levelDrainL ?? 0),
      9,
    );
    expect(row?.tank?.level_drain_L).toBeGreaterThanOrEqual(0);
  });

  it('adds the flushes of its rules to the refills', () => {
    const rules = csv('device,rule,trigger,after,volume', 'ro,daily,interval,24 h,1 L');
    const plain = tankFact(use())?.row;
    const flushed = tankFact(use({ 'flush-rules.csv': rules }))?.row;
    expect(flushed?.flush_drain_L_per_day.estimate).toBeCloseTo(1, 10);
    expect(flushed?.producing_drain_L_per_day).toEqual(plain?.producing_drain_L_per_day);
  });

  it('falls short where a scenario draws faster than it is made, and counts what it gave', () => {
    const scenario = csv(SCENARIOS, 'party,daily,18:00-18:30,30,1 L,together');
    const found = use({ 'scenarios.csv': scenario });
    const row = tankFact(found)?.row;
    expect(codes(found)).toContain('tank-shortfall');
    expect(row?.findings).toContain('tank-shortfall');
    const asked = (row?.clean_L_per_day.estimate ?? 0) + (row?.tank?.shortfall_L_per_day ?? 0);
    expect(asked).toBeCloseTo(30, 6);
  });

  it('has the curve of a refill, and a break-even where that curve crosses another', () => {
    const { curves, findings } = drainCurves(use().drains);
    const [tank, direct] = curves;
    if (tank?.drain.tank == null || direct === undefined) throw new RangeError('no curve');
    const { tank: figures, usableL } = tank.drain.tank;
    const refill = refillTank(figures, usableL - 2, usableL).ratio;
    expect(curveRatio(tank, 2)).toBeCloseTo(refill ?? 0, 10);
    expect(curveRatio(tank, 20)).toBeNull();
    // Without flushes the tank drains more at every size; with one of 1 L the other does in glasses.
    expect(breakEvens(tank, direct)).toEqual([]);
    expect(findings).toEqual([]);
    const rules = csv('device,rule,trigger,after,volume', 'direct,rinse,idle,10 min,1.2 L');
    const flushed = drainCurves(use({ 'flush-rules.csv': rules }).drains).curves[1];
    if (flushed === undefined) throw new RangeError('no curve');
    const crossings = breakEvens(tank, flushed);
    expect(crossings).toHaveLength(1);
    for (const pourL of crossings) {
      expect(curveRatio(tank, pourL)).toBeCloseTo(curveRatio(flushed, pourL) ?? 0, 9);
      expect(curveRatio(tank, pourL * 0.9)).toBeLessThan(curveRatio(flushed, pourL * 0.9) ?? 0);
    }
  });

  it('says that osmosis is left out where the feed was not tested for solids', () => {
    expect(codes(use())).toContain('tank-osmosis-unknown');
  });

  it('drains more where the feed holds solids', () => {
    const tested = use({
      'samples.csv': csv('sample,position,event,taken_at', 'f,feed,day,2026-07-01'),
      'lab/july.csv': csv('Sample,Analyte,Result,Units,RL', 'f,Total dissolved solids,500,mg/L,10'),
    });
    expect(codes(tested)).not.toContain('tank-osmosis-unknown');
    const ratioOf = (found: ReturnType<typeof use>): number =>
      tankFact(found)?.row.total_drain_ratio.estimate ?? 0;
    expect(ratioOf(tested)).toBeGreaterThan(ratioOf(use()));
  });
});

describe('a tank that cannot be played', () => {
  it('keeps the measured ratio where a figure is missing, and says which', () => {
    const found = use({
      'tanks.csv': csv(TANKS, 'ro,14 L,7 psi,60 psi,40 psi,,0.2 L/min,0.6 L/min'),
      'drain-runs.csv': csv(RUNS, 'ro,1,2 L,9 L,shut-off'),
    });
    const finding = found.findings.find((item) => item.code === 'tank-incomplete');
    expect(finding?.message).toContain('restart');
    expect(tankFact(found)?.row.drain_ratio).toBe(4.5);
    expect(tankFact(found)?.row.tank).toBeNull();
    expect(codes(found)).toContain('tank-ratio-fixed');
  });

  it('is not tested without a measured run either', () => {
    const found = use({ 'tanks.csv': csv(TANKS, 'ro,14 L,,,,,,') });
    expect(tankFact(found)?.row.total_drain_ratio.estimate).toBeNull();
    expect(codes(found)).toContain('drain-runs-missing');
  });

  it('says so where the pressures cannot belong together', () => {
    const found = use({
      'tanks.csv': csv(TANKS, 'ro,14 L,7 psi,60 psi,65 psi,36 psi,0.2 L/min,0.6 L/min'),
    });
    expect(codes(found)).toContain('tank-impossible');
  });
});

describe('a refill model beside measured refills', () => {
  it('is silent where they agree within a fifth', () => {
    // Two litres from full: 6 to 7 per litre by the model.
    const found = use({ 'drain-runs.csv': csv(RUNS, 'ro,1,2 L,13 L,shut-off') });
    expect(codes(found)).not.toContain('tank-runs-disagree');
  });

  it('says so where they do not', () => {
    const found = use({ 'drain-runs.csv': csv(RUNS, 'ro,1,2 L,4 L,shut-off') });
    expect(codes(found)).toContain('tank-runs-disagree');
  });

  it('leaves out a draw that would not start a filling', () => {
    const found = use({ 'drain-runs.csv': csv(RUNS, 'ro,1,50 ml,4 L,shut-off') });
    expect(codes(found)).not.toContain('tank-runs-disagree');
  });
});
