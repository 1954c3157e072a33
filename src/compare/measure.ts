import type { MeasureRow, Spread } from '../model/index.ts';
import type { ReductionSummary } from './reduction-summary.ts';

/** A comparable figure before it is worded. */
export interface Measure {
  readonly row: Omit<MeasureRow, 'shown'>;
  /** Set for reductions, whose wording follows the outcome. */
  readonly reduction: ReductionSummary | null;
}

/** A measure that is no reduction. */
export function plainMeasure(row: Measure['row']): Measure {
  return { row, reduction: null };
}

/** The figure of a measure: an estimate with its range, a bound alone, or nothing. */
export function rangedFigure(
  spread: Spread,
): Pick<MeasureRow, 'outcome' | 'low' | 'estimate' | 'high'> {
  const { low, estimate, high } = spread;
  const isBound = low !== null || high !== null;
  return {
    outcome: estimate !== null ? 'measured' : isBound ? 'bounded' : 'untested',
    low,
    estimate,
    high,
  };
}
