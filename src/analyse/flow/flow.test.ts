import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { pours } from '../../commands/pours.ts';
import { readBench } from '../../commands/read-bench.ts';
import type { PourRow } from '../../model/index.ts';

const HEAD = 'device,run,pour,volume,time,reading,temperature,pressure';
const DEVICES = csv(
  'device,name,form,technology,tank,drain_line,acquired,interests,rated_flow,rated_production',
  'ro,Reverse osmosis,under-sink,reverse-osmosis,no,yes,bought,none,2 L/min,1440 L/day',
  'jug,Jug,pitcher,carbon,no,no,bought,none,,',
);
const FEED = {
  'samples.csv': csv(
    'sample,position,device,event,kind,taken_at',
    'f,feed,,day,,2026-07-01',
    'p,product,ro,day,,2026-07-01',
    's,feed,,spiked-day,spiked,2026-07-02',
  ),
  'lab/july.csv': csv(
    'Sample,Analyte,Result,Units,RL',
    'f,Total dissolved solids,420,mg/L,10',
    'p,Total dissolved solids,14,mg/L,10',
    's,Total dissolved solids,9000,mg/L,10',
  ),
  'drain-runs.csv': csv('device,run,clean,drain,collected_until', 'ro,1,1 L,2 L,tap-closed'),
};

function outcome(rows: readonly string[], texts: Record<string, string> = {}) {
  const bench = { 'devices.csv': DEVICES, 'pours.csv': csv(HEAD, ...rows), ...texts };
  return withBench(bench, (folder) => pours(readBench(folder)));
}

const rowOf = (rows: readonly string[], texts = {}) =>
  outcome(rows, texts).rows[0] as PourRow | undefined;

describe('pours that repeat each other', () => {
  it('have a mean, a standard deviation and an interval', () => {
    const row = rowOf(['ro,1,1,1 L,60 s,,,', 'ro,1,2,1 L,50 s,,,', 'ro,2,1,1 L,75 s,single,,']);
    expect(row?.repeats).toMatchObject({ n: 3, mean_L_per_min: 1 });
    // 1, 1.2 and 0.8 L/min: 0.2 of scatter, times 4.3027 over the root of 3.
    expect(row?.repeats?.sd_L_per_min).toBeCloseTo(0.2, 12);
    expect(row?.repeats?.low_L_per_min).toBeCloseTo(1 - (4.302653 * 0.2) / Math.sqrt(3), 6);
  });

  it('are not told from a single pour, and have no scatter when all are equal', () => {
    expect(rowOf(['ro,1,1,1 L,60 s,,,'])?.repeats).toBeNull();
    const equal = rowOf(['ro,1,1,1 L,60 s,,,', 'ro,2,1,1 L,60 s,,,']);
    expect(equal?.repeats).toMatchObject({ sd_L_per_min: 0, low_L_per_min: 1, high_L_per_min: 1 });
  });

  it('are runs as a whole where they were read in parts', () => {
    const row = rowOf([
      'ro,1,1,500 ml,30 s,split,,',
      'ro,1,2,500 ml,30 s,split,,',
      'ro,2,1,1 L,60 s,,,',
    ]);
    expect(row?.repeats?.n).toBe(2);
  });
});

describe('the course of a run', () => {
  it('shows the first rush where the first second was split off', () => {
    const row = rowOf(['ro,1,1,50 ml,1 s,split,,', 'ro,1,2,450 ml,15 s,split,,']);
    expect(row?.first_rush).toMatchObject({ runs: 1, length_s: 1 });
    expect(row?.first_rush?.flow_L_per_min).toBeCloseTo(3, 12);
    expect(row?.first_rush?.after_L_per_min).toBeCloseTo(1.8, 12);
    expect(row?.decline).toBeNull();
  });

  it('takes a longer first split for no rush', () => {
    const row = rowOf(['ro,1,1,250 ml,10 s,split,,', 'ro,1,2,250 ml,20 s,split,,']);
    expect(row?.first_rush).toBeNull();
    expect(row?.decline).toBeCloseTo(0.5, 12);
  });

  it('settles to the slope of cumulative readings, with the time lost at the start', () => {
    const row = rowOf([
      'ro,1,1,250 ml,12 s,cumulative,,',
      'ro,1,2,500 ml,22 s,cumulative,,',
      'ro,1,3,1 L,42 s,cumulative,,',
    ]);
    expect(row?.settled?.flow_L_per_min).toBeCloseTo(1.5, 10);
    expect(row?.settled?.start_lag_s).toBeCloseTo(2, 9);
    expect(row?.flow_L_per_min).toBeLessThan(1.5);
  });

  it('is not tested by single pours', () => {
    const row = rowOf(['ro,1,1,1 L,60 s,,,', 'ro,1,2,1 L,70 s,,,']);
    expect(row).toMatchObject({ first_rush: null, decline: null, settled: null });
  });
});

describe('flow at 25 degC and 50 psi', () => {
  const cold = ['ro,1,1,1 L,60 s,,15 C,50 psi'];

  it('is that of the pour where it was made at just that', () => {
    const row = rowOf(['ro,1,1,1 L,60 s,,25 C,50 psi'], FEED);
    expect(row?.standardised?.by_power_L_per_min).toBeCloseTo(1, 12);
    expect(row?.standardised?.by_arrhenius_L_per_min).toBeCloseTo(1, 12);
  });

  it('is higher than that of a pour in the cold, by either factor, and the raw flow stands', () => {
    const row = rowOf(cold, FEED);
    // 1.03^10 is 1.344; the osmotic pressure grows a little with the temperature.
    expect(row?.standardised?.by_power_L_per_min).toBeGreaterThan(1.3);
    expect(row?.standardised?.by_power_L_per_min).toBeLessThan(1.344);
    expect(row?.standardised?.by_arrhenius_L_per_min).toBeGreaterThan(1.3);
    expect(row?.flow_L_per_min).toBeCloseTo(1, 12);
  });

  it('is lower than that of a pour at a higher pressure', () => {
    const row = rowOf(['ro,1,1,1 L,60 s,,25 C,80 psi'], FEED);
    expect(row?.standardised?.by_power_L_per_min).toBeLessThan(50 / 80);
  });

  it.each([
    [
      'solids of the feed',
      {
        ...FEED,
        'lab/july.csv': csv(
          'Sample,Analyte,Result,Units,RL',
          'f,Lead,5,ug/L,1',
          'p,Lead,1,ug/L,1',
          's,Lead,5,ug/L,1',
        ),
      },
    ],
    ['a drain ratio', { ...FEED, 'drain-runs.csv': csv('device,run,clean,drain,collected_until') }],
  ])('is not given without %s, and says so', (_what, texts) => {
    const found = outcome(cold, texts);
    expect((found.rows[0] as PourRow).standardised).toBeNull();
    expect(found.findings.map((item) => item.code)).toContain('flow-not-standardised');
  });

  it('is not asked for where temperature or pressure were not logged, or of a pitcher', () => {
    for (const row of [
      'ro,1,1,1 L,60 s,,15 C,',
      'ro,1,1,1 L,60 s,,,50 psi',
      'jug,1,1,1 L,60 s,,15 C,50 psi',
    ]) {
      const found = outcome([row], FEED);
      expect((found.rows[0] as PourRow).standardised).toBeNull();
      expect(found.findings.map((item) => item.code)).not.toContain('flow-not-standardised');
    }
  });
});

describe('production of a day', () => {
  it('is the flow without pause, beside what is advertised', () => {
    const row = rowOf(['ro,1,1,1 L,60 s,,,']);
    expect(row).toMatchObject({
      production_L_per_day: 1440,
      production_from: 'pours',
      share_of_advertised_flow: 0.5,
    });
    expect(row?.share_of_advertised_production).toBeCloseTo(1, 12);
  });

  it('is not that of a pitcher, which nobody fills all day', () => {
    expect(rowOf(['jug,1,1,1 L,240 s,,,'])?.production_L_per_day).toBeNull();
  });

  it('of a tank is what runs into it open, and nothing where the tank is not described', () => {
    const tankDevices = { 'devices.csv': DEVICES.replace('osmosis,no', 'osmosis,yes') };
    const pour = ['ro,1,1,1 L,20 s,,,'];
    expect(rowOf(pour, tankDevices)?.production_L_per_day).toBeNull();
    const row = rowOf(pour, {
      ...tankDevices,
      'tanks.csv': csv(
        'device,shell,precharge,feed_pressure,stop,restart,permeate_flow,reject_flow',
        'ro,14 L,7 psi,60 psi,40 psi,36 psi,0.2 L/min,0.6 L/min',
      ),
    });
    expect(row?.production_L_per_day).toBeCloseTo(288, 9);
    expect(row?.production_from).toBe('tanks');
    // 14 L of air at 7 psi, pressed to 40 psi: Boyle's law leaves 5.55 L of it.
    expect(row?.usable_tank_L).toBeCloseTo(14 * (1 - (7 + 14.69595) / (40 + 14.69595)), 4);
  });
});
