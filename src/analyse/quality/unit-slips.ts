import { type Finding, finding } from '../../findings/index.ts';
import type { SampleRow } from '../../model/index.ts';
import { eventSamples } from './event-samples.ts';
import { median } from './median.ts';
import { isUsable, type SampleResults } from './sample-results.ts';
import { shortNumber } from './short-number.ts';

/** A unit slip multiplies by 1,000; what two waters differ by on top of it lies within these. */
const THOUSAND = [200, 5000] as const;

/** No device multiplies an analyte by this; a wrong unit or a wrong bottle does. */
const ABOVE_FEED = 100;

/** With fewer feeds nobody can say which one is odd. */
const FEEDS = 3;

/** NO3 over N by molar mass, and how closely a ratio has to meet it. */
const NITRATE_RATIO = 62.005 / 14.007;
const NITRATE_NEAR = 0.04;

/**
 * Figures that differ from their fellows by a factor no water has: 1,000 (a unit taken wrongly) and,
 * for nitrate, 4.43 (NO3 read as N).
 *
 * Fellows are the original of a duplicate, the feed of a product (upwards only, since a device may
 * take out 99.9 %), the products of one feed, and feeds of one kind among one another.
 */
export function unitSlipFindings(view: SampleResults): Finding[] {
  const odd = new Set<number>();
  return [...duplicates(view), ...feeds(view, odd), ...products(view, odd)];
}

function duplicates(view: SampleResults): Finding[] {
  return view.samples.flatMap((row, sample) => {
    if (row.values.of === null || !isUsable(row)) return [];
    const original = view.sampleNamed(row.values.of);
    return [...view.of(sample)].flatMap((index) => {
      const other = fellow(view, original, index);
      return other === null ? [] : slip(view, index, other, row.values.of ?? '');
    });
  });
}

/**
 * Each feed against the middle of all feeds of its kind, where three or more hold the analyte.
 * @param odd gathers the results told, so that products are not measured by them
 */
function feeds(view: SampleResults, odd: Set<number>): Finding[] {
  const kinds = ['natural', 'spiked'] as const;
  return kinds.flatMap((kind) => {
    const samples = view.samples.flatMap((row, index) => (isFeed(row, kind) ? index : []));
    if (samples.length < FEEDS) return [];
    const indices = samples.flatMap((sample) => [...view.of(sample)]);
    const values = new Map<number, number[]>();
    for (const index of indices) {
      const value = view.value(index);
      const analyte = view.table.analyte[index] ?? -1;
      if (value !== null && value > 0) append(values, analyte, value);
    }
    const middles = new Map(
      [...values].flatMap(([analyte, of]) =>
        of.length < FEEDS ? [] : [[analyte, median(of) ?? 0] as const],
      ),
    );
    return indices.flatMap((index) => {
      const middle = middles.get(view.table.analyte[index] ?? -1);
      const found =
        middle === undefined ? [] : slip(view, index, middle, 'the middle of all feeds');
      if (found.length > 0) odd.add(index);
      return found;
    });
  });
}

function isFeed(row: SampleRow, kind: 'natural' | 'spiked'): boolean {
  const { position, of } = row.values;
  const own = row.values.kind ?? 'natural';
  return position === 'feed' && of === null && own === kind && isUsable(row);
}

/**
 * Products against their feed. Where most products of a feed lie that far above it, the feed is the
 * odd one.
 */
function products(view: SampleResults, odd: ReadonlySet<number>): Finding[] {
  const byFeed = new Map<number, number[]>();
  for (const { feeds: own, products: made } of eventSamples(view)) {
    const feed = own[0];
    if (feed === undefined) continue;
    for (const product of made) append(byFeed, feed, product);
  }
  return [...byFeed].flatMap(([feed, made]) =>
    [...view.of(feed)].flatMap((index) =>
      odd.has(index) ? [] : againstFeed(view, feed, index, made),
    ),
  );
}

function againstFeed(
  view: SampleResults,
  feed: number,
  index: number,
  made: readonly number[],
): Finding[] {
  const before = view.value(index);
  const { key, group } = view.analyte(index);
  if (before === null || before <= 0 || group === 'microbiological') return [];
  const { table } = view;
  const found = made.flatMap((product) => {
    const at = view.find(product, table.analyte[index] ?? -1, table.file[index] ?? null);
    const value = at === -1 ? null : view.value(at);
    return value === null ? [] : { at, value };
  });
  const far = found.filter(({ value }) => value > ABOVE_FEED * before);
  if (far.length >= 2 && 2 * far.length > found.length) {
    const middle = median(far.map(({ value }) => value)) ?? 0;
    return [suspect(view, index, middle / before, `below its products`)];
  }
  const name = view.sampleName(feed);
  return found.flatMap(({ at, value }) => {
    if (value > ABOVE_FEED * before) {
      return suspect(view, at, value / before, `above the feed ${name}`);
    }
    return key === 'nitrate' ? nitrate(view, at, value / before, `the feed ${name}`) : [];
  });
}

function append<K>(lists: Map<K, number[]>, key: K, value: number): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}

/** The same analyte of another sample from the same lab file, quantified and above zero. */
function fellow(view: SampleResults, sample: number, index: number): number | null {
  const { analyte, file } = view.table;
  const other = view.find(sample, analyte[index] ?? -1, file[index] ?? null);
  const across = other === -1 ? view.find(sample, analyte[index] ?? -1) : other;
  const value = across === -1 ? null : view.value(across);
  return value !== null && value > 0 ? value : null;
}

function slip(view: SampleResults, index: number, other: number, than: string): Finding[] {
  const value = view.value(index);
  const { key, group } = view.analyte(index);
  if (value === null || value <= 0 || group === 'microbiological') return [];
  const ratio = value / other;
  const size = Math.max(ratio, 1 / ratio);
  if (size > THOUSAND[0] && size < THOUSAND[1]) {
    return [suspect(view, index, size, `${ratio > 1 ? 'above' : 'below'} ${than}`)];
  }
  return key === 'nitrate' ? nitrate(view, index, ratio, than) : [];
}

function suspect(view: SampleResults, index: number, times: number, where: string): Finding {
  return finding(
    'unit-suspect',
    `${view.analyte(index).name} is ${shortNumber(times)} times ${where}: its unit may be off by 1,000`,
    'compare the unit with the report of the lab (ng/L, ug/L, mg/L)',
    view.place(index),
  );
}

function nitrate(view: SampleResults, index: number, ratio: number, than: string): Finding[] {
  const size = Math.max(ratio, 1 / ratio);
  if (Math.abs(size / NITRATE_RATIO - 1) > NITRATE_NEAR) return [];
  // A product below its feed is what a device is for.
  if (ratio < 1 && than.startsWith('the feed')) return [];
  return [
    finding(
      'nitrate-basis-suspect',
      `nitrate is ${shortNumber(size)} times ${ratio > 1 ? 'above' : 'below'} ${than}, the factor ` +
        'between NO3 and N',
      'ask the lab whether the figure is as N or as NO3',
      view.place(index),
    ),
  ];
}
