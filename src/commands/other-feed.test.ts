import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csv, DEVICES_CSV, withBench } from '../../tests/benches/write-bench.ts';
import { computeReductions } from '../analyse/index.ts';
import { computeOtherFeed, type FeedWater, feedWater } from '../analyse/other-feed/index.ts';
import type { Bench, OtherFeedRow } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { type OtherFeedOptions, otherFeed } from './other-feed.ts';
import { readBench } from './read-bench.ts';
import { readFeed } from './read-feed.ts';

const SAMPLES = 'sample,position,device,variant,event,kind,throughput';
const LAB = 'Sample ID,Analyte,Result,Units,MDL,RL';
const FEED = 'Analyte,Result,Units,MDL,RL';

interface TestEvent {
  readonly feed: string;
  readonly product: string;
  readonly ph?: string;
  readonly conductivity?: string;
  readonly throughput?: string;
  readonly kind?: string;
}

/** Texts of a bench that tested lead on `ro` at events e0, e1, ... */
function leadBench(events: readonly TestEvent[], more: Record<string, string> = {}) {
  const samples = events.flatMap(({ throughput = '', kind = '' }, at) => [
    `F${at},feed,,,e${at},${kind},`,
    `P${at},product,ro,,e${at},${kind},${throughput}`,
  ]);
  const results = events.flatMap(({ feed, product, ph = '7.4', conductivity = '500' }, at) => [
    `F${at},Lead,${feed}`,
    `P${at},Lead,${product}`,
    ...(ph === '' ? [] : [`F${at},pH,${ph},pH units,,`]),
    ...(conductivity === '' ? [] : [`F${at},Conductivity,${conductivity},uS/cm,1,2`]),
  ]);
  return {
    'samples.csv': csv(SAMPLES, ...samples),
    'lab/lab.csv': csv(LAB, ...results),
    ...more,
  };
}

function outcomeOf(
  texts: Record<string, string>,
  feed: readonly string[],
  options: OtherFeedOptions = {},
): Outcome {
  return withBench({ ...texts, 'other-feed/town.csv': csv(FEED, ...feed) }, (folder) => {
    const bench = readBench(folder);
    expect(bench.findings.filter(({ level }) => level === 'error')).toEqual([]);
    const file = readFeed(bench, join(folder, 'other-feed/town.csv'), { benchFolder: folder });
    expect(file.findings.filter(({ level }) => level === 'error')).toEqual([]);
    return otherFeed(bench, file, options);
  });
}

const CONDITIONS = ['pH,7.4,pH units,,', 'Conductivity,500,uS/cm,1,2'];
const lead = (cell: string) => [`Lead,${cell}`, ...CONDITIONS];

/** The row of lead on `ro`. */
function leadRow(
  texts: Record<string, string>,
  feed: readonly string[],
  options: OtherFeedOptions = {},
): OtherFeedRow {
  const rows = outcomeOf(texts, feed, options).rows as OtherFeedRow[];
  const row = rows.find(({ device, analyte }) => device === 'ro' && analyte === 'lead');
  if (row === undefined) throw new Error('no row of lead');
  return row;
}

/** States that the printed uncertainty is twice a standard uncertainty. */
const TWO_SIGMA = {
  layout: 'long',
  delimiter: ',',
  decimal_mark: '.',
  header_row: 1,
  header: ['Analyte', 'Result', 'Uncertainty', 'Units', 'MDL', 'RL'],
  columns: {
    analyte: 'Analyte',
    result: 'Result',
    uncertainty: 'Uncertainty',
    unit: 'Units',
    mdl: 'MDL',
    rl: 'RL',
  },
  coverage_factor: 2,
};

const LOW = { feed: '5,ug/L,0.1,0.5', product: '0.6,ug/L,0.1,0.5', throughput: '40 L' };
const HIGH = { feed: '50,ug/L,0.1,0.5', product: '2,ug/L,0.1,0.5', throughput: '300 L' };

describe('the product with another feed', () => {
  it('is bounded by what passed at all events, between two levels that were tested', () => {
    const row = leadRow(leadBench([LOW, HIGH]), lead('20,ug/L,0.1,0.5'));
    expect(row).toMatchObject({
      outcome: 'bounded',
      reason: null,
      also: [],
      unit: 'ug/L',
      assumptions: ['passage-between'],
      feed: { estimate: 20, reported_low: 20, reported_high: 20, uncertainty_from: 'assumed' },
      firm: false,
    });
    const passages = row.tested.events.flatMap(({ passage_low, passage_high }) => [
      passage_low ?? 0,
      passage_high ?? Number.POSITIVE_INFINITY,
    ]);
    expect(row.passage).toEqual({ low: Math.min(...passages), high: Math.max(...passages) });
    // 12 % passed at the low level and 4 % at the high one: both stand within.
    expect(row.passage.low).toBeLessThan(0.04);
    expect(row.passage.high).toBeGreaterThan(0.12);
    expect(row.product.low).toBe((row.feed.low ?? 0) * (row.passage.low ?? 0));
    expect(row.product.high).toBe((row.feed.high ?? 0) * (row.passage.high ?? 0));
  });

  it('takes the uncertainty a lab states, and assumes that between labs otherwise', () => {
    const texts = leadBench([LOW, HIGH]);
    const stated = withBench(
      {
        ...texts,
        'other-feed/town.csv': csv(
          'Analyte,Result,Uncertainty,Units,MDL,RL',
          'Lead,20,2,ug/L,0.1,0.5',
          'pH,7.4,,pH units,,',
          'Conductivity,500,,uS/cm,1,2',
        ),
        'other-feed/town.layout.json': JSON.stringify(TWO_SIGMA),
      },
      (folder) => {
        const bench = readBench(folder);
        const file = readFeed(bench, join(folder, 'other-feed/town.csv'));
        return (otherFeed(bench, file).rows as OtherFeedRow[])[0]?.feed;
      },
    );
    const assumed = leadRow(texts, lead('20,ug/L,0.1,0.5')).feed;
    expect(stated?.uncertainty_from).toBe('stated');
    expect(stated?.low).toBeGreaterThan(assumed.low ?? 0);
    expect(stated?.high).toBeLessThan(assumed.high ?? 0);
  });

  it('lies at or below the limit times the most that passes where the feed was not detected', () => {
    const row = leadRow(leadBench([LOW, HIGH]), lead('ND,ug/L,1,10'));
    expect(row).toMatchObject({
      outcome: 'bounded',
      assumptions: ['passage-between', 'monotone'],
      feed: { low: 0, estimate: null, reported_low: 0, reported_high: 10, high: 10 },
      product: { low: 0 },
    });
    expect(row.product.high).toBe(10 * (row.passage.high ?? 0));
  });

  it('stands beside the levels of the jurisdictions of the bench, with its uncertainty', () => {
    const texts = leadBench([LOW, HIGH], {
      'bench.json': '{"title": "t", "reference_levels": ["WHO"]}',
    });
    const verdictOf = (cell: string) =>
      leadRow(texts, lead(cell)).reference_levels.map(({ verdict }) => verdict);
    expect(verdictOf('6,ug/L,0.1,0.5')).toEqual(['within']);
    expect(verdictOf('49,ug/L,0.1,0.5')).toEqual(['cannot-say']);
    expect(verdictOf('500,ug/L,0.1,0.5')).toEqual([]);
  });

  it('names spiked events and counts them as tested', () => {
    const row = leadRow(leadBench([LOW, { ...HIGH, kind: 'spiked' }]), lead('20,ug/L,0.1,0.5'));
    expect(row).toMatchObject({ outcome: 'bounded' });
    expect(row.assumptions).toContain('spiked-feed');
    expect(row.tested.events.map(({ kind }) => kind)).toEqual(['natural', 'spiked']);
  });

  it('leaves out events that tested nothing, and names them', () => {
    const empty = { feed: 'ND,ug/L,0.1,0.5', product: 'ND,ug/L,0.1,0.5' };
    const row = leadRow(leadBench([LOW, HIGH, empty]), lead('20,ug/L,0.1,0.5'));
    expect(row.outcome).toBe('bounded');
    expect(row.tested.events.map(({ used }) => used)).toEqual([true, true, false]);
    expect(row.tested.events[2]?.passage_high).toBeNull();
  });

  it('holds the product that was measured where the feed is one that was tested', () => {
    const row = leadRow(leadBench([LOW]), lead('5,ug/L,0.1,0.5'));
    expect(row.product.low).toBeLessThan(0.6);
    expect(row.product.high).toBeGreaterThan(0.6);
  });
});

describe('another feed is refused', () => {
  const both = leadBench([LOW, HIGH]);
  const one = leadBench([LOW]);
  const cases: readonly (readonly [string, Record<string, string>, string[], string])[] = [
    ['above the highest level', both, lead('80,ug/L,0.1,0.5'), 'feed-above-tested'],
    ['above the range of its lab', both, lead('>20,ug/L,0.1,0.5'), 'feed-above-tested'],
    ['below the lowest level', both, lead('2,ug/L,0.1,0.5'), 'feed-below-tested'],
    ['not detected below the lowest level', both, lead('ND,ug/L,0.1,0.5'), 'feed-below-tested'],
    [
      'beyond the one level by more than its uncertainty',
      one,
      lead('9,ug/L,0.1,0.5'),
      'feed-above-tested',
    ],
    [
      'at a higher pH',
      both,
      ['Lead,20,ug/L,0.1,0.5', 'pH,8.2,pH units,,', 'Conductivity,500,uS/cm,1,2'],
      'ph-outside-tested',
    ],
    ['without a pH', both, ['Lead,20,ug/L,0.1,0.5', 'Conductivity,500,uS/cm,1,2'], 'ph-not-stated'],
    [
      'at higher dissolved solids',
      both,
      ['Lead,20,ug/L,0.1,0.5', 'pH,7.4,pH units,,', 'Conductivity,900,uS/cm,1,2'],
      'tds-outside-tested',
    ],
    [
      'without dissolved solids',
      both,
      ['Lead,20,ug/L,0.1,0.5', 'pH,7.4,pH units,,'],
      'tds-not-stated',
    ],
    [
      'with solids by another measure than was tested',
      both,
      ['Lead,20,ug/L,0.1,0.5', 'pH,7.4,pH units,,', 'Total Dissolved Solids,300,mg/L,5,10'],
      'tds-not-tested',
    ],
    [
      'where no tested feed states a pH',
      leadBench([
        { ...LOW, ph: '' },
        { ...HIGH, ph: '' },
      ]),
      lead('20,ug/L,0.1,0.5'),
      'ph-not-tested',
    ],
    [
      'where an event rose',
      leadBench([LOW, { feed: '10,ug/L,0.1,0.5', product: '90,ug/L,0.1,0.5' }, HIGH]),
      lead('20,ug/L,0.1,0.5'),
      'rise',
    ],
    [
      'where the tested feeds held too little',
      leadBench([{ feed: 'ND,ug/L,0.1,0.5', product: 'ND,ug/L,0.1,0.5' }]),
      lead('20,ug/L,0.1,0.5'),
      'feed-too-low',
    ],
    [
      'where the tested level is not known',
      leadBench([{ feed: '0.3 J,ug/L,0.2,5', product: 'ND,ug/L,0.05,0.1' }]),
      lead('2,ug/L,0.1,0.5'),
      'tested-feed-unclear',
    ],
  ];

  it.each(cases)('%s', (_what, texts, feed, reason) => {
    const row = leadRow(texts, feed);
    expect(row).toMatchObject({
      outcome: 'refused',
      reason,
      product: { low: null, high: null },
      passage: { low: null, high: null },
      assumptions: [],
      firm: false,
      reference_levels: [],
    });
  });

  it('with the ranges and what was asked as numbers', () => {
    const row = leadRow(both, [
      'Lead,80,ug/L,0.1,0.5',
      'pH,8.2,pH units,,',
      'Conductivity,900,uS/cm,1,2',
    ]);
    expect(row).toMatchObject({
      reason: 'feed-above-tested',
      also: ['ph-outside-tested', 'tds-outside-tested'],
      asked: { ph: 8.2, tds: 900, throughput_L: null },
      tested: {
        tds: { measure: 'conductivity', unit: 'uS/cm' },
        throughput_L: { low: 40, high: 300 },
      },
    });
    expect(row.tested.ph.low).toBeCloseTo(7.3, 12);
    expect(row.tested.ph.high).toBeCloseTo(7.5, 12);
    expect(row.tested.feed.low).toBeLessThan(5);
    expect(row.tested.feed.low).toBeGreaterThanOrEqual(4);
    expect(row.tested.feed.high).toBeGreaterThan(50);
    expect(row.tested.feed.high).toBeLessThanOrEqual(60);
    // Solids reach as far as their uncertainty, a twentieth at most.
    expect(row.tested.tds).toMatchObject({ low: 475, high: 525 });
  });

  it('in a state that was not tested', () => {
    const asked = lead('20,ug/L,0.1,0.5');
    expect(leadRow(both, asked, { throughput: '100 L' }).outcome).toBe('bounded');
    for (const throughput of ['20 L', '301 L']) {
      expect(leadRow(both, asked, { throughput }).reason).toBe('throughput-outside-tested');
    }
    const unlogged = leadBench([
      { ...LOW, throughput: '' },
      { ...HIGH, throughput: '' },
    ]);
    expect(leadRow(unlogged, asked, { throughput: '100 L' }).reason).toBe('throughput-not-logged');
  });

  it('for a variant without results of its own, and for what nothing was tested of', () => {
    const texts = leadBench([LOW, HIGH], { 'variants.csv': csv('device,variant', 'ro,quiet') });
    const rows = outcomeOf(texts, [...lead('20,ug/L,0.1,0.5'), 'Arsenic,2,ug/L,0.1,0.5'])
      .rows as OtherFeedRow[];
    const reasonOf = (device: string, variant: string, analyte: string) =>
      rows.find(
        (row) => row.device === device && row.variant === variant && row.analyte === analyte,
      )?.reason;
    expect(reasonOf('ro', 'quiet', 'lead')).toBe('other-state');
    expect(reasonOf('ro', 'standard', 'arsenic')).toBe('not-tested');
    expect(reasonOf('jug', 'standard', 'lead')).toBe('not-tested');
    expect(rows.some(({ analyte }) => analyte === 'ph')).toBe(false);
  });

  it('for what a mineral stage adds', () => {
    const texts = leadBench([LOW, HIGH], {
      'devices.csv': csv(
        'device,name,form,technology,tank,drain_line,mineral_stage,acquired,interests',
        'ro,Reverse osmosis,under-sink,reverse-osmosis,no,yes,yes,bought,none',
      ),
    });
    const lab = texts['lab/lab.csv'] ?? '';
    const calcium = csv(
      ...['F0,Calcium,80', 'P0,Calcium,20', 'F1,Calcium,82', 'P1,Calcium,21'].map(
        (cells) => `${cells},mg/L,0.05,0.2`,
      ),
    );
    const rows = outcomeOf({ ...texts, 'lab/lab.csv': lab + calcium }, [
      ...lead('20,ug/L,0.1,0.5'),
      'Calcium,81,mg/L,0.05,0.2',
    ]).rows as OtherFeedRow[];
    expect(rows.find(({ analyte }) => analyte === 'calcium')).toMatchObject({
      outcome: 'refused',
      reason: 'added-by-stage',
    });
    expect(rows.find(({ analyte }) => analyte === 'lead')?.outcome).toBe('bounded');
  });
});

describe('behind a mineral stage', () => {
  const sodium = (product: string) => {
    const texts = leadBench([LOW, HIGH], {
      'devices.csv': csv(
        'device,name,form,technology,tank,drain_line,mineral_stage,acquired,interests',
        'ro,Reverse osmosis,under-sink,reverse-osmosis,no,yes,yes,bought,none',
      ),
    });
    const results = [`F0,Sodium,30`, `S0,Sodium,3`, `P0,Sodium,${product}`].map(
      (cells) => `${cells},mg/L,0.1,0.5`,
    );
    const rows = outcomeOf(
      {
        ...texts,
        'samples.csv': `${texts['samples.csv']}S0,stage,ro,,e0,,40 L\n`,
        'lab/lab.csv': `${texts['lab/lab.csv']}${csv(...results)}`,
      },
      [...lead('20,ug/L,0.1,0.5'), 'Sodium,30,mg/L,0.1,0.5'],
    ).rows as OtherFeedRow[];
    return rows.find(({ analyte }) => analyte === 'sodium');
  };

  it('an ion is refused where the product was shown to hold more than the water before it', () => {
    expect(sodium('12')?.reason).toBe('added-by-stage');
  });

  it('an ion is bounded where it was not', () => {
    expect(sodium('3.1')).toMatchObject({ outcome: 'bounded', reason: null });
  });
});

describe('a figure of many substances together', () => {
  it('is bounded under the assumption of the same mix', () => {
    const texts = leadBench([LOW, HIGH]);
    const lab = `${texts['lab/lab.csv'] ?? ''}P0,Conductivity,20,uS/cm,1,2\n`;
    const rows = outcomeOf({ ...texts, 'lab/lab.csv': lab }, lead('20,ug/L,0.1,0.5'))
      .rows as OtherFeedRow[];
    expect(rows.find(({ analyte }) => analyte === 'conductivity')).toMatchObject({
      outcome: 'bounded',
      assumptions: ['passage-between', 'same-mix'],
    });
  });
});

describe('what is published with it', () => {
  it('counts the feed file among the inputs and in the fingerprint', () => {
    const texts = leadBench([LOW, HIGH]);
    const first = outcomeOf(texts, lead('20,ug/L,0.1,0.5'));
    const second = outcomeOf(texts, lead('21,ug/L,0.1,0.5'));
    expect(first.inputs).toContainEqual(
      expect.objectContaining({ path: 'other-feed/town.csv', rows: 3 }),
    );
    expect(first.bench?.fingerprint).not.toBe(second.bench?.fingerprint);
  });

  it('notes a condition that the feed does not state', () => {
    const { findings } = outcomeOf(leadBench([LOW, HIGH]), ['Lead,20,ug/L,0.1,0.5']);
    expect(findings.filter(({ code }) => code === 'feed-condition-missing')).toHaveLength(2);
  });

  it('does not change with filters', () => {
    const texts = leadBench([LOW, HIGH]);
    const all = outcomeOf(texts, lead('20,ug/L,0.1,0.5')).rows as OtherFeedRow[];
    const some = outcomeOf(texts, lead('20,ug/L,0.1,0.5'), { devices: ['ro'], analytes: ['lead'] });
    expect(some.rows).toEqual(
      all.filter(({ device, analyte }) => device === 'ro' && analyte === 'lead'),
    );
  });

  it('refuses a feed that shares no tested analyte', () => {
    expect(() => outcomeOf(leadBench([LOW]), ['Arsenic,2,ug/L,0.1,0.5'])).toThrow(
      expect.objectContaining({ code: 'feed-not-common' }),
    );
  });
});

/** The bench of two levels and its feed, with the lead of the feed set to another side. */
function withLead<T>(
  use: (
    rowOf: (change: (side: FeedWater['analytes'][number]['side']) => object) => OtherFeedRow,
  ) => T,
): T {
  return withBench(
    { ...leadBench([LOW, HIGH]), 'town.csv': '', 'devices.csv': DEVICES_CSV },
    (folder) => {
      const file = join(folder, 'town.csv');
      writeFileSync(file, csv(FEED, ...lead('20,ug/L,0.1,0.5')));
      const bench: Bench = readBench(folder);
      const read = readFeed(bench, file);
      const water = feedWater(bench, read.results, read.sample?.index ?? -1);
      const { facts } = computeReductions(bench, 86_400);
      return use((change) => {
        const analytes = water.analytes.flatMap(({ analyte, side }) =>
          analyte.key === 'lead' ? { analyte, side: { ...side, ...change(side) } } : [],
        );
        const state = { device: 'ro', variant: 'standard' };
        const [fact] = computeOtherFeed(bench, facts, { ...water, analytes }, [state], null);
        if (fact === undefined) throw new Error('no row');
        return fact.row;
      });
    },
  );
}

describe('for any level of the feed', () => {
  it('is refused exactly outside the tested range', () => {
    withLead((rowOf) => {
      const { low, high } = rowOf(() => ({})).tested.feed;
      fc.assert(
        fc.property(fc.double({ min: 0, max: 120, noNaN: true }), (level) => {
          const point = { low: level, high: level };
          const row = rowOf(() => ({ interval: point, readings: point, estimate: level }));
          const expected =
            level > (high ?? 0)
              ? 'feed-above-tested'
              : level < (low ?? 0)
                ? 'feed-below-tested'
                : null;
          expect(row.reason).toBe(expected);
          expect(row.product.high === null).toBe(expected !== null);
        }),
        { seed: 1, numRuns: 300 },
      );
    });
  });

  it('has a wider product where the feed is known less well', () => {
    withLead((rowOf) => {
      const share = fc.double({ min: 0, max: 0.4, noNaN: true });
      fc.assert(
        fc.property(share, share, (a, b) => {
          const productAt = (relative: number) =>
            rowOf(({ uncertainty }) => ({ uncertainty: { ...uncertainty, relative } })).product;
          const narrow = productAt(Math.min(a, b));
          const wide = productAt(Math.max(a, b));
          expect(wide.low ?? 0).toBeLessThanOrEqual(narrow.low ?? 0);
          expect(wide.high ?? 0).toBeGreaterThanOrEqual(narrow.high ?? 0);
        }),
        { seed: 1, numRuns: 200 },
      );
    });
  });

  it('holds every product of a true feed and a true passage inside what was stated', () => {
    withLead((rowOf) => {
      const share = fc.double({ min: 0, max: 1, noNaN: true });
      fc.assert(
        fc.property(fc.double({ min: 5, max: 50, noNaN: true }), share, share, (level, f, p) => {
          const point = { low: level, high: level };
          const row = rowOf(() => ({ interval: point, readings: point, estimate: level }));
          const [low, high] = [row.feed.low ?? 0, row.feed.high ?? 0];
          const feed = low + f * (high - low);
          for (const { passage_low, passage_high } of row.tested.events) {
            const [from, to] = [passage_low ?? 0, passage_high ?? 0];
            const product = feed * (from + p * (to - from));
            // Rounding of the sums above: a few units in the last place.
            expect(product).toBeGreaterThanOrEqual((row.product.low ?? 0) * (1 - 1e-12));
            expect(product).toBeLessThanOrEqual((row.product.high ?? 0) * (1 + 1e-12));
          }
        }),
        { seed: 1, numRuns: 200 },
      );
    });
  });
});
