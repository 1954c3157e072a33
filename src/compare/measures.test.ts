import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import type { CompareOptions } from '../commands/compare.ts';
import { compare } from '../commands/compare.ts';
import { readBench } from '../commands/read-bench.ts';
import type { MeasureRow } from '../model/index.ts';

const BENCH = {
  'bench.json': JSON.stringify({
    title: 't',
    currency: 'USD',
    scenario_days: 28,
    water_use: { draws: 200 },
    tariffs: { water: '2 USD/m3', sewer: '3 USD/m3', electricity: '0.2 USD/kWh' },
  }),
  'devices.csv': csv(
    'device,name,form,technology,tank,drain_line,acquired,interests,price',
    'ro,R,under-sink,reverse-osmosis,no,yes,bought,none,400 USD',
    'jug,J,pitcher,carbon,no,no,bought,none,20 USD',
  ),
  'drain-runs.csv': csv(
    'device,run,clean,drain,collected_until',
    'ro,1,2 L,2 L,tap-closed',
    'ro,2,2 L,2.04 L,tap-closed',
    'ro,3,2 L,1.98 L,tap-closed',
  ),
  'scenarios.csv': csv(
    'scenario,weekdays,window,pours_per_day,volume_each,spread',
    'glasses,daily,08:00-20:00,8,250 ml,even',
  ),
  'pours.csv': csv('device,run,volume,time', 'ro,1,1 L,60 s', 'ro,2,1 L,61 s', 'ro,3,1 L,59 s'),
  'parts.csv': csv(
    'device,part,price,lasts,capacity,count',
    'ro,cartridge,20 USD,12 months,,1',
    'jug,cartridge,5 USD,,100 L,1',
  ),
  'energy.csv': csv('device,state,power', 'ro,standby,0 W', 'ro,producing,0 W'),
  'idle-tds.csv': csv(
    'device,idle,drawn,reading,tds,meter,scale',
    'ro,0 s,250 ml,single,10 ppm,pen,nacl',
    'ro,8 h,100 ml,single,40 ppm,pen,nacl',
    'ro,8 h,200 ml,single,12 ppm,pen,nacl',
    'ro,16 h,100 ml,single,50 ppm,pen,nacl',
    'ro,16 h,200 ml,single,14 ppm,pen,nacl',
  ),
};

function rowsOf(texts: Record<string, string> = {}, options: CompareOptions = {}): MeasureRow[] {
  return withBench({ ...BENCH, ...texts }, (folder) => {
    const outcome = compare(readBench(folder), options);
    return [...outcome.rows] as MeasureRow[];
  });
}

function measure(rows: readonly MeasureRow[], id: string, device = 'ro'): MeasureRow {
  const found = rows.find((row) => row.measure === id && row.device === device);
  if (found === undefined) throw new Error(`no ${id} of ${device}`);
  return found;
}

describe('the measures of a bench', () => {
  it('carry the ranges of water use, of flow and of costs around their estimates', () => {
    const rows = rowsOf();
    for (const id of [
      'water-use.drain-ratio',
      'water-use.total-drain-ratio.glasses',
      'water-use.recovery.glasses',
      'water-use.drain-per-year.glasses',
      'pours.flow',
      'costs.per-year.glasses',
      'costs.per-litre.glasses',
      'costs.over-horizon.glasses',
    ]) {
      const { low, estimate, high, outcome } = measure(rows, id);
      expect(outcome).toBe('measured');
      expect(low ?? Number.NaN, id).toBeLessThan(estimate ?? Number.NaN);
      expect(high ?? Number.NaN, id).toBeGreaterThan(estimate ?? Number.NaN);
    }
  });

  it('name unit and direction of what a device costs', () => {
    const rows = rowsOf();
    expect(measure(rows, 'costs.per-year.glasses')).toMatchObject({
      unit: 'USD/year',
      direction: 'lower',
    });
    expect(measure(rows, 'costs.per-litre.glasses').unit).toBe('USD/L');
    expect(measure(rows, 'costs.over-horizon.glasses').unit).toBe('USD');
  });

  it('are a lower bound where something of the cost is not known', () => {
    const row = measure(rowsOf(), 'costs.over-horizon.glasses', 'jug');
    expect(row).toMatchObject({ outcome: 'bounded', estimate: null, high: null });
    expect(row.low ?? 0).toBeGreaterThan(20);
    expect(row.shown).toMatch(/^at least /);
  });

  it('hold the first-draw reading after each pause with what the meter leaves open', () => {
    const row = measure(rowsOf(), 'idle-rise.first-draw.8h');
    expect(row).toMatchObject({ unit: 'ppm', direction: 'lower', estimate: 40 });
    // 1.96/√3 of 2 % of 40 and of half a digit in quadrature: 1.07.
    expect(row.low).toBeCloseTo(38.93, 2);
    expect(row.high).toBeCloseTo(41.07, 2);
  });

  it('hold the mean TDS of a scenario, and say where it covers a part of the water only', () => {
    const rows = rowsOf();
    expect(measure(rows, 'idle-rise.mean.glasses')).toMatchObject({ outcome: 'partly-tested' });
    expect(measure(rows, 'idle-rise.mean.glasses').shown).toMatch(/\[p\]$/);
  });

  it('keep the readings of two meters apart', () => {
    const ids = rowsOf({
      'idle-tds.csv': csv(
        'device,idle,drawn,reading,tds,meter,scale',
        'ro,8 h,100 ml,single,40 ppm,pen,nacl',
        'jug,8 h,100 ml,single,44 ppm,pen,442',
      ),
    }).map((row) => row.measure);
    expect(ids).toContain('idle-rise.first-draw.8h.meter-1');
    expect(ids).toContain('idle-rise.first-draw.8h.meter-2');
    expect(ids).not.toContain('idle-rise.first-draw.8h');
  });

  it('have no range without draws, and are the same under any filter', () => {
    const bare = measure(rowsOf({}, { draws: 0 }), 'costs.per-year.glasses');
    expect(bare.low).toBeNull();
    const all = measure(rowsOf(), 'costs.per-year.glasses');
    expect(bare.estimate).toBe(all.estimate);
    expect(measure(rowsOf({}, { devices: ['ro'] }), 'costs.per-year.glasses')).toEqual(all);
    const none = rowsOf({
      'scenarios.csv': csv('scenario,weekdays,window,pours_per_day,volume_each'),
    });
    expect(none.some((row) => row.measure.startsWith('costs.'))).toBe(false);
  });
});
