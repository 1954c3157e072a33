import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import { readBench } from '../commands/read-bench.ts';
import type { Bench } from '../model/index.ts';
import { bracketingFeeds, productGroups, timedFeeds } from './sample-groups.ts';

const HEAD = 'sample,position,device,variant,event,kind,of,status,reason,taken_at';

function benchOf(...rows: readonly string[]): Bench {
  return withBench({ 'samples.csv': csv(HEAD, ...rows) }, (folder) => readBench(folder));
}

const named = (bench: Bench, indices: readonly number[]) =>
  indices.map((index) => bench.tables.samples[index]?.values.sample);

describe('the product samples of a device at an event', () => {
  it('come with the feed that names the device, else with those that serve every device', () => {
    const bench = benchOf(
      'f1,feed,,,day,,,,,',
      'f2,feed,ro,,day,,,,,',
      'f3,feed,,,day,spiked,,,,',
      'f4,feed,,,day,,,void,spilt,',
      'f5,feed,,,day,,f1,,,',
      'p1,product,ro,,day,,,,,',
      'p2,product,jug,,day,,,,,',
      'p3,product,jug,,day,spiked,,,,',
    );
    const feeds = productGroups(bench).map((group) => [
      group.device,
      group.kind,
      named(bench, group.feeds),
    ]);
    expect(feeds).toEqual([
      ['ro', 'natural', ['f2']],
      ['jug', 'natural', ['f1']],
      ['jug', 'spiked', ['f3']],
    ]);
  });

  it('stand in the order of devices.csv, void ones apart, duplicates nowhere', () => {
    const bench = benchOf(
      'p1,product,jug,,day,,,,,',
      'p2,product,ro,,day,,,void,spilt,',
      'p3,product,ro,,day,,,,,',
      'p4,product,ro,,day,,p3,,,',
    );
    const [first, second] = productGroups(bench);
    expect([first?.device, second?.device]).toEqual(['ro', 'jug']);
    expect(named(bench, first?.products ?? [])).toEqual(['p3']);
    expect(named(bench, first?.voidProducts ?? [])).toEqual(['p2']);
    expect(first?.feeds).toEqual([]);
  });

  it('are none in a bench without samples', () => {
    expect(productGroups(benchOf())).toEqual([]);
  });
});

/** Every feed looked at, the nearest on either side kept: the definition, however slow. */
function bracketsByDefinition(bench: Bench, product: number, windowS: number): number[] {
  const { samples } = bench.tables;
  const row = samples[product]?.values;
  let before: { readonly index: number; readonly gap: number } | null = null;
  let after: { readonly index: number; readonly gap: number } | null = null;
  for (const [index, { values }] of samples.entries()) {
    const serves = values.device === null || values.device === row?.device;
    if (values.position !== 'feed' || values.status === 'void' || !serves) continue;
    const gap = (values.taken_at?.seconds ?? Number.NaN) - (row?.taken_at?.seconds ?? Number.NaN);
    if (!(Math.abs(gap) <= windowS)) continue;
    if (gap <= 0 && (before === null || -gap < before.gap)) before = { index, gap: -gap };
    if (gap > 0 && (after === null || gap < after.gap)) after = { index, gap };
  }
  return before === null || after === null ? [] : [before.index, after.index];
}

describe('the feeds around a product', () => {
  it('are those of the definition for any times, devices and void feeds', () => {
    const feed = fc.tuple(
      fc.integer({ min: 0, max: 30 }),
      fc.constantFrom('', 'ro', 'jug'),
      fc.constantFrom('', 'void'),
    );
    const clock = (minute: number) => `2026-07-01T08:${String(minute).padStart(2, '0')}`;
    fc.assert(
      fc.property(
        fc.array(feed, { maxLength: 12 }),
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 20 }),
        (feeds, minute, windowMin) => {
          const rows = feeds.map(
            ([at, device, status], index) =>
              `f${index},feed,${device},,e${index},,,${status},${status && 'spilt'},${clock(at)}`,
          );
          const bench = benchOf(...rows, `p,product,ro,,day,,,,,${clock(minute)}`);
          const product = feeds.length;
          const found = bracketingFeeds(bench, timedFeeds(bench), product, windowMin * 60);
          expect(found).toEqual(bracketsByDefinition(bench, product, windowMin * 60));
        },
      ),
      { seed: 1, numRuns: 150 },
    );
  });

  it('are none for a product without a time of day', () => {
    const bench = benchOf(
      'f1,feed,,,a,,,,,2026-07-01T08:00',
      'f2,feed,,,b,,,,,2026-07-01T10:00',
      'p,product,ro,,day,,,,,2026-07-01',
    );
    expect(bracketingFeeds(bench, timedFeeds(bench), 2, 1e9)).toEqual([]);
  });
});
