import { type Finding, finding } from '../findings/index.ts';
import { type Bench, type ReductionRow, resultAt, resultPlace } from '../model/index.ts';
import type { Analyte } from '../reference/index.ts';
import { levelVerdicts } from './level-verdict.ts';
import { logReductionBounds, outcomeOf, reductionBounds } from './reduction-bounds.ts';
import { joinResults, type Side } from './reduction-side.ts';
import { bracketingFeeds, type ProductGroup, productGroups } from './sample-groups.ts';

/** One reduction with the results it rests on. */
export interface ReductionFact {
  readonly row: ReductionRow;
  readonly analyte: Analyte;
  readonly feed: Side | null;
  readonly product: Side | null;
  /** Void product samples of the group. */
  readonly voidSamples: readonly string[];
}

export interface Reductions {
  readonly facts: readonly ReductionFact[];
  readonly findings: readonly Finding[];
}

/** Units of measures that are no amounts of anything: there is nothing to reduce. */
const WITHOUT_REDUCTION = new Set(['pH', 'C', 'degC', 'mV', '1']);

/** True where a reduction of the analyte means something. */
export function hasReduction(analyte: Analyte): boolean {
  return !WITHOUT_REDUCTION.has(analyte.unit);
}

/**
 * The reduction of every analyte by every device, variant and event.
 *
 * Every pair gets exactly one outcome. An analyte that only one side holds is `untested`.
 * @param windowS how far a feed before or after may lie from a product without a feed of its event
 */
export function computeReductions(bench: Bench, windowS: number): Reductions {
  const bySample = resultsBySample(bench);
  const facts: ReductionFact[] = [];
  const findings: Finding[] = [];
  for (const group of productGroups(bench)) {
    const pairs = new GroupPairs(bench, bySample, group, windowS);
    for (const analyte of pairs.analytes()) {
      const { fact, found } = pairs.reduction(analyte);
      facts.push(fact);
      findings.push(...found);
    }
  }
  return { facts, findings };
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

class GroupPairs {
  readonly #bench: Bench;
  readonly #bySample: BySample;
  readonly #group: ProductGroup;
  readonly #windowS: number;

  constructor(bench: Bench, bySample: BySample, group: ProductGroup, windowS: number) {
    this.#bench = bench;
    this.#bySample = bySample;
    this.#group = group;
    this.#windowS = windowS;
  }

  /** Analytes of any sample of the group, in the order in which the lab files name them. */
  analytes(): number[] {
    const { products, voidProducts, feeds } = this.#group;
    const found = new Set<number>();
    for (const sample of [...products, ...voidProducts, ...feeds]) {
      for (const analyte of this.#bySample.get(sample)?.keys() ?? []) found.add(analyte);
    }
    return [...found]
      .filter((index) => {
        const analyte = this.#bench.results.analytes[index];
        return analyte !== undefined && hasReduction(analyte);
      })
      .sort((a, b) => a - b);
  }

  reduction(analyteIndex: number): { readonly fact: ReductionFact; readonly found: Finding[] } {
    const analyte = this.#bench.results.analytes[analyteIndex];
    if (analyte === undefined) throw new RangeError(`no analyte ${analyteIndex}`);
    const found: Finding[] = [];
    const allProducts = this.#of(this.#group.products, analyteIndex);
    const matched = this.#feedsFor(allProducts, analyteIndex);
    const product = joinResults(this.#bench, matched.products, 'mean');
    const feed = joinResults(this.#bench, matched.feeds, matched.how);
    const voidSamples = this.#group.voidProducts.flatMap(
      (index) => this.#bench.tables.samples[index]?.values.sample ?? [],
    );
    if (product !== null && feed === null) found.push(this.#feedMissing(analyte, product));
    const row = this.#row(analyte, feed, product, found);
    if (row.outcome === 'rise' && product !== null) found.push(this.#riseShown(analyte, product));
    return { fact: { row, analyte, feed, product, voidSamples }, found };
  }

  #of(samples: readonly number[], analyte: number): number[] {
    return samples.flatMap((sample) => this.#bySample.get(sample)?.get(analyte) ?? []);
  }

  /** Feed and product of one lab file, unless the bench lets them come from different ones. */
  #feedsFor(
    products: readonly number[],
    analyte: number,
  ): { readonly products: number[]; readonly feeds: number[]; readonly how: 'mean' | 'span' } {
    const own = this.#sameLab(products, this.#of(this.#group.feeds, analyte));
    if (own.feeds.length > 0 || products.length === 0) return { ...own, how: 'mean' };
    const first = this.#group.products[0];
    const mayBracket = this.#bench.settings.feed.matching === 'bracketing';
    if (!mayBracket || first === undefined) return { ...own, how: 'mean' };
    const brackets = bracketingFeeds(this.#bench, first, this.#windowS);
    const around = this.#sameLab(products, this.#of(brackets, analyte));
    const isComplete = brackets.every((sample) =>
      around.feeds.some((index) => this.#bench.results.sample[index] === sample),
    );
    return isComplete && around.feeds.length > 0
      ? { ...around, how: 'span' }
      : { products: [...products], feeds: [], how: 'mean' };
  }

  #sameLab(
    products: readonly number[],
    feeds: readonly number[],
  ): { readonly products: number[]; readonly feeds: number[] } {
    if (this.#bench.settings.cross_lab || products.length === 0) {
      return { products: [...products], feeds: [...feeds] };
    }
    const { file } = this.#bench.results;
    const feedFiles = new Set(feeds.map((index) => file[index]));
    const shared = products.filter((index) => feedFiles.has(file[index]));
    if (shared.length === 0) return { products: [...products], feeds: [] };
    const files = new Set(shared.map((index) => file[index]));
    return { products: shared, feeds: feeds.filter((index) => files.has(file[index])) };
  }

  #row(
    analyte: Analyte,
    feed: Side | null,
    product: Side | null,
    found: readonly Finding[],
  ): ReductionRow {
    const { device, variant, event, kind } = this.#group;
    const outcome = outcomeOf(feed, product);
    const codes = found.map((item) => item.code as string);
    if (product === null && this.#group.voidProducts.length > 0) codes.push('sample-void');
    if (outcome === 'rise') codes.push('rise-shown');
    const levels =
      product === null
        ? []
        : levelVerdicts(analyte, product.interval, this.#bench.settings.reference_levels ?? []);
    if (product !== null && product.state !== 'quantified') {
      if (levels.some((level) => level.verdict === 'cannot-say')) codes.push('limit-above-level');
    }
    return {
      device,
      variant,
      event,
      kind,
      analyte: analyte.key,
      outcome,
      firm:
        outcome !== 'untested' && (feed?.state !== 'quantified' || product?.state !== 'quantified'),
      unit: analyte.unit,
      feed: published(feed),
      product: published(product),
      reduction: this.#reduction(feed, product),
      log_reduction:
        analyte.group === 'microbiological' && feed !== null && product !== null
          ? logReductionBounds(feed.interval, product.interval)
          : null,
      reference_levels: levels,
      findings: codes,
    };
  }

  #reduction(feed: Side | null, product: Side | null): ReductionRow['reduction'] {
    if (feed === null || product === null) {
      return {
        low: null,
        high: null,
        estimate: null,
        interval_low: null,
        interval_high: null,
        confidence: null,
        low_at_detection_limit: null,
        bound_limit: null,
      };
    }
    const bounds = reductionBounds(feed.interval, product.interval);
    const atDetection = reductionBounds(feed.atDetectionLimit, product.atDetectionLimit);
    const isPoint = feed.state === 'quantified' && product.state === 'quantified';
    return {
      low: finiteOrNull(bounds.low),
      high: bounds.high === 1 ? null : finiteOrNull(bounds.high),
      estimate: isPoint ? bounds.low : null,
      interval_low: null,
      interval_high: null,
      confidence: null,
      low_at_detection_limit: finiteOrNull(atDetection.low),
      bound_limit: this.#boundLimit(feed, product),
    };
  }

  #boundLimit(feed: Side, product: Side): ReductionRow['reduction']['bound_limit'] {
    if (feed.state === 'aboveRange' || product.state === 'aboveRange') return 'range';
    const { results } = this.#bench;
    const hasNonDetect = [...feed.results, ...product.results].some((index) => {
      const { kind } = resultAt(results, index);
      return kind === 'notDetected' || kind === 'notQuantified';
    });
    return hasNonDetect ? this.#bench.settings.nondetect_bound : null;
  }

  #feedMissing(analyte: Analyte, product: Side): Finding {
    const { device, event } = this.#group;
    return finding(
      'feed-missing',
      `${analyte.name} of ${device} at ${event} has no feed result to compare with`,
      'add the feed of the event from the same lab file, or set cross_lab in bench.json',
      resultPlace(this.#bench.results, product.results[0] ?? 0),
    );
  }

  #riseShown(analyte: Analyte, product: Side): Finding {
    const { device, event } = this.#group;
    return finding(
      'rise-shown',
      `${analyte.name} of ${device} at ${event} lies above its feed`,
      'retest before publishing; compare the blank, and check that bottles were not exchanged',
      resultPlace(this.#bench.results, product.results[0] ?? 0),
    );
  }
}

function published(side: Side | null): ReductionRow['feed'] {
  if (side === null) {
    return { low: null, high: null, estimate: null, n: 0, method: null, sample: null };
  }
  return {
    low: side.interval.low,
    high: finiteOrNull(side.interval.high),
    estimate: side.estimate,
    n: side.results.length,
    method: side.method,
    sample: side.samples.join('+'),
  };
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
