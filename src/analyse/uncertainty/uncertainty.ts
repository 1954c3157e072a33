import type { UncertaintySource } from '../../model/index.ts';

/**
 * How far readings scatter about a true value c:
 * `u(c)² = additive² + counting c + (relative c)²`.
 *
 * The relative part rules well above the limits, the additive part near them, and the counting part
 * is the scatter of a count (Poisson), 0 for anything that is not counted.
 */
export interface Uncertainty {
  readonly relative: number;
  /** In the canonical unit. */
  readonly additive: number;
  /** Canonical units that one counted organism or particle stands for; 0 where nothing is counted. */
  readonly counting: number;
  readonly from: UncertaintySource;
  /** Of the scatter it was estimated from; Infinity where it was not estimated here. */
  readonly degreesOfFreedom: number;
}

/**
 * Standard uncertainty at a concentration.
 * @param value from 0 upward, canonical unit
 */
export function standardUncertainty(uncertainty: Uncertainty, value: number): number {
  const { relative, additive, counting } = uncertainty;
  return Math.sqrt(additive * additive + counting * value + (relative * value) ** 2);
}

/**
 * The uncertainty of the mean of several results, or of one result that stands for their span.
 *
 * Scatter known from duplicates, or assumed, is scatter within the lab: it shrinks with the number of
 * results that are averaged. What a lab states holds its calibration too, which the results share: it
 * does not shrink. A span keeps the largest.
 * @param parts one a result, with a figure of its size
 */
export function combineUncertainties(
  parts: readonly { readonly uncertainty: Uncertainty; readonly size: number }[],
  how: 'mean' | 'span',
): Uncertainty {
  const [first] = parts;
  if (first === undefined) throw new RangeError('no result to combine');
  if (parts.length === 1) return first.uncertainty;
  const all = parts.map(({ uncertainty }) => uncertainty);
  const isShared = all.some(({ from }) => from === 'stated');
  const total = parts.reduce((sum, { size }) => sum + size, 0);
  const largest = (pick: (one: Uncertainty) => number): number => Math.max(...all.map(pick));
  const n = how === 'mean' && !isShared ? parts.length : 1;
  // Weighted by size, so that relative × mean is the root of the summed squares over n.
  const squares = parts.reduce(
    (sum, { uncertainty, size }) => sum + (uncertainty.relative * size) ** 2,
    0,
  );
  const relative =
    n > 1 && total > 0 ? Math.sqrt(squares) / total : largest(({ relative: part }) => part);
  return {
    relative,
    additive: largest(({ additive }) => additive) / Math.sqrt(n),
    counting: largest(({ counting }) => counting) / n,
    from: weakest(all),
    degreesOfFreedom: Math.min(...all.map(({ degreesOfFreedom }) => degreesOfFreedom)),
  };
}

function weakest(all: readonly Uncertainty[]): UncertaintySource {
  const sources = new Set(all.map(({ from }) => from));
  if (sources.has('assumed')) return 'assumed';
  return sources.has('duplicates') ? 'duplicates' : 'stated';
}
