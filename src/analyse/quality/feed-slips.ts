import type { Finding } from '../../findings/index.ts';
import type { SampleRow } from '../../model/index.ts';
import { median } from './median.ts';
import { isUsable, type SampleResults } from './sample-results.ts';
import { unitSlip } from './slip-findings.ts';

/** With fewer feeds nobody can say which one is odd. */
const FEEDS = 3;

/**
 * A slip touches one analyte, or two; another water differs in most. So half of them or more have to
 * lie within this factor of the middle.
 */
const LIKE = 5;
const LIKE_SHARE = 0.5;

/** Units that a laboratory prints in thousandths of one another. */
const SCALED_UNITS = new Set(['mg/L', 'ug/L', 'ng/L', 'uS/cm']);

/**
 * Each feed against the middle of all feeds of its kind, where three or more hold the analyte.
 * @param odd gathers the results told, so that products are not measured by them
 */
export function feedSlips(view: SampleResults, odd: Set<number>): Finding[] {
  const kinds = ['natural', 'spiked'] as const;
  return kinds.flatMap((kind) => {
    const samples = view.samples.flatMap((row, index) => (isFeed(row, kind) ? index : []));
    if (samples.length < FEEDS) return [];
    const middles = middlesOf(view, samples);
    return samples.flatMap((sample) => {
      const ratios = ratiosOf(view, sample, middles);
      if (!isLikeOthers(ratios)) return [];
      return ratios.flatMap(({ index, middle }) => {
        const found = unitSlip(view, index, middle, 'the middle of all feeds');
        if (found.length > 0) odd.add(index);
        return found;
      });
    });
  });
}

function isFeed(row: SampleRow, kind: 'natural' | 'spiked'): boolean {
  const { position, of } = row.values;
  const own = row.values.kind ?? 'natural';
  return position === 'feed' && of === null && own === kind && isUsable(row);
}

/** The middle of each analyte that three or more feeds hold, by index of the analyte. */
function middlesOf(view: SampleResults, samples: readonly number[]): Map<number, number> {
  const values = new Map<number, number[]>();
  for (const sample of samples) {
    for (const index of view.of(sample)) {
      const value = view.value(index);
      if (value === null || value <= 0 || !SCALED_UNITS.has(view.analyte(index).unit)) continue;
      const analyte = view.table.analyte[index] ?? -1;
      const known = values.get(analyte);
      if (known === undefined) values.set(analyte, [value]);
      else known.push(value);
    }
  }
  return new Map(
    [...values].flatMap(([analyte, of]) =>
      of.length < FEEDS ? [] : [[analyte, median(of) ?? 0] as const],
    ),
  );
}

interface Ratio {
  readonly index: number;
  readonly middle: number;
  readonly times: number;
}

function ratiosOf(
  view: SampleResults,
  sample: number,
  middles: ReadonlyMap<number, number>,
): Ratio[] {
  return [...view.of(sample)].flatMap((index) => {
    const value = view.value(index);
    const middle = middles.get(view.table.analyte[index] ?? -1);
    if (value === null || value <= 0 || middle === undefined) return [];
    return { index, middle, times: value / middle };
  });
}

function isLikeOthers(ratios: readonly Ratio[]): boolean {
  const like = ratios.filter(({ times }) => times < LIKE && times * LIKE > 1);
  return like.length >= LIKE_SHARE * ratios.length;
}
