import { type Bench, type LabResult, resultAt } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import type { Side } from '../reduction-side.ts';
import type { PlannedFeed } from './feed-of-bench.ts';
import { type LabTerms, plannedFigure, repeatedResult } from './planned-figure.ts';
import type { PlannedBench } from './planned-pair.ts';
import { feedNeeded } from './showable-reduction.ts';
import type { TestQuestion } from './test-questions.ts';

/**
 * What is done: a new event on the natural feed, on the spiked feed as it was before, or on a feed
 * spiked as high as the questions need.
 */
export type Action = 'retest' | 'retest-spiked' | 'spike';

/** Feed and product that a planned sample is taken to show. */
export interface Figures {
  readonly feed: LabResult;
  readonly product: LabResult;
  readonly assumes: readonly string[];
  /** Litres treated; null: not known. */
  readonly throughputL: number | null;
}

/** What planned samples would show, from what the bench knows. */
export class PlannedFigures {
  readonly #input: {
    readonly bench: Bench;
    readonly planned: PlannedBench;
    readonly questions: readonly TestQuestion[];
    readonly feeds: ReadonlyMap<string, PlannedFeed>;
  };
  readonly #facts: readonly ReductionFact[];

  constructor(
    input: {
      readonly bench: Bench;
      readonly planned: PlannedBench;
      readonly questions: readonly TestQuestion[];
      readonly feeds: ReadonlyMap<string, PlannedFeed>;
    },
    facts: readonly ReductionFact[],
  ) {
    this.#input = input;
    this.#facts = facts;
  }

  /** @returns null where the action makes no sense for the analyte */
  figures(
    action: Action,
    { device, variant }: { readonly device: string; readonly variant: string },
    analyte: Analyte,
    terms: LabTerms,
  ): Figures | null {
    const kind = action === 'retest-spiked' ? 'spiked' : 'natural';
    const facts = this.#facts.filter(
      ({ row, product }) =>
        row.device === device &&
        row.variant === variant &&
        row.analyte === analyte.key &&
        product !== null,
    );
    const last = facts.filter(({ row, feed }) => row.kind === kind && feed !== null).at(-1);
    const throughputL = this.#throughput(last ?? facts.at(-1), device, variant);
    if (action === 'spike') return this.#spiked(analyte, terms, last, throughputL);
    if (last?.feed != null && last.product !== null) {
      const product = repeatedResult(this.#resultOf(last.product), terms);
      return {
        feed: repeatedResult(this.#resultOf(last.feed), terms),
        product,
        assumes: ['figures-repeat', ...(isNonDetect(product) ? ['not-detected-again'] : [])],
        throughputL,
      };
    }
    const feed = this.#input.feeds.get(analyte.key);
    return action === 'retest-spiked' || facts.length > 0 || feed === undefined
      ? null
      : {
          feed: repeatedResult(feed.result, terms),
          product: plannedFigure(0, terms),
          assumes: ['not-detected'],
          throughputL,
        };
  }

  /** A feed that reaches the highest target asked of the analyte; the product keeps its share. */
  #spiked(
    analyte: Analyte,
    terms: LabTerms,
    last: ReductionFact | undefined,
    throughputL: number | null,
  ): Figures | null {
    const { planned, questions } = this.#input;
    const needs = questions
      .filter((one) => one.analyte.key === analyte.key)
      .flatMap(({ target }) => feedNeeded(planned, analyte, target, terms).printed ?? []);
    if (needs.length === 0) return null;
    const level = Math.max(...needs);
    const feed = plannedFigure(level, terms);
    const before = last?.feed?.estimate ?? null;
    const after = last?.product?.estimate ?? null;
    return before !== null && after !== null && before > 0
      ? {
          feed,
          product: plannedFigure((after / before) * level, terms),
          assumes: ['share-stays'],
          throughputL,
        }
      : { feed, product: plannedFigure(0, terms), assumes: ['not-detected'], throughputL };
  }

  #resultOf({ results, estimate }: Side): LabResult {
    const result = resultAt(this.#input.bench.results, results[0] ?? 0);
    return result.kind === 'quantified' && estimate !== null
      ? { ...result, value: estimate }
      : result;
  }

  /** Of the samples behind a fact, else the last one known of the device. */
  #throughput(fact: ReductionFact | undefined, device: string, variant: string): number | null {
    const names = new Set(fact?.product?.samples ?? []);
    const own = this.#input.bench.tables.samples.filter(
      ({ values }) => values.device === device && (values.variant ?? 'standard') === variant,
    );
    const behind = own.filter(({ values }) => names.has(values.sample));
    const volumes = (behind.length > 0 ? behind : own).flatMap(
      ({ values }) => values.throughput?.value ?? [],
    );
    return volumes.length === 0 ? null : Math.max(...volumes);
  }
}

function isNonDetect({ kind }: LabResult): boolean {
  return kind === 'notDetected';
}
