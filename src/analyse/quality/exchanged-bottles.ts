import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace } from '../../model/index.ts';
import { type EventSamples, eventSamples } from './event-samples.ts';
import type { SampleResults } from './sample-results.ts';

/** Smaller differences are noise of two measurements. */
const CLEARLY = 1.1;

/** So many analytes, and so large a share of those that differ, make chance and minerals unlikely. */
const ANALYTES = 4;
const SHARE = 0.8;

/** Figures that a device may move either way. */
const EITHER_WAY = new Set(['pH', 'C', 'degC', 'mV', '1']);

/**
 * Samples of one event that look exchanged: a device takes things out, so nearly all analytes higher
 * in the product than in the feed is no device's doing. What a mineral stage adds does not count.
 *
 * With a drain sample the drain has to hold more than the feed; where product and drain stand on the
 * wrong sides of it both, those two were exchanged.
 */
export function exchangedFindings(view: SampleResults): Finding[] {
  return eventSamples(view).flatMap((group) =>
    group.products.flatMap((product) => exchanged(view, group, product)),
  );
}

function exchanged(view: SampleResults, group: EventSamples, product: number): Finding[] {
  const feed = group.feeds[0];
  const row = view.samples[product];
  if (feed === undefined || row === undefined) return [];
  const mineral = view.bench.tables.devices.some(
    ({ values }) => values.device === group.device && values.mineral_stage === 'yes',
  );
  const against = compare(view, feed, product, mineral);
  if (!isMostly(against.higher, against.lower)) return [];
  const drain = group.drains.find((index) => {
    const drained = compare(view, feed, index, false);
    return isMostly(drained.lower, drained.higher);
  });
  const seen =
    `${against.higher} of ${against.higher + against.lower} analytes that differ are higher in ` +
    `${view.sampleName(product)} than in the feed ${view.sampleName(feed)}`;
  if (drain !== undefined) {
    return [
      finding(
        'bottles-exchanged',
        `${seen}, and the drain ${view.sampleName(drain)} holds less than the feed: product and ` +
          'drain look exchanged',
        'compare the bottle numbers with the chain of custody before correcting bottles or position',
        cellPlace(row, 'position'),
      ),
    ];
  }
  return [
    finding(
      'feed-product-exchanged',
      `${seen}: the two look exchanged`,
      'compare the bottle numbers with the chain of custody before correcting bottles or position',
      cellPlace(row, 'position'),
    ),
  ];
}

function isMostly(these: number, others: number): boolean {
  return these >= ANALYTES && these >= SHARE * (these + others);
}

/** How many analytes lie clearly above and below the feed. */
function compare(
  view: SampleResults,
  feed: number,
  sample: number,
  mineral: boolean,
): { readonly higher: number; readonly lower: number } {
  let higher = 0;
  let lower = 0;
  for (const index of view.of(sample)) {
    const analyte = view.analyte(index);
    const isAdded = mineral && (analyte.group === 'minerals' || analyte.group === 'physical');
    if (EITHER_WAY.has(analyte.unit) || analyte.group === 'microbiological' || isAdded) continue;
    const { table } = view;
    const other = view.find(feed, table.analyte[index] ?? -1, table.file[index] ?? null);
    const own = view.interval(index);
    const before = other === -1 ? null : view.interval(other);
    if (own === null || before === null) continue;
    if (own.low > CLEARLY * before.high) higher += 1;
    else if (CLEARLY * own.high < before.low) lower += 1;
  }
  return { higher, lower };
}
