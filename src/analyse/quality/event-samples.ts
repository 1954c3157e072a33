import { type SampleRow, STANDARD } from '../../model/index.ts';
import { groupedBy } from './grouped-by.ts';
import { isUsable, type SampleResults } from './sample-results.ts';

/** Feed, product and drain of one device in one state at one event, duplicates left out. */
export interface EventSamples {
  readonly device: string;
  readonly variant: string;
  readonly event: string;
  readonly feeds: readonly number[];
  readonly products: readonly number[];
  readonly drains: readonly number[];
}

interface Placed {
  readonly index: number;
  readonly row: SampleRow;
}

/**
 * Groups with at least one feed and one product, by event in the order of samples.csv.
 *
 * A feed that names the device goes before feeds that serve every device, as in reductions.
 */
export function eventSamples(view: SampleResults): EventSamples[] {
  const usable = view.samples.flatMap((row, index): Placed[] =>
    isUsable(row) && row.values.of === null && row.values.event !== null ? [{ index, row }] : [],
  );
  const events = groupedBy(
    usable,
    ({ row }) => `${row.values.event}\t${row.values.kind ?? 'natural'}`,
  );
  return [...events.values()].flatMap((samples) => {
    const at = (position: string) => samples.filter(({ row }) => row.values.position === position);
    const feeds = at('feed');
    const drains = at('drain');
    const products = groupedBy(at('product'), deviceState);
    return [...products].flatMap(([key, made]) => {
      const { device, event, variant } = made[0]?.row.values ?? {};
      const serving = feedsOf(feeds, device ?? null);
      if (device === null || device === undefined || serving.length === 0) return [];
      return {
        device,
        variant: variant ?? STANDARD,
        event: event ?? '',
        feeds: serving,
        products: made.map(({ index }) => index),
        drains: drains.filter((drain) => deviceState(drain) === key).map(({ index }) => index),
      };
    });
  });
}

function deviceState({ row }: Placed): string {
  return `${row.values.device ?? ''}\t${row.values.variant ?? STANDARD}`;
}

function feedsOf(feeds: readonly Placed[], device: string | null): number[] {
  const own = feeds.filter(({ row }) => row.values.device === device);
  const shared = feeds.filter(({ row }) => row.values.device === null);
  return (own.length > 0 ? own : shared).map(({ index }) => index);
}
