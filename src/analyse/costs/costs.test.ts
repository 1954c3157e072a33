import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { costs } from '../../commands/costs.ts';
import { readBench } from '../../commands/read-bench.ts';
import { BenchError } from '../../findings/index.ts';
import type { CostRow } from '../../model/index.ts';
import { amountSpread, rangeOf } from './known-amount.ts';
import {
  energyKWh,
  ownershipCost,
  presentValue,
  replacementInterval,
  replacementYears,
} from './ownership.ts';
import { spentOverTime } from './spent-over-time.ts';

const SETTINGS = {
  title: 'A bench of a test',
  currency: 'USD',
  tariffs: { water: '2 USD/m3', sewer: '3 USD/m3', electricity: '0.20 USD/kWh' },
  cost_horizon: '4 years',
};
const BENCH = {
  'devices.csv': csv(
    'device,name,form,technology,tank,drain_line,acquired,interests,price,price_date',
    'ro,Reverse osmosis,under-sink,reverse-osmosis,no,yes,bought,none,400 USD,2026-07-01',
  ),
  // 10 L a day.
  'scenarios.csv': csv(
    'scenario,weekdays,window,pours_per_day,volume_each,spread',
    'ten,daily,08:00-20:00,10,1 L,even',
  ),
  'pours.csv': csv('device,run,volume,time', 'ro,1,1 L,60 s'),
  'drain-runs.csv': csv('device,run,clean,drain,collected_until', 'ro,1,2 L,2 L,tap-closed'),
  'parts.csv': csv(
    'device,part,price,lasts,capacity,count',
    'ro,cartridge,20 USD,12 months,1825 L,2',
    'ro,membrane,80 USD,24 months,,',
  ),
  'energy.csv': csv('device,state,power', 'ro,standby,1 W', 'ro,producing,61 W'),
};

function outcome(texts: Record<string, string> = {}, settings: object = {}) {
  const all = {
    ...BENCH,
    'bench.json': JSON.stringify({ ...SETTINGS, ...settings }),
    ...texts,
  };
  return withBench(all, (folder) => costs(readBench(folder)));
}

const rowOf = (texts = {}, settings = {}): CostRow | undefined =>
  outcome(texts, settings).rows[0] as CostRow | undefined;

const codes = (texts = {}, settings = {}): string[] =>
  outcome(texts, settings).findings.map((item) => item.code);

describe('the cost of a device in a scenario', () => {
  it('adds purchase, parts, water, sewer and energy', () => {
    const row = rowOf();
    expect(row?.clean_L_per_year).toBeCloseTo(3650, 8);
    // 2 x 20 USD every half year, as 1,825 L are gone by then, and 80 USD every two years.
    expect(row?.parts_pro_rata_per_year.estimate).toBeCloseTo(80 + 40, 8);
    expect(row?.parts_bought.estimate).toBeCloseTo(7 * 40 + 80, 8);
    // 7,300 L let in, at 2 and 3 USD per cubic metre.
    expect(row?.water_per_year.estimate).toBeCloseTo(14.6, 8);
    expect(row?.sewer_per_year.estimate).toBeCloseTo(21.9, 8);
    // 3,650 min of 61 W, the rest of 8,760 h at 1 W.
    const kWh = (8760 + 60 * (3650 / 60)) / 1000;
    expect(row?.energy_kWh_per_year.estimate).toBeCloseTo(kWh, 8);
    const perYear = 120 + 14.6 + 21.9 + kWh * 0.2;
    expect(row?.total_pro_rata.estimate).toBeCloseTo(400 + 4 * perYear, 6);
    expect(row?.per_litre.estimate).toBeCloseTo((100 + perYear) / 3650, 9);
    expect(row?.present_value.estimate).toBeCloseTo(row?.total_bought.estimate ?? 0, 8);
    expect(row).toMatchObject({ price_date: '2026-07-01', not_counted: [], findings: [] });
  });

  it('is worth less today the higher the rate', () => {
    const [plain, discounted] = [0, 0.05].map(
      (discount_rate) => rowOf({}, { discount_rate })?.present_value.estimate ?? 0,
    );
    expect(discounted).toBeLessThan(plain ?? 0);
  });

  it.each([
    [
      'purchase',
      {
        'devices.csv': csv(
          'device,name,form,technology,tank,drain_line',
          'ro,RO,under-sink,reverse-osmosis,no,yes',
        ),
      },
    ],
    ['parts', { 'parts.csv': csv('device,part,price') }],
    ['energy', { 'energy.csv': csv('device,state,power', 'ro,standby,1 W') }],
    ['water', { 'drain-runs.csv': csv('device,run,clean,drain,collected_until') }],
  ])('is a lower bound without %s, which is named and never 0', (name, texts) => {
    const row = rowOf(texts);
    expect(row?.not_counted).toContain(name);
    expect(row?.total_pro_rata.estimate).toBeNull();
    expect(row?.total_pro_rata.low).toBeGreaterThan(0);
    expect(codes(texts)).toContain('cost-not-counted');
  });

  it('leaves out what no tariff prices, and says so', () => {
    const settings = { tariffs: { water: '2 USD/m3' } };
    expect(rowOf({}, settings)?.not_counted).toEqual(['sewer', 'energy']);
    expect(codes({}, settings).filter((code) => code === 'tariff-missing')).toHaveLength(2);
  });

  it('needs no price of energy for a device without a plug', () => {
    const texts = { 'energy.csv': csv('device,state,power', 'ro,standby,0 W', 'ro,producing,0 W') };
    const row = rowOf(texts, { tariffs: { water: '2 USD/m3', sewer: '0 USD/m3' } });
    expect(row?.energy_per_year.estimate).toBe(0);
    expect(row?.not_counted).toEqual([]);
  });

  it('never adds two currencies', () => {
    const texts = { 'parts.csv': csv('device,part,price,lasts', 'ro,cartridge,20 EUR,1 yr') };
    const { rows, findings } = outcome(texts);
    expect(rows).toEqual([]);
    const mixed = findings.find((item) => item.code === 'currency-mixed');
    expect(mixed?.place).toMatchObject({ file: 'parts.csv', line: 2, field: 'price' });
  });

  it('takes the currency of the amounts where bench.json names none', () => {
    const { currency: _left, ...rest } = SETTINGS;
    const row = withBench({ ...BENCH, 'bench.json': JSON.stringify(rest) }, (folder) =>
      costs(readBench(folder)),
    ).rows[0] as CostRow;
    expect(row.currency).toBe('USD');
  });

  it('prices the same water in bottles', () => {
    const tariffs = { ...SETTINGS.tariffs, bottled_water: '0.50 USD/L' };
    expect(rowOf({}, { tariffs })?.bottled_water).toBeCloseTo(3650 * 4 * 0.5, 6);
    expect(rowOf()?.bottled_water).toBeNull();
  });

  it('ranges over the scenarios of a device', () => {
    const scenarios = csv(
      'scenario,weekdays,window,pours_per_day,volume_each,spread',
      'one,daily,08:00-20:00,1,1 L,even',
      'ten,daily,08:00-20:00,10,1 L,even',
    );
    const rows = outcome({ 'scenarios.csv': scenarios }).rows as CostRow[];
    const [one, ten, range] = rows;
    expect(range?.scenario).toBeNull();
    expect(range?.per_year).toEqual({
      low: one?.per_year.low,
      estimate: null,
      high: ten?.per_year.high,
    });
  });
});

describe('the settings of costs', () => {
  it.each([
    [{ tariffs: { water: '2.20' } }, 'tariff-unreadable'],
    [{ tariffs: { electricity: '0.2 USD/m3' } }, 'dimension-wrong'],
    [{ cost_horizon: '5 L' }, 'value-unexpected'],
    [{ cost_horizon: '0 years' }, 'value-unexpected'],
  ])('%j are asked about', (settings, code) => {
    const text = JSON.stringify({ ...SETTINGS, ...settings });
    const findings = withBench({ 'bench.json': text }, (folder) => readBench(folder).findings);
    expect(findings.map((item) => item.code)).toContain(code);
  });

  it('are used, so no finding says they are not', () => {
    expect(codes()).not.toContain('setting-not-used');
  });
});

describe('parts and payments', () => {
  it('are bought from the first interval on and never at the very end', () => {
    expect(replacementYears(2, 5)).toEqual([2, 4]);
    expect(replacementYears(2.5, 5)).toEqual([2.5]);
    expect(replacementYears(6, 5)).toEqual([]);
    expect(() => replacementYears(0, 5)).toThrow(BenchError);
    expect(() => replacementYears(Number.NaN, 5)).toThrow(BenchError);
  });

  it('end at the earlier of time and capacity, or at the one that is known', () => {
    expect(replacementInterval(1, 1000, 2000)).toBe(0.5);
    expect(replacementInterval(1, null, 2000)).toBe(1);
    expect(replacementInterval(null, 1000, 2000)).toBe(0.5);
    expect(replacementInterval(null, 1000, null)).toBeNull();
    expect(replacementInterval(null, 1000, 0)).toBeNull();
    expect(replacementInterval(null, null, 2000)).toBeNull();
  });

  it('lose value with time, at a rate from 0', () => {
    expect(presentValue([], 0.1)).toBe(0);
    expect(presentValue([{ atYears: 2, amount: 121 }], 0.1)).toBeCloseTo(100, 12);
    expect(() => presentValue([], -0.1)).toThrow(BenchError);
  });

  it('pay the last part of a year in proportion', () => {
    const whole = { purchase: 0, parts: [], runningPerYear: 10, years: 2.5, discountRate: 0 };
    expect(ownershipCost(whole).presentValue).toBeCloseTo(25, 12);
    expect(() => ownershipCost({ ...whole, years: 0 })).toThrow(BenchError);
  });

  it('cannot run for longer than the period', () => {
    expect(energyKWh(10, 0, [])).toBe(0);
    expect(() => energyKWh(10, 0, [{ powerW: 1, hours: 11 }])).toThrow(BenchError);
  });

  it('are spent step by step', () => {
    const parts = [{ price: 50, intervalYears: 1 }];
    expect(spentOverTime({ purchase: 100, parts, runningPerYear: 10, years: 2 })).toEqual([
      { year: 0, amount: 100 },
      { year: 1, amount: 110 },
      { year: 1, amount: 160 },
      { year: 2, amount: 170 },
    ]);
  });
});

describe('amounts of which something is missing', () => {
  it('are lower bounds, and a bound of 0 says nothing', () => {
    expect(amountSpread({ value: 5, isWhole: false })).toEqual({
      low: 5,
      estimate: null,
      high: null,
    });
    expect(amountSpread({ value: 0, isWhole: false })).toEqual({
      low: null,
      estimate: null,
      high: null,
    });
    expect(amountSpread({ value: 0, isWhole: true }).estimate).toBe(0);
  });

  it('leave a range without an upper end', () => {
    const whole = { low: null, estimate: 3, high: null };
    const part = { low: 2, estimate: null, high: null };
    const none = { low: null, estimate: null, high: null };
    expect(rangeOf([whole, part])).toEqual({ low: 2, estimate: null, high: null });
    expect(rangeOf([whole, none]).high).toBeNull();
    expect(rangeOf([])).toEqual(none);
  });
});

describe('the range of a cost', () => {
  const use = { scenario_days: 28, water_use: { draws: 300 } };

  it('holds the estimate, and carries that of the water into water and sewer alike', () => {
    const row = rowOf({}, use);
    for (const sum of [row?.water_per_year, row?.per_year, row?.per_litre, row?.total_bought]) {
      expect(sum?.low ?? Number.NaN).toBeLessThan(sum?.estimate ?? Number.NaN);
      expect(sum?.high ?? Number.NaN).toBeGreaterThan(sum?.estimate ?? Number.NaN);
    }
    // Tariffs of 2 and 3: both are the same water.
    expect((row?.sewer_per_year.high ?? 0) / (row?.water_per_year.high ?? 1)).toBeCloseTo(1.5, 9);
  });

  it('follows the clean water into the parts that end by capacity, by wear in proportion', () => {
    const texts = { 'parts.csv': csv('device,part,price,capacity', 'ro,cartridge,20 USD,1825 L') };
    const { low, estimate, high } = rowOf(texts, use)?.parts_pro_rata_per_year ?? {};
    // Pour sizes of a year spread by 10 %: lognormal, 95 % within about a factor of 1.21.
    expect(estimate).toBeCloseTo(40, 6);
    expect(low ?? 0).toBeGreaterThan(40 / 1.3);
    expect(low ?? 0).toBeLessThan(40 / 1.15);
    expect(high ?? 0).toBeGreaterThan(40 * 1.15);
    expect(high ?? 0).toBeLessThan(40 * 1.3);
  });

  it('is none of the parts that end by time', () => {
    const texts = { 'parts.csv': csv('device,part,price,lasts', 'ro,cartridge,20 USD,12 months') };
    const parts = rowOf(texts, use)?.parts_bought;
    expect(parts?.low).toBe(parts?.estimate);
    expect(parts?.high).toBe(parts?.estimate);
  });

  it('jumps by whole purchases where parts are bought whole', () => {
    const texts = { 'parts.csv': csv('device,part,price,capacity', 'ro,cartridge,20 USD,1825 L') };
    const { low, estimate, high } = rowOf(texts, use)?.parts_bought ?? {};
    for (const sum of [low, estimate, high]) expect((sum ?? 0) % 20).toBe(0);
    expect(low ?? 0).toBeLessThan(high ?? 0);
  });

  it('lowers the bound where something is not counted', () => {
    const texts = { 'energy.csv': csv('device,state,power') };
    const bound = rowOf(texts, use)?.total_bought;
    const sharp = rowOf(texts, { ...use, water_use: { draws: 0 } })?.total_bought;
    expect(bound).toMatchObject({ estimate: null, high: null });
    expect(bound?.low ?? 0).toBeLessThan(sharp?.low ?? 0);
  });

  it('discounts like the estimate: at 0 % the present value is all that is bought', () => {
    const row = rowOf({}, use);
    expect(row?.present_value.low).toBeCloseTo(row?.total_bought.low ?? 0, 6);
    expect(row?.present_value.high).toBeCloseTo(row?.total_bought.high ?? 0, 6);
  });
});
