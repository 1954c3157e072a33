import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../../tests/benches/write-bench.ts';
import { readBench } from '../../commands/read-bench.ts';
import type { Bench, SpikeRow } from '../../model/index.ts';
import { computeReductions } from '../reductions.ts';
import { computeSpikes } from './index.ts';

const SAMPLES = 'sample,position,device,event,kind,of,taken_at,status,reason';
const BATCH = [
  'FS,feed,,spike,spiked,,2026-07-08T09:00,,',
  'PS,product,ro,spike,spiked,,2026-07-08T10:00,,',
];
const TAP = [
  'FN,feed,,tap,natural,,2026-07-06T09:00,,',
  'PN,product,ro,tap,natural,,2026-07-06T10:00,,',
];

/** A bench of lead; results as `sample figure`. */
function withSpikes<T>(
  spikes: readonly string[],
  samples: readonly string[],
  results: readonly string[],
  use: (bench: Bench) => T,
  settings = '{"title":"t"}',
): T {
  const texts = {
    'bench.json': settings,
    'samples.csv': csv(SAMPLES, ...samples),
    'spikes.csv': csv('event,analyte,dose,note', ...spikes),
    'lab/lab.csv': csv(
      'Sample ID,Analyte,Result,Units,MDL,RL',
      ...results.map((text) => `${text.replace(' ', ',Lead,')},ug/L,0.1,0.5`),
    ),
  };
  return withBench(texts, (folder) => use(readBench(folder)));
}

const rowsOf = (bench: Bench): SpikeRow[] => computeSpikes(bench).map(({ row }) => row);
const codesOf = (bench: Bench): string[] =>
  bench.findings.flatMap(({ code, level }) => (level === 'note' ? [] : code));

describe('a dose of a spiked feed', () => {
  it('stands beside the measured and the natural feed, with what was found of it', () => {
    const [row] = withSpikes(
      ['spike,Lead,0.15 mg/L,'],
      [...TAP, ...BATCH],
      ['FN 2', 'PN ND', 'FS 148', 'PS 3'],
      rowsOf,
    );
    expect(row).toMatchObject({
      analyte: 'lead',
      unit: 'ug/L',
      nominal: 150,
      measured: { estimate: 148 },
      natural: { estimate: 2 },
      natural_sample: 'FN',
    });
    // (148 - 2) / 150; the ends hold the uncertainty of both feeds.
    expect(row?.recovery.estimate).toBeCloseTo(146 / 150, 12);
    expect(row?.recovery.low ?? 1).toBeLessThan(146 / 150);
    expect(row?.recovery.high ?? 0).toBeGreaterThan(146 / 150);
  });

  it('never enters a reduction: the measured feed does', () => {
    const rows = (dose: string) =>
      withSpikes([`spike,lead,${dose},`], BATCH, ['FS 120', 'PS 3'], (bench) =>
        computeReductions(bench, 86_400).facts.map(({ row }) => row),
      );
    expect(rows('150 ug/L')).toEqual(rows('1 mg/L'));
    expect(rows('150 ug/L')[0]?.feed.estimate).toBe(120);
  });

  it('that the feed does not hold is a warning at its cell, and one within the margin is none', () => {
    const told = (figure: number) =>
      withSpikes(
        ['spike,lead,150 ug/L,'],
        [...TAP, ...BATCH],
        ['FN ND', 'PN ND', `FS ${figure}`, 'PS 3'],
        (bench) => bench.findings.filter(({ code }) => code === 'spike-dose-differs'),
      );
    expect(told(40)).toMatchObject([{ level: 'warning', place: { file: 'spikes.csv', line: 2 } }]);
    expect(told(400)).toHaveLength(1);
    expect(told(150)).toEqual([]);
    // Near the margin the uncertainty of the feed leaves it open.
    expect(told(119)).toEqual([]);
  });

  it('agrees only where all of what was found lies within the margin of the bench', () => {
    const agreement = (margin: number) =>
      withSpikes(
        ['spike,lead,150 ug/L,'],
        [...TAP, ...BATCH],
        ['FN ND', 'PN ND', 'FS 148', 'PS 3'],
        (bench) => rowsOf(bench)[0]?.agreement,
        JSON.stringify({ title: 't', quality: { spike_recovery: margin } }),
      );
    expect(agreement(60)).toBe('agrees');
    expect(agreement(1)).toBe('cannot-say');
  });

  it('has no lower end of what was found where the natural feed was not measured', () => {
    const [row] = withSpikes(['spike,lead,150 ug/L,'], BATCH, ['FS 148', 'PS 3'], rowsOf);
    expect(row).toMatchObject({
      natural: { low: null, high: null },
      natural_sample: null,
      recovery: { low: null, estimate: null },
      agreement: 'cannot-say',
    });
    expect(row?.recovery.high ?? 0).toBeGreaterThan(148 / 150);
  });

  it('with a natural feed below the limit takes it as an interval, not as a figure', () => {
    const [row] = withSpikes(
      ['spike,lead,150 ug/L,'],
      [...TAP, ...BATCH],
      ['FN ND', 'PN ND', 'FS 148', 'PS 3'],
      rowsOf,
    );
    expect(row).toMatchObject({ natural: { low: 0, high: 0.5 }, recovery: { estimate: null } });
  });

  it('takes the natural feed of its own event before any other, and never a later one', () => {
    const natural = (samples: readonly string[]) =>
      withSpikes(
        ['spike,lead,150 ug/L,'],
        [...samples, ...BATCH],
        ['FN 2', 'FO 3', 'FL 4', 'FS 148', 'PS 3'],
        (bench) => rowsOf(bench)[0]?.natural_sample,
      );
    const feed = (name: string, event: string, at: string) =>
      `${name},feed,,${event},natural,,${at},,`;
    const before = feed('FN', 'tap', '2026-07-06T09:00');
    const own = feed('FO', 'spike', '2026-07-08T08:00');
    const later = feed('FL', 'late', '2026-07-09T09:00');
    expect(natural([before, own, later])).toBe('FO');
    expect(natural([before, feed('FO', 'old', '2026-07-01T09:00'), later])).toBe('FN');
    expect(natural([later, feed('FN', 'x', ''), feed('FO', 'y', '')])).toBeNull();
  });

  it('without a measured feed is untested and a warning', () => {
    withSpikes(['spike,copper,3 mg/L,'], BATCH, ['FS 148', 'PS 3'], (bench) => {
      expect(rowsOf(bench)).toMatchObject([{ agreement: 'untested', recovery: { high: null } }]);
      expect(codesOf(bench)).toContain('spike-feed-missing');
    });
  });

  it.each([
    ['an event without a spiked feed', 'tap,lead,150 ug/L,', 'spike-event-unknown'],
    ['a misspelt event', 'spkie,lead,150 ug/L,', 'spike-event-unknown'],
    ['an unknown analyte', 'spike,unobtainium,150 ug/L,', 'analyte-unknown'],
    ['a unit of something else', 'spike,lead,150 CFU/100mL,', 'dimension-wrong'],
    ['a unit that is no concentration', 'spike,lead,150 ml,', 'dimension-wrong'],
    ['no unit', 'spike,lead,150,', 'unit-missing'],
    ['a dose of zero', 'spike,lead,0 ug/L,', 'quantity-zero'],
    ['a dose without its basis', 'spike,nitrate,10 mg/L,', 'basis-unstated'],
  ])('of %s is an error at its cell', (_what, spike, code) => {
    withSpikes([spike], [...TAP, ...BATCH], ['FN 2', 'PN 1', 'FS 148', 'PS 3'], (bench) => {
      const found = bench.findings.filter(({ level }) => level === 'error');
      expect(found).toMatchObject([{ code, place: { file: 'spikes.csv', line: 2 } }]);
    });
  });

  it('that stands twice is an error', () => {
    withSpikes(
      ['spike,lead,150 ug/L,', 'spike,lead,160 ug/L,'],
      BATCH,
      ['FS 148', 'PS 3'],
      (bench) => expect(codesOf(bench)).toContain('key-duplicate'),
    );
  });

  it('is converted through its basis', () => {
    const [row] = withSpikes(['spike,nitrate,10 mg/L as NO3,'], BATCH, ['FS 148', 'PS 3'], rowsOf);
    // 14.007/62.005 g of nitrogen in a gram of nitrate.
    expect(row?.nominal).toBeCloseTo((10 * 14.007) / 62.005, 6);
  });
});

describe('the feed samples of one spiked batch', () => {
  const TWO = ['F1,feed,,spike,spiked,,,,', 'F2,feed,,spike,spiked,,,,'];

  it('are pooled: arithmetic mean, at least as uncertain as they scatter', () => {
    withSpikes(
      [],
      [...TWO, 'PS,product,ro,spike,spiked,,,,'],
      ['F1 100', 'F2 160', 'PS 3'],
      (bench) => {
        const [fact] = computeReductions(bench, 86_400).facts;
        expect(fact?.row.feed).toMatchObject({ estimate: 130, n: 2, sample: 'F1+F2' });
        // Standard error of 100 and 160: 30.
        expect(fact?.row.uncertainty.feed).toBeCloseTo(30, 9);
      },
    );
  });

  it('serve no product of another spiked event, even between two of them', () => {
    const samples = [
      'F1,feed,,spike-1,spiked,,2026-07-08T08:00,,',
      'PX,product,ro,spike-2,spiked,,2026-07-08T09:00,,',
      'F2,feed,,spike-3,spiked,,2026-07-08T10:00,,',
    ];
    withSpikes([], samples, ['F1 100', 'F2 100', 'PX 3'], (bench) => {
      const { facts, findings } = computeReductions(bench, 86_400);
      expect(facts).toMatchObject([{ row: { outcome: 'untested', feed: { n: 0 } } }]);
      expect(findings.map(({ code }) => code)).toContain('feed-missing');
    });
    // The same three as natural water: a tap drifts between its samples, and the feed spans both.
    const natural = samples.map((text) => text.replace('spiked', 'natural'));
    withSpikes([], natural, ['F1 100', 'F2 120', 'PX 3'], (bench) => {
      const [fact] = computeReductions(bench, 86_400).facts;
      expect(fact?.row.feed).toMatchObject({ low: 100, high: 120, n: 2 });
    });
  });

  it('are never joined with a natural feed of the same event', () => {
    const samples = [...TWO, 'FN,feed,,spike,natural,,,,', 'PS,product,ro,spike,spiked,,,,'];
    withSpikes([], samples, ['F1 100', 'F2 102', 'FN 2', 'PS 3'], (bench) => {
      const [fact] = computeReductions(bench, 86_400).facts;
      expect(fact?.row.feed).toMatchObject({ estimate: 101, sample: 'F1+F2' });
    });
  });
});
