import type { Bench } from '../model/index.ts';
import type { Analyte } from '../reference/index.ts';
import { joinResults, type Side } from './reduction-side.ts';
import {
  bracketingFeeds,
  type ProductGroup,
  productGroups,
  type TimedFeed,
  timedFeeds,
} from './sample-groups.ts';
import { resultUncertainties, type Uncertainty } from './uncertainty/index.ts';

/** Feed and product of one analyte, device, variant and event, before any judgement. */
export interface ReductionPair {
  readonly group: ProductGroup;
  readonly analyte: Analyte;
  readonly feed: Side | null;
  readonly product: Side | null;
  /** How the feeds were joined: `span` where feeds before and after bracket the product. */
  readonly feedJoin: 'mean' | 'span';
}

/** Units of measures that are no amounts of anything: there is nothing to reduce. */
const WITHOUT_REDUCTION = new Set(['pH', 'C', 'degC', 'mV', '1']);

/** True where a reduction of the analyte means something. */
export function hasReduction(analyte: Analyte): boolean {
  return !WITHOUT_REDUCTION.has(analyte.unit);
}

/**
 * Every pair of a bench, device by device.
 *
 * @param windowS how far a feed before or after may lie from a product without a feed of its event
 */
export function reductionPairs(bench: Bench, windowS: number): ReductionPair[] {
  const bySample = resultsBySample(bench);
  const uncertaintyOf = resultUncertainties(bench);
  const feeds = timedFeeds(bench);
  return productGroups(bench).flatMap((group) => {
    const pairs = new GroupPairs({ bench, bySample, feeds, windowS, uncertaintyOf }, group);
    return pairs.analytes().map((analyte) => pairs.pair(analyte));
  });
}

type BySample = ReadonlyMap<number, ReadonlyMap<number, readonly number[]>>;

function resultsBySample(bench: Bench): BySample {
  const bySample = new Map<number, Map<number, number[]>>();
  const { results } = bench;
  for (let index = 0; index < results.length; index += 1) {
    const sample = results.sample[index] ?? -1;
    const analyte = results.analyte[index] ?? -1;
    const ofSample = bySample.get(sample) ?? new Map<number, number[]>();
    bySample.set(sample, ofSample);
    const indices = ofSample.get(analyte) ?? [];
    ofSample.set(analyte, indices);
    indices.push(index);
  }
  return bySample;
}

interface PairSource {
  readonly bench: Bench;
  readonly bySample: BySample;
  /** Feeds with a time of day, for products without a feed of their event. */
  readonly feeds: readonly TimedFeed[];
  readonly windowS: number;
  readonly uncertaintyOf: (index: number) => Uncertainty;
}

class GroupPairs {
  readonly #source: PairSource;
  readonly #group: ProductGroup;

  constructor(source: PairSource, group: ProductGroup) {
    this.#source = source;
    this.#group = group;
  }

  /** Analytes of any sample of the group, in the order in which the lab files name them. */
  analytes(): number[] {
    const { products, voidProducts, feeds } = this.#group;
    const { bench, bySample } = this.#source;
    const found = new Set<number>();
    for (const sample of [...products, ...voidProducts, ...feeds]) {
      for (const analyte of bySample.get(sample)?.keys() ?? []) found.add(analyte);
    }
    return [...found]
      .filter((index) => {
        const analyte = bench.results.analytes[index];
        return analyte !== undefined && hasReduction(analyte);
      })
      .sort((a, b) => a - b);
  }

  pair(analyteIndex: number): ReductionPair {
    const { bench, uncertaintyOf } = this.#source;
    const analyte = bench.results.analytes[analyteIndex];
    if (analyte === undefined) throw new RangeError(`no analyte ${analyteIndex}`);
    const matched = this.#feedsFor(this.#of(this.#group.products, analyteIndex), analyteIndex);
    return {
      group: this.#group,
      analyte,
      product: joinResults(bench, matched.products, 'mean', uncertaintyOf),
      feed: joinResults(bench, matched.feeds, matched.how, uncertaintyOf),
      feedJoin: matched.how,
    };
  }

  #of(samples: readonly number[], analyte: number): number[] {
    return samples.flatMap((sample) => this.#source.bySample.get(sample)?.get(analyte) ?? []);
  }

  /** Feed and product of one lab file, unless the bench lets them come from different ones. */
  #feedsFor(
    products: readonly number[],
    analyte: number,
  ): { readonly products: number[]; readonly feeds: number[]; readonly how: 'mean' | 'span' } {
    const { bench, feeds, windowS } = this.#source;
    const own = this.#sameLab(products, this.#of(this.#group.feeds, analyte));
    if (own.feeds.length > 0 || products.length === 0) return { ...own, how: 'mean' };
    const first = this.#group.products[0];
    // A spiked event is one batch, dosed once: feeds of other batches say nothing about it.
    const mayBracket =
      bench.settings.feed.matching === 'bracketing' && this.#group.kind === 'natural';
    if (!mayBracket || first === undefined) return { ...own, how: 'mean' };
    const brackets = bracketingFeeds(bench, feeds, first, windowS);
    const around = this.#sameLab(products, this.#of(brackets, analyte));
    const isComplete = brackets.every((sample) =>
      around.feeds.some((index) => bench.results.sample[index] === sample),
    );
    return isComplete && around.feeds.length > 0
      ? { ...around, how: 'span' }
      : { products: [...products], feeds: [], how: 'mean' };
  }

  #sameLab(
    products: readonly number[],
    feeds: readonly number[],
  ): { readonly products: number[]; readonly feeds: number[] } {
    const { settings, results } = this.#source.bench;
    if (settings.cross_lab || products.length === 0) {
      return { products: [...products], feeds: [...feeds] };
    }
    const { file } = results;
    const feedFiles = new Set(feeds.map((index) => file[index]));
    const shared = products.filter((index) => feedFiles.has(file[index]));
    if (shared.length === 0) return { products: [...products], feeds: [] };
    const files = new Set(shared.map((index) => file[index]));
    return { products: shared, feeds: feeds.filter((index) => files.has(file[index])) };
  }
}
