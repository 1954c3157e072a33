import {
  type Bench,
  type LabPackage,
  type LabResult,
  type NextTestRow,
  type PriceList,
  resultAt,
} from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import type { Claim } from '../claims/claim.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import type { Side } from '../reduction-side.ts';
import type { PlannedFeed } from './feed-of-bench.ts';
import { type OpenVerdict, type Verdicts, verdictsOf } from './open-verdicts.ts';
import { type PlannedSamples, withAnalytes, withPlannedEvent } from './planned-event.ts';
import { type LabTerms, plannedFigure, repeatedResult } from './planned-figure.ts';
import type { PlannedBench } from './planned-pair.ts';
import { rankTrips, type Trip, type TripOption } from './rank-trips.ts';
import { feedNeeded } from './showable-reduction.ts';
import type { TestQuestion } from './test-questions.ts';

/** All that the choice of the next tests rests on. */
export interface NextTestsInput {
  readonly bench: Bench;
  readonly windowS: number;
  readonly claims: readonly Claim[];
  readonly planned: PlannedBench;
  readonly questions: readonly TestQuestion[];
  readonly feeds: ReadonlyMap<string, PlannedFeed>;
  readonly ownLimits: ReadonlyMap<string, LabTerms>;
  readonly prices: PriceList | null;
  readonly budget: number | null;
  readonly keeps: (verdict: OpenVerdict) => boolean;
}

type Action = 'retest' | 'retest-spiked' | 'spike';

/** What is sent to one lab package from one kind of event. */
interface TripKind {
  readonly action: Action;
  /** Null: the lab and limits of the bench. */
  readonly from: LabPackage | null;
  readonly termsOf: (analyte: string) => LabTerms | null;
}

interface Option extends TripOption {
  readonly kind: TripKind;
  readonly plan: PlannedSamples;
  readonly assumes: readonly string[];
}

/** Two product samples of one event confirm each other. */
const SAMPLE_COUNTS = [1, 2];

/**
 * Which samples to pay for next, the best for the money first.
 *
 * The value of a sample is the number of open verdicts it settles, judged by the rules of the tool
 * itself on a bench to which the sample was added with the figures repeated. Samples of one event and
 * package share the feed.
 * @returns rows; the last one, without a rank, holds what nothing on offer settles
 */
export function nextTests(input: NextTestsInput): NextTestRow[] {
  const world = new World(input);
  const options = world.options();
  const trips = rankTrips(
    options,
    (chosen) => world.settledBy(chosen.flatMap((trip) => trip.options.map(({ plan }) => plan))),
    input.budget ?? undefined,
  );
  return world.rows(trips);
}

class World {
  readonly #input: NextTestsInput;
  readonly #bench: Bench;
  readonly #asked: ReadonlySet<string>;
  readonly #before: Verdicts;
  readonly #open: readonly OpenVerdict[];

  constructor(input: NextTestsInput) {
    const { bench, windowS, claims, questions, keeps } = input;
    this.#input = input;
    this.#asked = new Set(questions.map(({ analyte }) => analyte.key));
    this.#before = verdictsOf(bench, windowS, claims, this.#asked);
    this.#open = [...this.#before.open.values()].filter(keeps);
    this.#bench = this.#relevant();
  }

  /** Rises are judged over all pairs of the bench; without an open one the rest may go. */
  #relevant(): Bench {
    const { bench, claims } = this.#input;
    if (this.#open.some(({ kind }) => kind === 'rise')) return bench;
    const analytes = [
      ...this.#open.flatMap(({ analyte }) => analyte ?? []),
      ...claims.flatMap(({ analyte }) => analyte?.key ?? []),
    ];
    const members = analytes.flatMap((key) => bench.analytes.byKey(key)?.members ?? []);
    return withAnalytes(bench, new Set([...analytes, ...members]));
  }

  #after(plans: readonly PlannedSamples[]): Verdicts {
    const { windowS, claims } = this.#input;
    return verdictsOf(withPlannedEvent(this.#bench, plans), windowS, claims, this.#asked);
  }

  /** Ids of the open verdicts that these samples settle together. */
  settledBy(plans: readonly PlannedSamples[]): Set<string> {
    const after = this.#after(plans);
    return new Set(this.#open.flatMap(({ id }) => (after.settled.has(id) ? id : [])));
  }

  options(): Option[] {
    return this.#kinds().flatMap((kind, at) => {
      const perDevice = [...this.#byDevice().values()].map((own) => this.#drafts(kind, own));
      return SAMPLE_COUNTS.flatMap((samples) => {
        const drafts = perDevice.flatMap((draft) => draft ?? []);
        const plans = drafts.map(({ plan }) => ({ ...plan, samples, event: `planned ${at}` }));
        if (plans.length === 0) return [];
        const settled = this.settledBy(plans);
        return drafts.flatMap(({ assumes }, index): Option[] => {
          const plan = plans[index];
          if (plan === undefined) return [];
          const settles = this.#open
            .filter((one) => one.device === plan.device && one.variant === plan.variant)
            .flatMap(({ id }) => (settled.has(id) ? id : []));
          const price = kind.from?.price.amount ?? 1;
          return settles.length === 0
            ? []
            : [
                {
                  group: String(at),
                  feedCost: price,
                  device: `${plan.device}\n${plan.variant}`,
                  cost: price * samples,
                  settles,
                  kind,
                  plan,
                  assumes,
                },
              ];
        });
      });
    });
  }

  #kinds(): TripKind[] {
    const { prices, ownLimits } = this.#input;
    const open = new Set(this.#open.flatMap(({ analyte }) => analyte ?? []));
    const labs =
      prices === null
        ? [{ from: null, termsOf: (key: string) => ownLimits.get(key) ?? null }]
        : prices.packages
            .filter(({ tests }) => tests.some(({ analyte }) => open.has(analyte)))
            .map((from) => ({
              from,
              termsOf: (key: string) => from.tests.find(({ analyte }) => analyte === key) ?? null,
            }));
    return labs.flatMap((lab) =>
      (['retest', 'retest-spiked', 'spike'] as const).map((action) => ({ ...lab, action })),
    );
  }

  /** Open verdicts by device and variant. */
  #byDevice(): Map<string, OpenVerdict[]> {
    const groups = new Map<string, OpenVerdict[]>();
    for (const verdict of this.#open) {
      const key = `${verdict.device}\n${verdict.variant}`;
      const group = groups.get(key) ?? [];
      groups.set(key, group);
      group.push(verdict);
    }
    return groups;
  }

  /** What one device would send, with one product sample; null where nothing open is in the package. */
  #drafts(
    kind: TripKind,
    verdicts: readonly OpenVerdict[],
  ): { readonly plan: PlannedSamples; readonly assumes: readonly string[] } | null {
    const [first] = verdicts;
    if (first === undefined) return null;
    const { device, variant } = first;
    const assumes = new Set<string>();
    const throughputs: (number | null)[] = [];
    const keys = [...new Set(verdicts.flatMap(({ analyte }) => analyte ?? []))];
    const results = keys.flatMap((key) => {
      const terms = kind.termsOf(key);
      const analyte = this.#input.bench.analytes.byKey(key);
      if (terms === null || analyte === undefined) return [];
      const figures = this.#figures(kind.action, { device, variant }, analyte, terms);
      if (figures === null) return [];
      for (const word of figures.assumes) assumes.add(word);
      throughputs.push(figures.throughputL);
      return { analyte, feed: figures.feed, product: figures.product };
    });
    if (results.length === 0) return null;
    const known = throughputs.flatMap((volume) => volume ?? []);
    return {
      plan: {
        event: '',
        device,
        variant,
        kind: kind.action === 'retest' ? 'natural' : 'spiked',
        samples: 1,
        throughputL: known.length === 0 ? null : Math.max(...known),
        results,
      },
      assumes: [...assumes],
    };
  }

  #figures(
    action: Action,
    { device, variant }: { readonly device: string; readonly variant: string },
    analyte: Analyte,
    terms: LabTerms,
  ): Figures | null {
    const kind = action === 'retest-spiked' ? 'spiked' : 'natural';
    const facts = this.#before.facts.filter(
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

  rows(trips: readonly Trip<Option>[]): NextTestRow[] {
    const rows: NextTestRow[] = [];
    const paid = new Set<string>();
    const settled = new Set<string>();
    const plans: PlannedSamples[] = [];
    let spent = 0;
    for (const trip of trips) {
      plans.push(...trip.options.map(({ plan }) => plan));
      const after = this.#after(plans);
      spent += trip.cost;
      for (const id of trip.settles) settled.add(id);
      rows.push(
        this.#row(trip, after, {
          rank: rows.length + 1,
          isPaid: paid.has(trip.group),
          spent,
          settled: settled.size,
        }),
      );
      paid.add(trip.group);
    }
    const left = this.#open.filter(({ id }) => !settled.has(id));
    return left.length === 0 ? rows : [...rows, noneRow(left, rows.at(-1))];
  }

  #row(
    trip: Trip<Option>,
    after: Verdicts,
    so: {
      readonly rank: number;
      readonly isPaid: boolean;
      readonly spent: number;
      readonly settled: number;
    },
  ): NextTestRow {
    const [first] = trip.options;
    if (first === undefined) throw new RangeError('a trip takes one option at least');
    const { action, from } = first.kind;
    const counts = trip.options.map(({ plan }) => plan.samples);
    const samples = counts.reduce((sum, count) => sum + count, so.isPaid ? 0 : 1);
    const verdicts = this.#open.filter(({ id }) => trip.settles.includes(id));
    const cost = from === null ? null : trip.cost;
    return {
      rank: so.rank,
      action,
      lab: from?.lab ?? null,
      package: from?.name ?? null,
      devices: trip.options.map(({ plan }) => nameOf(plan)),
      product_samples: counts,
      samples,
      spike_to: action === 'spike' ? spikesOf(trip, verdicts) : [],
      price: from?.price.amount ?? null,
      currency: from?.price.currency ?? null,
      cost,
      verdicts: verdicts.map((verdict) =>
        published(verdict, after.settled.get(verdict.id) ?? null),
      ),
      per_money: cost === null || cost === 0 ? null : verdicts.length / cost,
      per_sample: verdicts.length / samples,
      assumes: [...new Set(trip.options.flatMap(({ assumes }) => assumes))],
      cost_so_far: from === null ? null : so.spent,
      settled_so_far: so.settled,
    };
  }
}

interface Figures {
  readonly feed: LabResult;
  readonly product: LabResult;
  readonly assumes: readonly string[];
  readonly throughputL: number | null;
}

function isNonDetect({ kind }: LabResult): boolean {
  return kind === 'notDetected';
}

function nameOf({ device, variant }: PlannedSamples): string {
  return variant === 'standard' ? device : `${device} (${variant})`;
}

/** Only what a settled verdict needs is spiked. */
function spikesOf(trip: Trip<Option>, settled: readonly OpenVerdict[]): NextTestRow['spike_to'] {
  const wanted = new Set(settled.map(({ analyte }) => analyte));
  const levels = new Map<string, NextTestRow['spike_to'][number]>();
  for (const { plan } of trip.options) {
    for (const { analyte, feed } of plan.results) {
      if (feed.kind !== 'quantified' || !wanted.has(analyte.key)) continue;
      levels.set(analyte.key, { analyte: analyte.key, feed: feed.value, unit: analyte.unit });
    }
  }
  return [...levels.values()];
}

function published(verdict: OpenVerdict, wouldBe: string | null): NextTestRow['verdicts'][number] {
  const { kind, device, variant, analyte, about, now, because } = verdict;
  return { kind, device, variant, analyte, about, now, because, would_be: wouldBe };
}

function noneRow(left: readonly OpenVerdict[], last: NextTestRow | undefined): NextTestRow {
  return {
    rank: null,
    action: 'none',
    lab: null,
    package: null,
    devices: [...new Set(left.map(({ device }) => device))],
    product_samples: [],
    samples: 0,
    spike_to: [],
    price: null,
    currency: null,
    cost: null,
    verdicts: left.map((verdict) => published(verdict, null)),
    per_money: null,
    per_sample: null,
    assumes: [],
    cost_so_far: last?.cost_so_far ?? null,
    settled_so_far: last?.settled_so_far ?? 0,
  };
}
