import { type Bench, type LabResult, resultAt, STANDARD } from '../../model/index.ts';
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

  /**
   * How high a feed the questions on an analyte need at a lab, the lowest first; none where no feed
   * answers one.
   */
  spikeLevels(analyte: Analyte, terms: LabTerms): number[] {
    const { planned, questions } = this.#input;
    const needs = questions
      .filter((one) => one.analyte.key === analyte.key)
      .flatMap(({ target }) => feedNeeded(planned, analyte, target, terms).printed ?? []);
    return [...new Set(needs)].sort((a, b) => a - b);
  }

  /**
   * @param levelRank of a spike: which of the levels, from 0; the highest where there are fewer
   * @returns null where the action makes no sense for the analyte
   */
  figures(
    { action, levelRank }: { readonly action: Action; readonly levelRank: number },
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
    const paired = facts.filter(({ feed }) => feed !== null);
    const last = paired.filter(({ row }) => row.kind === kind).at(-1);
    const throughputL = this.#throughput(device, variant);
    if (action === 'spike') {
      const levels = this.spikeLevels(analyte, terms);
      const level = levels[levelRank] ?? levels.at(-1);
      const spiked = paired.filter(({ row }) => row.kind === 'spiked').at(-1);
      return level === undefined ? null : { ...atLevel(level, terms, spiked ?? last), throughputL };
    }
    if (last?.feed != null && last.product !== null) {
      const product = repeatedResult(this.#resultOf(last.product), terms, 'product');
      return {
        feed: repeatedResult(this.#resultOf(last.feed), terms, 'feed'),
        product,
        assumes: ['figures-repeat', ...(isNonDetect(product) ? ['not-detected-again'] : [])],
        throughputL,
      };
    }
    const feed = this.#input.feeds.get(analyte.key);
    return action === 'retest-spiked' || facts.length > 0 || feed === undefined
      ? null
      : {
          feed: repeatedResult(feed.result, terms, 'feed'),
          product: plannedFigure(0, terms),
          assumes: ['not-detected', ...(throughputL === 0 ? ['new-device'] : [])],
          throughputL,
        };
  }

  #resultOf({ results, estimate }: Side): LabResult {
    const result = resultAt(this.#input.bench.results, results[0] ?? 0);
    return result.kind === 'quantified' && estimate !== null
      ? { ...result, value: estimate }
      : result;
  }

  /**
   * The most that the samples of a device say it had treated: a new sample comes after them. A device
   * without any sample is new; one whose samples do not say is not known.
   */
  #throughput(device: string, variant: string): number | null {
    const own = this.#input.bench.tables.samples.filter(
      ({ values }) => values.device === device && (values.variant ?? STANDARD) === variant,
    );
    const volumes = own.flatMap(({ values }) => values.throughput?.value ?? []);
    if (own.length === 0) return 0;
    return volumes.length === 0 ? null : Math.max(...volumes);
  }
}

/** A feed of that level; a product with a figure keeps its share of the feed. */
function atLevel(
  level: number,
  terms: LabTerms,
  known: ReductionFact | undefined,
): Omit<Figures, 'throughputL'> {
  const feed = plannedFigure(level, terms);
  const before = known?.feed?.estimate ?? null;
  const after = known?.product?.estimate ?? null;
  return before !== null && after !== null && before > 0
    ? { feed, product: plannedFigure((after / before) * level, terms), assumes: ['share-stays'] }
    : { feed, product: plannedFigure(0, terms), assumes: ['not-detected'] };
}

function isNonDetect({ kind }: LabResult): boolean {
  return kind === 'notDetected';
}
