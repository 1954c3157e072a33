import { productGroups } from '../sample-groups.ts';
import { isUsable, type SampleResults } from './sample-results.ts';

/** Feed, product and drain of one device in one state at one event. */
export interface EventSamples {
  readonly device: string;
  readonly variant: string;
  readonly event: string;
  readonly feeds: readonly number[];
  readonly products: readonly number[];
  readonly drains: readonly number[];
}

/** Groups with at least one feed and one product, in the order of devices.csv. */
export function eventSamples(view: SampleResults): EventSamples[] {
  return productGroups(view.bench).flatMap((group) => {
    if (group.feeds.length === 0 || group.products.length === 0) return [];
    const drains = view.samples.flatMap((row, index) => {
      const { position, device, event, of } = row.values;
      const isOwn = device === group.device && event === group.event && of === null;
      const variant = row.values.variant ?? 'standard';
      const kind = row.values.kind ?? 'natural';
      const isMeant = isOwn && variant === group.variant && kind === group.kind;
      return position === 'drain' && isMeant && isUsable(row) ? index : [];
    });
    return { ...group, drains };
  });
}
