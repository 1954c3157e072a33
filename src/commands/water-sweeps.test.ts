import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import type {
  BreakEvenRow,
  DrainRegionRow,
  SweepRow,
  WaterCurveRow,
  WaterUseRow,
} from '../model/index.ts';
import { readBench } from './read-bench.ts';
import { readSweep } from './sweep-setting.ts';
import { breakEvens, drainRegions, sweepWaterUse, waterCurve, waterUse } from './water-use.ts';

const DEVICES = csv(
  'device,name,form,technology,tank,drain_line,acquired,interests',
  'ro,R,under-sink,reverse-osmosis,no,yes,bought,none',
  'old,O,under-sink,reverse-osmosis,no,yes,bought,none',
);

function on<T>(use: (bench: ReturnType<typeof readBench>) => T, texts = {}): T {
  const bench = {
    'bench.json': '{"title":"t","measures":"us","scenario_days":28,"water_use":{"draws":200}}',
    'devices.csv': DEVICES,
    'drain-runs.csv': csv(
      'device,run,clean,drain,collected_until',
      'ro,1,2 L,1 L,tap-closed',
      'ro,2,2 L,1.01 L,tap-closed',
      'old,1,1 L,4 L,tap-closed',
      'old,2,2 L,8.05 L,tap-closed',
    ),
    'flush-rules.csv': csv(
      'device,rule,trigger,after,volume',
      'ro,rinse,idle,10 min,1.4 L',
      'ro,big,produced,20 L,1 L',
    ),
    'scenarios.csv': csv(
      'scenario,weekdays,window,pours_per_day,volume_each,spread',
      'glasses,daily,08:00-20:00,4,250 ml,even',
    ),
    ...texts,
  };
  return withBench(bench, (folder) => use(readBench(folder)));
}

describe('a sweep as it is written', () => {
  const values = (text: string) => on((bench) => readSweep(bench, text));

  it('is a range in equal steps, with its unit at the end', () => {
    const sweep = values('flush.rinse.volume=0.5..2 L x 4');
    expect(sweep).toMatchObject({ unit: 'L', input: { kind: 'flush', rule: 'rinse' } });
    expect(sweep.values).toEqual([0.5, 1, 1.5, 2]);
    expect(values('flush.rinse.volume=0..500 mL x2').values).toEqual([0, 0.5]);
  });

  it('is a range in equal ratios with log', () => {
    expect(values('pour=100 ml..10 L x 3 log').values.map((v) => Number(v.toFixed(9)))).toEqual([
      0.1, 1, 10,
    ]);
  });

  it('is a list, each value with a unit of its own or the last one', () => {
    expect(values('pour=250 ml, 1, 2 L').values).toEqual([0.25, 1, 2]);
    expect(values('drain-ratio=0.5, 2').values).toEqual([0.5, 2]);
  });

  it('takes time or volume for the trigger of a flush', () => {
    expect(values('flush.rinse.after=5 min, 1 h')).toMatchObject({
      unit: 's',
      values: [300, 3600],
    });
    expect(values('flush.big.after=10 L, 30 L')).toMatchObject({ unit: 'L', values: [10, 30] });
  });

  it.each([
    ['ratio', 'names no input'],
    ['drain-rate=1', 'did you mean "drain-ratio"'],
    ['drain-ratio=1..2', 'cannot be read'],
    ['drain-ratio=1..2 x 1', '1 values'],
    ['drain-ratio=1..2 x 100000', '100000 values'],
    ['drain-ratio=1..1 x 3', 'one value'],
    ['drain-ratio=0..1 x 3 log', 'above zero'],
    ['drain-ratio=-1', 'not a number'],
    ['drain-ratio=1,', 'cannot be read'],
    ['pour=1 kg', '--sweep'],
    ['pour=2', '--sweep'],
  ])('is refused as "%s", with what is wrong', (text, words) => {
    expect(() => values(text)).toThrow(
      expect.objectContaining({ finding: expect.anything() }) as Error,
    );
    try {
      values(text);
    } catch (error) {
      const { message, remedy } = (error as { finding: { message: string; remedy: string } })
        .finding;
      expect(`${message} ${remedy}`).toContain(words);
    }
  });
});

describe('a sweep of water use', () => {
  const rows = (...sweeps: readonly string[]) =>
    on((bench) => sweepWaterUse(bench, { sweeps }).rows as readonly SweepRow[]);

  it('gives what the bench gives at the measured value', () => {
    const used = on((bench) => waterUse(bench).rows as readonly WaterUseRow[]);
    const swept = rows('flush.rinse.volume=1.4 L');
    expect(swept).toHaveLength(1);
    expect(swept[0]?.total_drain_ratio).toBe(
      used.find(({ device }) => device === 'ro')?.total_drain_ratio.estimate,
    );
  });

  it('moves a total drain ratio by flushes x volume / clean water', () => {
    const [small, large] = rows('flush.rinse.volume=1, 2 L');
    // Four pours of 250 mL a day, each with a flush of its own: 1 L more for 0.25 L.
    expect((large?.total_drain_ratio ?? 0) - (small?.total_drain_ratio ?? 0)).toBeCloseTo(4, 9);
  });

  it('gives every pair of two inputs, and leaves devices without the input out', () => {
    const found = rows('flush.rinse.volume=1, 2 L', 'pour=100, 200, 300 ml');
    expect(found).toHaveLength(6);
    expect(new Set(found.map(({ device }) => device))).toEqual(new Set(['ro']));
  });

  it('refuses no sweep, three, and one input twice', () => {
    for (const sweeps of [
      [],
      ['pour=1 L', 'flow=1 L/min', 'per-start=1 L'],
      ['pour=1 L', 'pour=2 L'],
    ]) {
      expect(() => rows(...sweeps)).toThrow(/sweeps? are asked for/);
    }
  });
});

describe('drain against pours a day', () => {
  it('falls where a flush comes by the clock, and stays where it comes with every pour', () => {
    const daily = (trigger: string, after: string) =>
      on(
        (bench) =>
          waterCurve(bench, { pours: ['250 ml'], poursPerDay: ['1', '8'], devices: ['ro'] })
            .rows as readonly WaterCurveRow[],
        {
          'flush-rules.csv': csv(
            'device,rule,trigger,after,volume',
            `ro,rinse,${trigger},${after},1 L`,
          ),
        },
      ).map((row) => row.total_drain_ratio ?? Number.NaN);
    const [one = 0, eight = 0] = daily('interval', '12 h');
    // r*V + F*24/T: 2 L of flushes a day over 0.25 L and over 2 L.
    expect(one).toBeCloseTo(0.5025 + 8, 9);
    expect(eight).toBeCloseTo(0.5025 + 1, 9);
    const [alone = 0] = daily('idle', '10 min');
    expect(alone).toBeCloseTo(0.5025 + 4, 9);
  });

  it('refuses what is not a whole number of pours', () => {
    for (const text of ['0', '1.5', '-1', 'x', '5000']) {
      expect(() => on((bench) => waterCurve(bench, { poursPerDay: [text] }))).toThrow(text);
    }
  });
});

describe('break-even and regions', () => {
  it('put the range of a break-even around it', () => {
    const [row] = on((bench) => breakEvens(bench).rows) as readonly {
      pour_mL: number;
      low_mL: number;
      high_mL: number;
    }[];
    // The produced rule adds 1 L per 20 L: 1.4 / (4.0167 - 0.5525) L.
    expect(row?.pour_mL).toBeCloseTo(1400 / (12.05 / 3 - 0.5025 - 0.05), 6);
    expect(row?.low_mL).toBeLessThan(row?.pour_mL ?? 0);
    expect(row?.high_mL).toBeGreaterThan(row?.pour_mL ?? 0);
  });

  it('name the device that drains least on each side of the break-even, told apart away from it', () => {
    const rows = on(
      (bench) =>
        drainRegions(bench, { pours: ['100 ml', '405 ml', '2 L'], poursPerDay: ['4'] })
          .rows as readonly DrainRegionRow[],
    );
    expect(rows.map(({ device }) => device)).toEqual(['old', expect.any(String), 'ro']);
    expect(rows.map((row) => row.told_apart)).toEqual([true, false, true]);
    expect(rows[1]?.not_told_apart_from).toHaveLength(1);
  });

  it('tell nothing apart without draws', () => {
    const rows = on((bench) => drainRegions(bench, { draws: 0 }).rows as readonly DrainRegionRow[]);
    expect(rows.every((row) => row.told_apart === null)).toBe(true);
  });
});

describe('built-in and altered scenarios', () => {
  const PEOPLE = '{"title":"t","people":2,"scenario_days":365,"water_use":{"draws":0}}';

  it('plays the people of a household at the published mean', () => {
    const rows = on((bench) => waterUse(bench).rows as readonly WaterUseRow[], {
      'bench.json': PEOPLE,
    });
    const clean = rows.find(({ scenario }) => scenario === 'people')?.clean_L_per_day.estimate;
    // 2 x 0.927 L; a year of about 2700 random glasses is good to 2 %, three times that.
    expect(Math.abs((clean ?? 0) / 1.854 - 1)).toBeLessThan(0.06);
  });

  it('leaves that name to a scenario of the bench', () => {
    const rows = on((bench) => waterUse(bench).rows as readonly WaterUseRow[], {
      'bench.json': PEOPLE,
      'scenarios.csv': csv(
        'scenario,weekdays,window,pours_per_day,volume_each,spread',
        'people,daily,08:00-20:00,4,250 ml,even',
      ),
    });
    expect(rows.find(({ scenario }) => scenario === 'people')?.clean_L_per_day.estimate).toBe(1);
    expect(new Set(rows.map(({ scenario }) => scenario)).size).toBe(1);
  });

  it('draws nothing on days away, of all scenarios or of one', () => {
    const clean = (away: string) =>
      on((bench) => waterUse(bench).rows as readonly WaterUseRow[], {
        'bench.json': `{"title":"t","scenario_days":28,"water_use":{"draws":0,"away":[${away}]}}`,
      })[0]?.clean_L_per_day.estimate;
    expect(clean('')).toBeCloseTo(1, 12);
    expect(clean('{"from_day":8,"days":14}')).toBeCloseTo(0.5, 12);
    expect(clean('{"from_day":8,"days":14,"scenario":"other"}')).toBeCloseTo(1, 12);
  });
});

describe('a tank that tanks.csv describes', () => {
  const TANK = {
    'devices.csv': csv(
      'device,name,form,technology,tank,drain_line,acquired,interests',
      'ro,R,under-sink,reverse-osmosis,no,yes,bought,none',
      'tank,T,under-sink,reverse-osmosis,yes,yes,bought,none',
      'closed,C,under-sink,reverse-osmosis,yes,yes,bought,none',
    ),
    'tanks.csv': csv(
      'device,shell,precharge,feed_pressure,stop,restart,permeate_flow,reject_flow',
      'tank,14 L,7 psi,60 psi,40 psi,32 psi,0.2 L/min,0.6 L/min',
    ),
    'drain-runs.csv': csv(
      'device,run,clean,drain,collected_until',
      'ro,1,2 L,1 L,tap-closed',
      'ro,2,2 L,1.01 L,tap-closed',
      'closed,1,1 L,4 L,shut-off',
    ),
  };

  it('is swept by its own figures, and by no drain ratio', () => {
    const rows = on(
      (bench) => sweepWaterUse(bench, { sweeps: ['tank.reject-flow=0.3, 0.6 L/min'] }).rows,
      TANK,
    ) as SweepRow[];
    expect(rows.map((row) => row.device)).toEqual(['tank', 'tank']);
    // The drain flow stands before the whole drain of a filling.
    const [half, whole] = rows.map((row) => row.total_drain_ratio ?? 0);
    expect((whole ?? 0) / (half ?? 0)).toBeCloseTo(2, 9);
    const use = on((bench) => waterUse(bench, { draws: 0 }).rows, TANK) as WaterUseRow[];
    const measured = use.find((row) => row.device === 'tank')?.total_drain_ratio.estimate;
    expect(whole).toBeCloseTo(measured ?? 0, 9);
    const others = on(
      (bench) => sweepWaterUse(bench, { sweeps: ['drain-ratio=1, 2'] }).rows,
      TANK,
    ) as SweepRow[];
    expect(new Set(others.map((row) => row.device))).toEqual(new Set(['ro']));
  });

  it('refuses a pressure its tank cannot work at', () => {
    expect(() =>
      on((bench) => sweepWaterUse(bench, { sweeps: ['tank.stop=20, 30 psi'] }), TANK),
    ).toThrow(/restarts at/);
  });

  it('has a curve with a range up to what it holds, and crosses others with a range', () => {
    const curve = on((bench) => waterCurve(bench, { pours: ['250 ml', '20 L'] }).rows, TANK);
    const [small, large] = (curve as WaterCurveRow[]).filter((row) => row.device === 'tank');
    expect(small?.low ?? 0).toBeLessThan(small?.total_drain_ratio ?? 0);
    expect(small?.high ?? 0).toBeGreaterThan(small?.total_drain_ratio ?? 0);
    expect(large).toMatchObject({ total_drain_ratio: null, low: null, high: null, recovery: null });
    const pairs = on((bench) => breakEvens(bench).rows, TANK) as BreakEvenRow[];
    expect(pairs).toHaveLength(1);
    const [pair] = pairs;
    expect(pair).toMatchObject({ device_a: 'ro', device_b: 'tank' });
    expect(pair?.pour_mL ?? 0).toBeGreaterThan(0);
    expect(pair?.low_mL ?? 0).toBeLessThan(pair?.pour_mL ?? 0);
    expect(pair?.high_mL ?? 0).toBeGreaterThan(pair?.pour_mL ?? 0);
  });

  it('takes part in the regions, and stays out of those it cannot serve', () => {
    const rows = on(
      (bench) => drainRegions(bench, { pours: ['50 ml', '1 L'], poursPerDay: ['2', '400'] }).rows,
      TANK,
    ) as DrainRegionRow[];
    // A flush of 1.4 L after each small pour drains more than a refill.
    const cell = (pour: number, perDay: number) =>
      rows.find((row) => row.pour_mL === pour && row.pours_per_day === perDay);
    expect(cell(50, 2)).toMatchObject({ device: 'tank', told_apart: true });
    expect(cell(1000, 400)?.device).toBe('ro');
  });
});

describe('pours a day at random', () => {
  const rowsAt = (perDay: string) =>
    on((bench) =>
      waterCurve(bench, {
        pours: ['250 ml'],
        poursPerDay: [perDay],
        randomPours: true,
        devices: ['ro'],
      }),
    ).rows as WaterCurveRow[];

  it('flush as often as a Poisson process leaves pauses long enough', () => {
    // Of n pours in T with rate a = n/T those with no other within t: a (T - t) e^(-a t) + 1 - e^(-a t).
    const [n, hours, pauseH] = [8, 15, 10 / 60];
    const rate = n / hours;
    const still = Math.exp(-rate * pauseH);
    const flushes = rate * (hours - pauseH) * still + 1 - still;
    // 0.5025 while producing, 1.4 L a flush, and 1 L for every 20 L made.
    const expected = 0.5025 + (1.4 * flushes) / (n * 0.25) + 1 / 20;
    const [row] = rowsAt('8');
    // 1,120 days: four standard errors of the mean number of flushes, about 3 %.
    expect(Math.abs((row?.total_drain_ratio ?? 0) / expected - 1)).toBeLessThan(0.03);
  });

  it('have a range that holds the spread of years, wider than that of even pours', () => {
    const [random] = rowsAt('8');
    const [even] = on((bench) =>
      waterCurve(bench, { pours: ['250 ml'], poursPerDay: ['8'], devices: ['ro'] }),
    ).rows as WaterCurveRow[];
    const width = (row: WaterCurveRow | undefined) => (row?.high ?? 0) - (row?.low ?? 0);
    expect(width(random)).toBeGreaterThan(width(even));
    expect(rowsAt('8')).toEqual([random]);
  });

  it('need a number of pours', () => {
    expect(() => on((bench) => waterCurve(bench, { randomPours: true }))).toThrow(
      /without a number of pours/,
    );
  });
});
