import type { Bench, NextTestRow, PriceList } from '../../model/index.ts';
import type { Claim } from '../claims/claim.ts';
import type { PlannedFeed } from './feed-of-bench.ts';
import { noneRow, type PlannedOption, type TripKind, tripRow } from './next-test-rows.ts';
import { type OpenVerdict, type Verdicts, verdictsOf } from './open-verdicts.ts';
import { type PlannedSamples, withAnalytes, withPlannedEvent } from './planned-event.ts';
import type { LabTerms } from './planned-figure.ts';
import { PlannedFigures } from './planned-figures.ts';
import type { PlannedBench } from './planned-pair.ts';
import { rankTrips, type Trip } from './rank-trips.ts';
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

/** Two product samples of one event confirm each other. */
const SAMPLE_COUNTS = [1, 2];

/** Spikes of more heights than this are not tried: each is judged on a bench of its own. */
const MOST_SPIKES = 4;

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
  readonly #asked: ReadonlyMap<string, readonly number[]>;
  readonly #before: Verdicts;
  readonly #open: readonly OpenVerdict[];
  readonly #figures: PlannedFigures;
  /** Benches with planned samples, judged; the same samples are asked about again. */
  readonly #judged = new Map<string, ReadonlyMap<string, string>>();

  constructor(input: NextTestsInput) {
    const { bench, windowS, claims, questions, keeps } = input;
    this.#input = input;
    this.#asked = askedOf(questions);
    this.#before = verdictsOf(bench, windowS, claims, this.#asked);
    this.#open = [...this.#before.open.values()].filter(keeps);
    this.#figures = new PlannedFigures(input, this.#before.facts);
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

  /** Words of the verdicts that stand settled with these samples, by id. */
  #after(plans: readonly PlannedSamples[]): ReadonlyMap<string, string> {
    const { windowS, claims } = this.#input;
    const key = plans
      .map(({ event, device, variant, samples }) => [event, device, variant, samples].join('\n'))
      .join('\n\n');
    const known = this.#judged.get(key);
    if (known !== undefined) return known;
    const bench = withPlannedEvent(this.#bench, plans);
    const { settled } = verdictsOf(bench, windowS, claims, this.#asked);
    this.#judged.set(key, settled);
    return settled;
  }

  /** Ids of the open verdicts that these samples settle together. */
  settledBy(plans: readonly PlannedSamples[]): Set<string> {
    const settled = this.#after(plans);
    return new Set(this.#open.flatMap(({ id }) => (settled.has(id) ? id : [])));
  }

  options(): PlannedOption[] {
    return this.#kinds().flatMap((kind, at) => {
      const drafts = this.#byDevice().flatMap((own) => this.#drafts(kind, own) ?? []);
      const options: PlannedOption[] = [];
      for (const samples of drafts.length === 0 ? [] : SAMPLE_COUNTS) {
        const plans = drafts.map(({ plan }) => ({ ...plan, samples, event: `planned ${at}` }));
        const settled = this.settledBy(plans);
        options.push(
          ...drafts.flatMap(({ assumes }, index) => {
            const plan = plans[index];
            return plan === undefined ? [] : this.#option(kind, String(at), plan, assumes, settled);
          }),
        );
        // A second sample settles no more than all there is.
        if (plans.every((plan) => this.#concerned(plan).every(({ id }) => settled.has(id)))) break;
      }
      const order = drafts.map(({ plan }) => keyOf(plan));
      return options.sort((a, b) => order.indexOf(a.device) - order.indexOf(b.device));
    });
  }

  /** Open verdicts on what planned samples are analysed for. */
  #concerned({ device, variant, results }: PlannedSamples): OpenVerdict[] {
    const keys = new Set<string | null>(results.map(({ analyte }) => analyte.key));
    return this.#open.filter(
      (one) => one.device === device && one.variant === variant && keys.has(one.analyte),
    );
  }

  #option(
    kind: TripKind,
    group: string,
    plan: PlannedSamples,
    assumes: readonly string[],
    settled: ReadonlySet<string>,
  ): PlannedOption[] {
    const settles = this.#concerned(plan).flatMap(({ id }) => (settled.has(id) ? id : []));
    if (settles.length === 0) return [];
    const price = kind.from?.price.amount ?? 1;
    const cost = price * plan.samples;
    return [{ group, feedCost: price, device: keyOf(plan), cost, settles, kind, plan, assumes }];
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
    return labs.flatMap((lab) => [
      { ...lab, action: 'retest', levelRank: 0 } as const,
      { ...lab, action: 'retest-spiked', levelRank: 0 } as const,
      ...Array.from(
        { length: this.#spikeLevels(lab.termsOf, open) },
        (_, levelRank) => ({ ...lab, action: 'spike', levelRank }) as const,
      ),
    ]);
  }

  /** How many spikes of different height are tried: as many as an open analyte has levels. */
  #spikeLevels(termsOf: TripKind['termsOf'], open: ReadonlySet<string>): number {
    const counts = [...open].map((key) => {
      const terms = termsOf(key);
      const analyte = this.#input.bench.analytes.byKey(key);
      return terms === null || analyte === undefined
        ? 0
        : this.#figures.spikeLevels(analyte, terms).length;
    });
    return Math.min(MOST_SPIKES, Math.max(0, ...counts));
  }

  /** Open verdicts by device and variant, in the order of devices.csv. */
  #byDevice(): OpenVerdict[][] {
    const groups = new Map<string, OpenVerdict[]>();
    for (const verdict of this.#open) {
      const key = keyOf(verdict);
      const group = groups.get(key) ?? [];
      groups.set(key, group);
      group.push(verdict);
    }
    const order = new Map(
      this.#input.bench.tables.devices.map(({ values }, at) => [values.device, at]),
    );
    const placeOf = ([first]: readonly OpenVerdict[]): number =>
      order.get(first?.device ?? '') ?? 0;
    return [...groups.values()].sort((a, b) => placeOf(a) - placeOf(b));
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
      const figures = this.#figures.figures(kind, { device, variant }, analyte, terms);
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

  rows(trips: readonly Trip<PlannedOption>[]): NextTestRow[] {
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
        tripRow(trip, this.#open, after, {
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
}

/** A device in one state of its settings. */
function keyOf({ device, variant }: { readonly device: string; readonly variant: string }): string {
  return `${device}\n${variant}`;
}

/** Analytes asked about, with the reductions that were named as wanted. */
function askedOf(questions: readonly TestQuestion[]): Map<string, number[]> {
  const asked = new Map<string, number[]>();
  for (const { analyte, target, isWanted } of questions) {
    const fractions = asked.get(analyte.key) ?? [];
    asked.set(analyte.key, fractions);
    if (isWanted && target.kind === 'reduction') fractions.push(target.fraction);
  }
  return asked;
}
