import { type Bench, type Interval, resultAt, SOLIDS } from '../../model/index.ts';
import { studentTQuantile } from '../../statistics/index.ts';
import { throughputOf } from '../claims/claim-evidence.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import { productGroups } from '../sample-groups.ts';
import {
  resultUncertainties,
  standardUncertainty,
  type Uncertainty,
} from '../uncertainty/index.ts';

/** What the feed of an event was like, with its uncertainty, and how much the device had treated. */
export interface EventConditions {
  readonly ph: Interval | null;
  /** Dissolved solids and conductivity, by the key of the measure. */
  readonly solids: ReadonlyMap<string, Interval>;
  readonly throughputL: number | null;
}

/**
 * How far what was tested reaches beyond a figure, for the uncertainty of the figure.
 *
 * pH 0.1: Standard Methods 4500-H+ B gives it as the limit of accuracy under normal conditions (from
 * memory). Solids and conductivity: their uncertainty, and 5 % at most (common practice, no source).
 */
export const CONDITION_UNCERTAINTY = { ph: 0.1, solidsAtMost: 0.05 } as const;

const PH = 'ph';

/** The conditions of the event behind a reduction, from the feeds of the event. */
export function eventConditions(bench: Bench): (fact: ReductionFact) => EventConditions {
  const bySample = conditionFigures(bench);
  const groups = new Map(productGroups(bench).map((group) => [keyOf(group), group]));
  const indexOf = new Map(bench.tables.samples.map((row, index) => [row.values.sample, index]));
  return ({ row, feed, product }) => {
    const around = (feed?.samples ?? []).flatMap((name) => indexOf.get(name) ?? []);
    const feeds = [...new Set([...around, ...(groups.get(keyOf(row))?.feeds ?? [])])];
    const spanOf = (key: string): Interval | null =>
      spanOfAll(feeds.flatMap((sample) => bySample.get(sample)?.get(key) ?? []));
    return {
      ph: spanOf(PH),
      solids: new Map(
        SOLIDS.flatMap((key) => {
          const span = spanOf(key);
          return span === null ? [] : [[key, span] as const];
        }),
      ),
      throughputL: throughputOf(bench, product?.samples ?? []),
    };
  };
}

interface EventKey {
  readonly device: string;
  readonly variant: string;
  readonly event: string;
  readonly kind: string;
}

function keyOf({ device, variant, event, kind }: EventKey): string {
  return [device, variant, event, kind].join('\t');
}

/** Quantified figures of the conditions with their uncertainty, by sample and analyte. */
function conditionFigures(bench: Bench): ReadonlyMap<number, ReadonlyMap<string, Interval[]>> {
  const keys: readonly string[] = [PH, ...SOLIDS];
  const uncertaintyOf = resultUncertainties(bench);
  const bySample = new Map<number, Map<string, Interval[]>>();
  const { results } = bench;
  for (let index = 0; index < results.length; index += 1) {
    const key = results.analytes[results.analyte[index] ?? -1]?.key ?? '';
    if (!keys.includes(key)) continue;
    const result = resultAt(results, index);
    if (result.kind !== 'quantified') continue;
    const { value } = result;
    const width =
      key === PH ? CONDITION_UNCERTAINTY.ph : solidsWidth(bench, uncertaintyOf(index), value);
    const sample = results.sample[index] ?? -1;
    const ofSample = bySample.get(sample) ?? new Map<string, Interval[]>();
    bySample.set(sample, ofSample);
    ofSample.set(key, [...(ofSample.get(key) ?? []), { low: value - width, high: value + width }]);
  }
  return bySample;
}

function solidsWidth({ settings }: Bench, uncertainty: Uncertainty, value: number): number {
  const multiplier = studentTQuantile((1 + settings.confidence) / 2, uncertainty.degreesOfFreedom);
  const width = multiplier * standardUncertainty(uncertainty, value);
  return Math.min(width, CONDITION_UNCERTAINTY.solidsAtMost * value);
}

/** From the lowest to the highest of all spans, as far as they are known; null where none is. */
export function spanOfAll(spans: readonly (Interval | null)[]): Interval | null {
  const known = spans.filter((span) => span !== null);
  if (known.length === 0) return null;
  return {
    low: Math.min(...known.map(({ low }) => low)),
    high: Math.max(...known.map(({ high }) => high)),
  };
}
