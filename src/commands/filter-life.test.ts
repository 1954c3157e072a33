import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import type { FilterLifeRow } from '../model/index.ts';
import { filterLife } from './filter-life.ts';
import { readBench } from './read-bench.ts';

const SAMPLES = 'sample,position,device,event,kind,throughput';
const LAB = 'Sample ID,Analyte,Result,Units,MDL,RL';

interface Event {
  readonly product: string;
  readonly throughput: string;
  readonly feed?: string;
  readonly kind?: string;
}

function lives(events: readonly Event[], more: Record<string, string> = {}): FilterLifeRow[] {
  const texts = {
    'samples.csv': csv(
      SAMPLES,
      ...events.flatMap(({ throughput, kind = '' }, index) => [
        `F${index},feed,,e${index},${kind},`,
        `P${index},product,ro,e${index},${kind},${throughput}`,
      ]),
    ),
    'lab/lab.csv': csv(
      LAB,
      ...events.flatMap(({ product, feed = '100' }, index) => [
        `F${index},Lead,${feed},ug/L,0.1,0.5`,
        `P${index},Lead,${product},ug/L,0.1,0.5`,
      ]),
    ),
    ...more,
  };
  return withBench(texts, (folder) => {
    const bench = readBench(folder);
    expect(bench.findings.filter(({ level }) => level === 'error')).toEqual([]);
    return filterLife(bench).rows as FilterLifeRow[];
  });
}

const CLAIM = {
  'claims.csv': csv(
    'device,claim,analyte,comparator,value,evidence,capacity',
    'ro,less lead,lead,at-least,95 %,stated,200 L',
  ),
  'parts.csv': csv('device,part,price,capacity', 'ro,block,20 USD,150 L', 'jug,other,9 USD,10 L'),
};

describe('filter life', () => {
  it('goes by volume, not by the order of the samples, and stands beside the rated capacity', () => {
    const rows = lives(
      [
        { product: '40', throughput: '120 L' },
        { product: 'ND', throughput: '10 L' },
        { product: '1', throughput: '80 L' },
      ],
      CLAIM,
    );
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({
      analyte: 'lead',
      target: { comparator: 'at-least', value: 0.95, from: 'claim: less lead' },
      last_met_L: 80,
      first_missed_L: 120,
      life: 'ends-between',
      release_L: null,
      rated: [
        { from: 'part: block', capacity_L: 150, tested_share: 0.8, missed_before: true },
        { from: 'claim: less lead', capacity_L: 200, tested_share: 0.6, missed_before: true },
      ],
    });
    expect(rows[0]?.points.map(({ throughput_L, target }) => [throughput_L, target])).toEqual([
      [10, 'met'],
      [80, 'met'],
      [120, 'missed'],
    ]);
  });

  it('has a row without a target where two volumes were tested, and none for one', () => {
    const one = { product: '1', throughput: '10 L' };
    expect(lives([one])).toEqual([]);
    expect(lives([one, { ...one, throughput: '90 L' }])).toMatchObject([
      { target: null, life: 'cannot-say', points: [{ target: null }, { target: null }] },
    ]);
  });

  it('takes a reference level as target only where the feed was above it', () => {
    const events = [{ product: '2', throughput: '10 L' }];
    const settings = { 'bench.json': '{"title":"t","reference_levels":["WHO"]}' };
    // WHO guideline value of lead: 10 ug/L.
    expect(lives(events, settings)).toMatchObject([
      { target: { comparator: 'at-most-level', value: 10 }, last_met_L: 10 },
    ]);
    expect(
      lives([{ ...events[0], feed: '8', product: '2', throughput: '10 L' }], settings),
    ).toEqual([]);
  });

  it('finds what was held and given back', () => {
    const rows = lives([
      { product: '1', throughput: '10 L' },
      { product: '300', throughput: '500 L' },
    ]);
    expect(rows).toMatchObject([{ release_L: 500, release_firm: false }]);
  });

  it('never mixes natural and spiked feeds', () => {
    const rows = lives(
      [
        { product: '1', throughput: '10 L' },
        { product: '40', throughput: '90 L', kind: 'spiked' },
      ],
      CLAIM,
    );
    expect(rows.map(({ kind, life }) => [kind, life])).toEqual([
      ['natural', 'met-throughout'],
      ['spiked', 'missed-throughout'],
    ]);
  });

  it('names the events without a throughput and leaves them out', () => {
    const rows = lives(
      [
        { product: '40', throughput: '' },
        { product: '1', throughput: '10 L' },
      ],
      CLAIM,
    );
    expect(rows).toMatchObject([{ without_throughput: ['e0'], first_missed_L: null }]);
    expect(lives([{ product: '40', throughput: '' }], CLAIM)).toEqual([]);
  });
});
