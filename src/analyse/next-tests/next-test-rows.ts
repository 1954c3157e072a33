import type { LabPackage, NextTestRow } from '../../model/index.ts';
import type { OpenVerdict } from './open-verdicts.ts';
import type { PlannedSamples } from './planned-event.ts';
import type { LabTerms } from './planned-figure.ts';
import type { Action } from './planned-figures.ts';
import type { Trip, TripOption } from './rank-trips.ts';

/** What is sent to one lab package from one kind of event. */
export interface TripKind {
  readonly action: Action;
  /** Of a spike: which of the levels that the questions need, the lowest first. */
  readonly levelRank: number;
  /** Null: the lab and limits of the bench. */
  readonly from: LabPackage | null;
  readonly termsOf: (analyte: string) => LabTerms | null;
}

/** The samples of one device for one package, with what they settle. */
export interface PlannedOption extends TripOption {
  readonly kind: TripKind;
  readonly plan: PlannedSamples;
  readonly assumes: readonly string[];
}

/**
 * The published row of a trip.
 *
 * @param open all open verdicts of the bench
 * @param after verdicts as they would be settled, by id
 */
export function tripRow(
  trip: Trip<PlannedOption>,
  open: readonly OpenVerdict[],
  after: ReadonlyMap<string, string>,
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
  const verdicts = open.filter(({ id }) => trip.settles.includes(id));
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
    verdicts: verdicts.map((verdict) => published(verdict, after.get(verdict.id) ?? null)),
    per_money: cost === null || cost === 0 ? null : verdicts.length / cost,
    per_sample: verdicts.length / samples,
    assumes: [...new Set(trip.options.flatMap(({ assumes }) => assumes))],
    cost_so_far: from === null ? null : so.spent,
    settled_so_far: so.settled,
  };
}

function nameOf({ device, variant }: PlannedSamples): string {
  return variant === 'standard' ? device : `${device} (${variant})`;
}

/** Only what a settled verdict needs is spiked. */
function spikesOf(
  trip: Trip<PlannedOption>,
  settled: readonly OpenVerdict[],
): NextTestRow['spike_to'] {
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

/** What nothing on offer settles. */
export function noneRow(left: readonly OpenVerdict[], last: NextTestRow | undefined): NextTestRow {
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
