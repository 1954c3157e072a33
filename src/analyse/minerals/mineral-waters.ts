import { type Bench, type Interval, resultAt, STANDARD } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { joinResults, type Side } from '../reduction-side.ts';
import { kindOf, type ProductGroup, productGroups } from '../sample-groups.ts';
import type { Uncertainty } from '../uncertainty/index.ts';

/** One water of one event: the feed, the water before a mineral stage, or the product of a device. */
export interface MineralWater {
  readonly position: 'feed' | 'stage' | 'product';
  readonly device: string | null;
  readonly variant: string | null;
  readonly event: string | null;
  readonly kind: 'natural' | 'spiked';
  readonly samples: readonly number[];
}

/** The figures of one water by analyte key. */
export interface MeasuredWater extends MineralWater {
  readonly sides: ReadonlyMap<string, { readonly analyte: Analyte; readonly side: Side }>;
}

/** pH and temperature are never averaged: replicates span a range. */
const SPANNED = new Set(['ph', 'temperature']);

/**
 * The waters of a bench with everything measured in them: each event's feeds first, then device by
 * device the water before its mineral stage and its product.
 *
 * Void samples, duplicates and blanks stay out.
 */
export function measuredWaters(
  bench: Bench,
  uncertaintyOf: (index: number) => Uncertainty,
): MeasuredWater[] {
  const bySample = usableResults(bench);
  return watersOf(bench).map((water) => {
    const indices = new Map<number, number[]>();
    for (const sample of water.samples) {
      for (const index of bySample.get(sample) ?? []) {
        const analyte = bench.results.analyte[index] ?? -1;
        const known = indices.get(analyte);
        if (known === undefined) indices.set(analyte, [index]);
        else known.push(index);
      }
    }
    const sides = new Map<string, { readonly analyte: Analyte; readonly side: Side }>();
    for (const [at, results] of indices) {
      const analyte = bench.results.analytes[at];
      if (analyte === undefined) continue;
      const how = SPANNED.has(analyte.key) ? 'span' : 'mean';
      const side = joinResults(bench, results, how, uncertaintyOf);
      if (side !== null) sides.set(analyte.key, { analyte, side });
    }
    return { ...water, sides };
  });
}

function usableResults(bench: Bench): ReadonlyMap<number, readonly number[]> {
  const bySample = new Map<number, number[]>();
  for (let index = 0; index < bench.results.length; index += 1) {
    if (resultAt(bench.results, index).kind === 'missing') continue;
    const sample = bench.results.sample[index] ?? -1;
    const known = bySample.get(sample);
    if (known === undefined) bySample.set(sample, [index]);
    else known.push(index);
  }
  return bySample;
}

function watersOf(bench: Bench): MineralWater[] {
  const groups = productGroups(bench).filter(({ products }) => products.length > 0);
  const events = [...new Set(groups.map(eventKey))];
  const order = new Map<string | null, number>();
  for (const { values } of bench.tables.samples) {
    if (!order.has(values.event)) order.set(values.event, order.size);
  }
  const place = (key: string): number => order.get(eventOf(key)) ?? 0;
  events.sort((a, b) => place(a) - place(b));
  const members = new Map<string, ProductGroup[]>();
  for (const group of groups) {
    const known = members.get(eventKey(group));
    if (known === undefined) members.set(eventKey(group), [group]);
    else known.push(group);
  }
  const stages = stageSamples(bench);
  return events.flatMap((key) => {
    const own = members.get(key) ?? [];
    return [...feedsOf(bench, own), ...own.flatMap((group) => deviceWaters(stages, group))];
  });
}

function eventKey({ event, kind }: ProductGroup): string {
  return `${kind}\t${event}`;
}

function eventOf(key: string): string {
  return key.slice(key.indexOf('\t') + 1);
}

function feedsOf(bench: Bench, groups: readonly ProductGroup[]): MineralWater[] {
  const seen = new Set<string>();
  return groups.flatMap(({ feeds, event, kind }): MineralWater[] => {
    const key = feeds.join('+');
    if (feeds.length === 0 || seen.has(key)) return [];
    seen.add(key);
    const device = bench.tables.samples[feeds[0] ?? -1]?.values.device ?? null;
    return [{ position: 'feed', device, variant: null, event, kind, samples: feeds }];
  });
}

type DeviceState = Pick<MineralWater, 'device' | 'variant' | 'event' | 'kind'>;

function stageKey({ device, variant, event, kind }: DeviceState): string {
  return [device, variant, event, kind].join('\t');
}

/** Samples before a mineral stage by device, state, event and kind. */
function stageSamples(bench: Bench): ReadonlyMap<string, readonly number[]> {
  const stages = new Map<string, number[]>();
  for (const [index, row] of bench.tables.samples.entries()) {
    const { position, status, of, device, variant, event } = row.values;
    if (position !== 'stage' || status === 'void' || of !== null) continue;
    const key = stageKey({ device, variant: variant ?? STANDARD, event, kind: kindOf(row) });
    const known = stages.get(key);
    if (known === undefined) stages.set(key, [index]);
    else known.push(index);
  }
  return stages;
}

function deviceWaters(
  stageIndex: ReadonlyMap<string, readonly number[]>,
  group: ProductGroup,
): MineralWater[] {
  const { device, variant, event, kind, products } = group;
  const stages = stageIndex.get(stageKey(group)) ?? [];
  const own = { device, variant, event, kind };
  return [
    ...(stages.length === 0 ? [] : [{ position: 'stage' as const, ...own, samples: stages }]),
    { position: 'product' as const, ...own, samples: products },
  ];
}

/** The interval of a measured analyte; null where it was not measured. */
export function intervalIn(water: MeasuredWater, key: string): Interval | null {
  return water.sides.get(key)?.side.interval ?? null;
}
