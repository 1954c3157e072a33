import { type Bench, type SampleRow, STANDARD } from '../model/index.ts';

/** The product samples of one device in one state at one event. */
export interface ProductGroup {
  readonly device: string;
  readonly variant: string;
  readonly event: string;
  readonly kind: 'natural' | 'spiked';
  /** Indices of valid product samples; duplicates are left to quality control. */
  readonly products: readonly number[];
  /** Indices of void product samples, shown and not used. */
  readonly voidProducts: readonly number[];
  /** Indices of the feed samples of the event that serve this device. */
  readonly feeds: readonly number[];
}

export function kindOf(row: SampleRow): 'natural' | 'spiked' {
  return row.values.kind ?? 'natural';
}

/**
 * Products grouped by device, variant, event and kind, in the order of devices.csv and then of
 * samples.csv, each with the feeds of its event.
 *
 * A feed that names the device goes before feeds that serve every device. Duplicates and blanks
 * never enter as samples of their own.
 */
export function productGroups(bench: Bench): ProductGroup[] {
  const { samples, devices } = bench.tables;
  const groups = new Map<string, ProductGroup & { products: number[]; voidProducts: number[] }>();
  const feeds = feedsByEvent(samples);
  for (const [index, row] of samples.entries()) {
    const { position, device, event, of } = row.values;
    if (position !== 'product' || of !== null || device === null || event === null) continue;
    const variant = row.values.variant ?? STANDARD;
    const kind = kindOf(row);
    const key = [device, variant, event, kind].join('\t');
    const group = groups.get(key) ?? {
      device,
      variant,
      event,
      kind,
      products: [],
      voidProducts: [],
      feeds: feedsServing(samples, feeds.get(eventKey(event, kind)) ?? [], device),
    };
    (row.values.status === 'void' ? group.voidProducts : group.products).push(index);
    groups.set(key, group);
  }
  const order = new Map(devices.map((row, index) => [row.values.device, index]));
  return [...groups.values()].sort(
    (a, b) => (order.get(a.device) ?? 0) - (order.get(b.device) ?? 0),
  );
}

function isUsableFeed(row: SampleRow, kind: 'natural' | 'spiked'): boolean {
  const { position, status, of } = row.values;
  return position === 'feed' && status !== 'void' && of === null && kindOf(row) === kind;
}

function eventKey(event: string, kind: 'natural' | 'spiked'): string {
  return `${kind}\t${event}`;
}

/** Indices of the usable feeds of each event and kind, found once for all groups. */
function feedsByEvent(samples: readonly SampleRow[]): ReadonlyMap<string, readonly number[]> {
  const feeds = new Map<string, number[]>();
  for (const [index, row] of samples.entries()) {
    const { event } = row.values;
    const kind = kindOf(row);
    if (event === null || !isUsableFeed(row, kind)) continue;
    const key = eventKey(event, kind);
    const known = feeds.get(key);
    if (known === undefined) feeds.set(key, [index]);
    else known.push(index);
  }
  return feeds;
}

/** Of the feeds of an event those that name the device, else those that serve every device. */
function feedsServing(
  samples: readonly SampleRow[],
  feeds: readonly number[],
  device: string,
): number[] {
  const of = (wanted: string | null) =>
    feeds.filter((index) => samples[index]?.values.device === wanted);
  const own = of(device);
  return own.length > 0 ? own : of(null);
}

/** A feed with a known time of day. */
export interface TimedFeed {
  readonly index: number;
  readonly row: SampleRow;
  readonly seconds: number;
}

/** The usable feeds with a time of day, earliest first; of one time in the order of samples.csv. */
export function timedFeeds({ tables: { samples } }: Bench): TimedFeed[] {
  return samples
    .flatMap((row, index): TimedFeed[] => {
      const taken = row.values.taken_at;
      return isUsableFeed(row, kindOf(row)) && taken?.hasTime === true
        ? [{ index, row, seconds: taken.seconds }]
        : [];
    })
    .sort((a, b) => a.seconds - b.seconds);
}

/**
 * The feeds taken last before and first after a product, both within the window.
 * @param feeds as `timedFeeds` gives them, found once for a bench
 * @returns two indices, or none unless both exist
 */
export function bracketingFeeds(
  bench: Bench,
  feeds: readonly TimedFeed[],
  product: number,
  windowS: number,
): number[] {
  const { samples } = bench.tables;
  const row = samples[product];
  const at = row?.values.taken_at;
  if (row === undefined || at === null || at === undefined || !at.hasTime) return [];
  const serves = (feed: TimedFeed | undefined): feed is TimedFeed =>
    feed !== undefined &&
    kindOf(feed.row) === kindOf(row) &&
    (feed.row.values.device === null || feed.row.values.device === row.values.device);
  const after = firstAfter(feeds, at.seconds);
  let last = after - 1;
  while (last >= 0 && !serves(feeds[last]) && isNear(feeds[last], at.seconds, windowS)) last -= 1;
  let next = after;
  while (next < feeds.length && !serves(feeds[next]) && isNear(feeds[next], at.seconds, windowS)) {
    next += 1;
  }
  // Of feeds taken at one time the first of samples.csv.
  const taken = feeds[last]?.seconds;
  for (let same = last - 1; same >= 0 && feeds[same]?.seconds === taken; same -= 1) {
    if (serves(feeds[same])) last = same;
  }
  const pair = [feeds[last], feeds[next]];
  return pair.every((feed) => serves(feed) && isNear(feed, at.seconds, windowS))
    ? pair.flatMap((feed) => feed?.index ?? [])
    : [];
}

function isNear(feed: TimedFeed | undefined, seconds: number, windowS: number): boolean {
  return feed !== undefined && Math.abs(feed.seconds - seconds) <= windowS;
}

/** Place of the first feed taken later than a time, by halving. */
function firstAfter(feeds: readonly TimedFeed[], seconds: number): number {
  let low = 0;
  let high = feeds.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((feeds[middle]?.seconds ?? Infinity) <= seconds) low = middle + 1;
    else high = middle;
  }
  return low;
}
