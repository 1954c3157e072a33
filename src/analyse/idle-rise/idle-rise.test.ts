import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { type IdleRiseOptions, idleRise } from '../../commands/idle-rise.ts';
import { readBench } from '../../commands/read-bench.ts';
import { BenchError } from '../../findings/index.ts';
import type { IdleRiseRow } from '../../model/index.ts';

const HEAD = 'device,variant,idle,drawn,reading,tds,meter,scale,feed_tds,at';
// A glass of 250 mL every hour from 08:30 on, three a day; 1 L/min.
const BENCH = {
  'scenarios.csv': csv(
    'scenario,weekdays,window,pours_per_day,volume_each,spread',
    'glasses,daily,08:00-11:00,3,250 ml,even',
  ),
  'pours.csv': csv('device,run,volume,time', 'ro,1,1 L,60 s'),
  'drain-runs.csv': csv('device,run,clean,drain,collected_until', 'ro,1,1 L,1 L,tap-closed'),
  'flush-rules.csv': csv(
    'device,rule,trigger,after,volume,switchable',
    'ro,rinse,idle,10 min,1 L,yes',
  ),
};

function outcome(rows: readonly string[], options: IdleRiseOptions = {}, texts = {}) {
  const all = { ...BENCH, 'idle-tds.csv': csv(HEAD, ...rows), ...texts };
  return withBench(all, (folder) => idleRise(readBench(folder), options));
}

const rowsOf = (rows: readonly string[], options: IdleRiseOptions = {}, texts = {}) =>
  outcome(rows, options, texts).rows as IdleRiseRow[];

const pauseOf = (...rows: string[]) => rowsOf(rows).find((row) => row.what === 'pause');

describe('the first water after a pause', () => {
  it('is the reading of the first portion, beside the feed by the same meter', () => {
    const row = pauseOf('ro,,8 h,100 ml,single,40 ppm,pen,nacl,400 ppm,');
    expect(row).toMatchObject({
      first_draw_tds: 40,
      first_draw_L: 0.1,
      first_draw_of_feed: 0.1,
      scale: 'nacl',
      unit: 'ppm',
    });
  });

  it('recovers where nine tenths of the rise are gone, on a line between the portions', () => {
    const rows = rowsOf([
      'ro,,0 s,500 ml,single,10 ppm,pen,nacl,,',
      'ro,,8 h,100 ml,single,110 ppm,pen,nacl,,',
      'ro,,8 h,100 ml,single,60 ppm,pen,nacl,,',
      'ro,,8 h,100 ml,single,10 ppm,pen,nacl,,',
    ]);
    const row = rows.find((each) => each.idle_s === 28_800);
    // 20 ppm lies four fifths of the way from 60 ppm at 150 mL to 10 ppm at 250 mL.
    expect(row?.recover_L).toBeCloseTo(0.15 + 0.1 * 0.8, 12);
    expect(row).toMatchObject({ running_tds: 10, running_from: 'no-pause' });
  });

  it('has not recovered where the last reading still falls, and says so', () => {
    const found = outcome([
      'ro,,8 h,100 ml,single,110 ppm,pen,nacl,,',
      'ro,,8 h,100 ml,single,60 ppm,pen,nacl,,',
    ]);
    expect((found.rows[0] as IdleRiseRow).recover_L).toBeNull();
    expect(found.findings.map((item) => item.code)).toContain('idle-rise-unsettled');
  });

  it('needs no volume where it did not rise', () => {
    expect(
      pauseOf('ro,,8 h,100 ml,single,10 ppm,pen,nacl,,', 'ro,,8 h,100 ml,single,10 ppm,pen,nacl,,')
        ?.recover_L,
    ).toBe(0);
  });

  it('takes a cumulative reading as that of the water since the one before', () => {
    const rows = [
      'ro,,8 h,100 ml,cumulative,50 ppm,pen,nacl,,',
      'ro,,8 h,300 ml,cumulative,20 ppm,pen,nacl,,',
    ];
    expect(pauseOf(...rows)).toMatchObject({ first_draw_L: 0.1, drawn_L: 0.3, trials: 1 });
  });

  it('is the mean of two pauses of one length', () => {
    const row = pauseOf(
      'ro,,8 h,100 ml,single,40 ppm,pen,nacl,,2026-07-06T07:00',
      'ro,,8 h,100 ml,single,60 ppm,pen,nacl,,2026-07-07T07:00',
    );
    expect(row).toMatchObject({ first_draw_tds: 50, trials: 2 });
  });

  it('keeps meters and scales apart', () => {
    const rows = rowsOf([
      'ro,,8 h,100 ml,single,40 ppm,pen,nacl,,',
      'ro,,8 h,100 ml,single,60 ppm,pen,442,,',
      'ro,,8 h,100 ml,single,60 ppm,other pen,442,,',
    ]);
    expect(rows.filter((row) => row.what === 'pause')).toHaveLength(3);
  });

  it('is not tested without readings, and a meter without scale is asked about', () => {
    expect(outcome([]).rows).toEqual([]);
    expect(outcome([]).findings.map((item) => item.code)).toContain('idle-tds-missing');
    const found = outcome(['ro,,8 h,100 ml,single,40 ppm,pen,,,']);
    expect(found.findings.map((item) => item.code)).toContain('tds-scale-missing');
  });
});

describe('the water of a scenario', () => {
  const scenarioOf = (rows: readonly string[], options: IdleRiseOptions = {}, texts = {}) =>
    rowsOf(rows, options, texts).find((row) => row.what === 'scenario');

  it('takes the readings of the pauses, and never goes beyond those tested', () => {
    // Two of three glasses follow a pause of 59.75 min, the first one of 22 h.
    const row = scenarioOf([
      'ro,,0 s,250 ml,single,10 ppm,pen,nacl,,',
      'ro,,3585 s,250 ml,single,40 ppm,pen,nacl,,',
    ]);
    expect(row?.covered_share).toBeCloseTo(2 / 3, 12);
    expect(row?.mean_tds.estimate).toBeCloseTo(40, 9);
    expect(row?.mean_tds.low).toBeCloseTo(40, 9);
  });

  it('lies between the nearest tested pauses, on a line in the length of the pause', () => {
    const row = scenarioOf([
      'ro,,0 s,250 ml,single,10 ppm,pen,nacl,,',
      'ro,,7170 s,250 ml,single,50 ppm,pen,nacl,,',
    ]);
    expect(row?.mean_tds).toEqual({ low: 10, estimate: expect.closeTo(30, 9), high: 50 });
  });

  it('counts the share above a reading, widened by what is not covered', () => {
    const rows = [
      'ro,,3585 s,100 ml,single,80 ppm,pen,nacl,,',
      'ro,,3585 s,150 ml,single,20 ppm,pen,nacl,,',
    ];
    const row = scenarioOf(rows, { above: '50 ppm' });
    // 100 of 250 mL of two glasses in three; nothing is known of the third.
    expect(row?.share_above.low).toBeCloseTo((2 / 3) * 0.4, 9);
    expect(row?.share_above.high).toBeCloseTo((2 / 3) * 0.4 + 1 / 3, 3);
    expect(row?.share_above.estimate).toBeNull();
    expect(scenarioOf(rows)?.share_above).toEqual({ low: null, estimate: null, high: null });
  });

  it('goes on with the water of a pour that follows without a gap', () => {
    const texts = {
      'scenarios.csv': csv(
        'scenario,weekdays,window,pours_per_day,volume_each,spread',
        'glasses,daily,08:00-11:00,2,250 ml,together',
      ),
    };
    // Each day after the first: 100 mL at 80 and 400 mL at 20.
    const day = 86_400 - 30;
    const row = scenarioOf(
      [
        `ro,,${day} s,100 ml,single,80 ppm,pen,nacl,,`,
        `ro,,${day} s,150 ml,single,20 ppm,pen,nacl,,`,
      ],
      {},
      texts,
    );
    expect(row?.covered_share).toBeCloseTo(364 / 365, 9);
    expect(row?.mean_tds.estimate).toBeCloseTo((100 * 80 + 400 * 20) / 500, 9);
  });

  it('stands beside the drain of the same state, so that the flush can be weighed', () => {
    const rows = rowsOf([
      'ro,,3585 s,250 ml,single,15 ppm,pen,nacl,,',
      'ro,flush-off,3585 s,250 ml,single,60 ppm,pen,nacl,,',
    ]);
    const of = (variant: string) =>
      rows.find((row) => row.what === 'scenario' && row.variant === variant);
    const saved =
      (of('standard')?.drain_L_per_year ?? 0) - (of('flush-off')?.drain_L_per_year ?? 0);
    expect(saved).toBeCloseTo(3 * 365, 6);
    expect(of('flush-off')?.mean_tds.estimate).toBe(60);
  });

  it('is refused for a reading that is none', () => {
    const rows = ['ro,,8 h,100 ml,single,40 ppm,pen,nacl,,'];
    expect(() => outcome(rows, { above: '50' })).toThrow(BenchError);
    expect(() => outcome(rows, { above: '50 ml' })).toThrow(BenchError);
  });
});
