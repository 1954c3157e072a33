import { placeText } from '../../findings/index.ts';
import {
  type Bench,
  type Interval,
  type ReductionOutcome,
  type ReductionRow,
  resultPlace,
  STANDARD,
} from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import type { UncertainSide } from '../reduction-statement.ts';
import type { SumFact } from '../sums/index.ts';

/** What one event holds about a device and an analyte, single or summed. */
export interface Evidence {
  readonly event: string;
  readonly kind: 'natural' | 'spiked';
  readonly outcome: ReductionOutcome;
  readonly firm: boolean;
  readonly feed: UncertainSide | null;
  readonly product: UncertainSide | null;
  /** Stated bounds of the reduction as fractions; -Infinity and 1 where unbounded. */
  readonly reduction: Interval;
  readonly feedSamples: readonly string[];
  readonly productSamples: readonly string[];
  /** Results of the product one by one, as indices; empty for a sum. */
  readonly productResults: readonly number[];
  /** `file:line:column` of every result used. */
  readonly places: readonly string[];
  /** Volume the device had treated, litres; null where a sample does not say. */
  readonly throughputL: number | null;
}

/**
 * The events that tested an analyte on a device with its settings as delivered.
 *
 * A sum that the lab did not report itself is formed from its members. Events without a product are
 * left out; void samples are none.
 */
export function evidenceFor(
  bench: Bench,
  device: string,
  analyte: Analyte,
  facts: readonly ReductionFact[],
  sums: readonly SumFact[],
): Evidence[] {
  const isDevice = (row: { readonly device: string; readonly variant: string }): boolean =>
    row.device === device && row.variant === STANDARD;
  const own = facts.filter(({ row, product }) => {
    return isDevice(row) && row.analyte === analyte.key && product !== null;
  });
  if (own.length > 0) return own.map((fact) => evidenceOfFact(bench, fact));
  return sums
    .filter(({ row, product }) => {
      return isDevice(row) && row.sum === analyte.key && product !== null;
    })
    .map((fact) => evidenceOfSum(bench, fact));
}

/** The evidence of one reduction; its product may be missing. */
export function evidenceOfFact(bench: Bench, fact: ReductionFact): Evidence {
  return { ...evidenceOf(bench, fact, [fact]), productResults: fact.product?.results ?? [] };
}

function evidenceOfSum(bench: Bench, fact: SumFact): Evidence {
  return { ...evidenceOf(bench, fact, fact.members), productResults: [] };
}

function evidenceOf(
  bench: Bench,
  { row, feed, product }: ReductionFact | SumFact,
  members: readonly ReductionFact[],
): Omit<Evidence, 'productResults'> {
  const productSamples = product?.samples ?? [];
  const results = members.flatMap((member) => [
    ...(member.feed?.results ?? []),
    ...(member.product?.results ?? []),
  ]);
  return {
    event: row.event,
    kind: row.kind,
    outcome: row.outcome,
    firm: row.firm && isConfident(row.reduction),
    feed,
    product,
    reduction: statedBounds(row.reduction),
    feedSamples: feed?.samples ?? [],
    productSamples,
    places: placesOf(bench, results),
    throughputL: throughputOf(bench, productSamples),
  };
}

type Stated = Pick<ReductionRow['reduction'], 'interval_low' | 'interval_high' | 'confidence'>;

/** What is printed: with the uncertainty of both sides. */
function statedBounds(reduction: Stated): Interval {
  const { interval_low, interval_high } = reduction;
  return { low: interval_low ?? Number.NEGATIVE_INFINITY, high: interval_high ?? 1 };
}

/** Bounds at a detection limit say what was reported and carry no confidence. */
function isConfident({ confidence }: Stated): boolean {
  return confidence !== null;
}

function placesOf(bench: Bench, results: readonly number[]): string[] {
  return results.map((index) => placeText(resultPlace(bench.results, index)));
}

/** The highest throughput of the samples; null where one of them does not say. */
export function throughputOf(bench: Bench, samples: readonly string[]): number | null {
  const volumes = bench.tables.samples
    .filter(({ values }) => samples.includes(values.sample))
    .map(({ values }) => values.throughput?.value ?? null);
  const known = volumes.filter((volume) => volume !== null);
  return known.length === 0 || known.length < volumes.length ? null : Math.max(...known);
}
