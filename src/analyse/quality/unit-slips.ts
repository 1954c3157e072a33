import type { Finding } from '../../findings/index.ts';
import { eventSamples } from './event-samples.ts';
import { feedSlips } from './feed-slips.ts';
import { median } from './median.ts';
import { isUsable, type SampleResults } from './sample-results.ts';
import { nitrateSlip, unitSlip, unitSuspect } from './slip-findings.ts';

/** No device multiplies an analyte by this; a wrong unit or a wrong bottle does. */
const ABOVE_FEED = 100;

/**
 * Figures that differ from their fellows by a factor no water has: 1,000 (a unit taken wrongly) and,
 * for nitrate, 4.43 (NO3 read as N).
 *
 * Fellows are the original of a duplicate, the feed of a product (upwards only, since a device may
 * take out 99.9 %), the products of one feed, and feeds of one kind among one another.
 */
export function unitSlipFindings(view: SampleResults): Finding[] {
  const odd = new Set<number>();
  return [...duplicates(view), ...feedSlips(view, odd), ...products(view, odd)];
}

function duplicates(view: SampleResults): Finding[] {
  return view.samples.flatMap((row, sample) => {
    if (row.values.of === null || !isUsable(row)) return [];
    const original = view.sampleNamed(row.values.of);
    return [...view.of(sample)].flatMap((index) => {
      const other = fellow(view, original, index);
      return other === null ? [] : unitSlip(view, index, other, row.values.of ?? '');
    });
  });
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
    return [unitSuspect(view, index, middle / before, `below its products`)];
  }
  const name = view.sampleName(feed);
  return found.flatMap(({ at, value }) => {
    if (value > ABOVE_FEED * before) {
      return unitSuspect(view, at, value / before, `above the feed ${name}`);
    }
    return key === 'nitrate' ? nitrateSlip(view, at, value / before, `the feed ${name}`) : [];
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
