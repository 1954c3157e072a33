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
      feeds: feedsOf(samples, event, device, kind),
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

function feedsOf(
  samples: readonly SampleRow[],
  event: string,
  device: string,
  kind: 'natural' | 'spiked',
): number[] {
  const shared: number[] = [];
  const own: number[] = [];
  for (const [index, row] of samples.entries()) {
    if (!isUsableFeed(row, kind) || row.values.event !== event) continue;
    if (row.values.device === null) shared.push(index);
    else if (row.values.device === device) own.push(index);
  }
  return own.length > 0 ? own : shared;
}

/**
 * The feeds taken last before and first after a product, both within the window.
 * @returns two indices, or none unless both exist
 */
export function bracketingFeeds(bench: Bench, product: number, windowS: number): number[] {
  const { samples } = bench.tables;
  const row = samples[product];
  const at = row?.values.taken_at;
  if (row === undefined || at === null || at === undefined || !at.hasTime) return [];
  let before: { readonly index: number; readonly gap: number } | null = null;
  let after: { readonly index: number; readonly gap: number } | null = null;
  for (const [index, feed] of samples.entries()) {
    const taken = feed.values.taken_at;
    const serves = feed.values.device === null || feed.values.device === row.values.device;
    if (!isUsableFeed(feed, kindOf(row)) || !serves || taken === null || !taken.hasTime) continue;
    const gap = taken.seconds - at.seconds;
    if (Math.abs(gap) > windowS) continue;
    if (gap <= 0 && (before === null || -gap < before.gap)) before = { index, gap: -gap };
    if (gap > 0 && (after === null || gap < after.gap)) after = { index, gap };
  }
  return before === null || after === null ? [] : [before.index, after.index];
}
