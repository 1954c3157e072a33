import { duplicateVerdict } from './duplicate-verdict.ts';
import type { SampleResults } from './sample-results.ts';

/** One analyte that two samples of one water disagree on. */
export interface Disagreement {
  /** Index of the result of the second sample. */
  readonly index: number;
  readonly other: number;
  readonly words: string;
}

export interface ComparedPair {
  readonly compared: number;
  readonly disagreements: readonly Disagreement[];
}

/** Most pH units between two bottles of one water; common practice, no source. */
const PH_APART = 0.3;

/** Most powers of ten between two counts of organisms; common practice, no source. */
const COUNTS_APART = 1;

/** Figures that differ between two bottles of one water, or that no ratio describes. */
const NOT_COMPARED = new Set(['C', 'degC', 'mV', '1']);

/**
 * Compares two samples that should be alike, analyte by analyte; within one lab file where
 * both stand in it.
 *
 * @param percent largest relative percent difference accepted
 */
export function comparePair(
  view: SampleResults,
  first: number,
  second: number,
  percent: number,
): ComparedPair {
  const disagreements: Disagreement[] = [];
  let compared = 0;
  for (const index of view.of(second)) {
    const { analyte, file } = view.table;
    const own = view.find(first, analyte[index] ?? -1, file[index] ?? null);
    const other = own === -1 ? view.find(first, analyte[index] ?? -1) : own;
    if (other === -1) continue;
    const words = disagreementOf(view, other, index, percent);
    if (words === null) continue;
    compared += 1;
    if (words !== '') disagreements.push({ index, other, words });
  }
  return { compared, disagreements };
}

/** How the two disagree; empty when they agree, null when they cannot be compared. */
function disagreementOf(
  view: SampleResults,
  other: number,
  index: number,
  percent: number,
): string | null {
  const analyte = view.analyte(index);
  if (NOT_COMPARED.has(analyte.unit)) return null;
  const [a, b] = [view.interval(other), view.interval(index)];
  if (a === null || b === null) return null;
  if (analyte.unit === 'pH') {
    const apart = Math.max(a.low - b.high, b.low - a.high);
    return apart > PH_APART ? `${apart.toFixed(2)} pH units apart` : '';
  }
  if (analyte.group === 'microbiological') {
    const [least, most] = a.high < b.low ? [a.high, b.low] : [b.high, a.low];
    return least > 0 && most > least * 10 ** COUNTS_APART ? 'more than ten times apart' : '';
  }
  const limits = [view.result(other).rl, view.result(index).rl].filter((rl) => rl !== null);
  const limit = limits.length === 0 ? null : Math.max(...limits);
  const verdict = duplicateVerdict(a, b, limit, percent);
  if (verdict.agrees) return '';
  const by = `${verdict.percent?.toFixed(0) ?? '?'} % apart`;
  return verdict.rule === 'percent'
    ? `${by}, more than ${percent} %`
    : `${by}, and further than one reporting limit`;
}
