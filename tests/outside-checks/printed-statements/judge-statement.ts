import type { ReductionStatement, UncertainSide } from '../../../src/analyse/index.ts';
import { reductionText } from '../../../src/report/views/index.ts';

/** The truth behind a statement. */
export interface Truth {
  readonly feed: number;
  readonly product: number;
}

/** True where the figures of a statement, before any rounding, exclude the truth. */
export function figuresAreFalse(statement: ReductionStatement, truth: Truth): boolean {
  if (statement.outcome === 'rise') return !(truth.product > truth.feed);
  const reduction = 1 - truth.product / truth.feed;
  switch (statement.outcome) {
    case 'measured':
      return isOutside(reduction, statement.intervalLow, statement.intervalHigh);
    case 'at-least':
      return isOutside(reduction, statement.low, null);
    case 'between':
      return isOutside(reduction, statement.low, statement.high);
    default:
      return false;
  }
}

/** The text of a statement as the tables print it. */
export function printedText(
  statement: ReductionStatement,
  feed: UncertainSide,
  product: UncertainSide,
): string {
  const side = ({ interval, estimate }: UncertainSide) => ({
    low: interval.low,
    high: interval.high,
    estimate,
    n: 1,
    method: null,
    sample: null,
  });
  return reductionText({
    outcome: statement.outcome,
    firm: true,
    unit: 'mg/L',
    feed: side(feed),
    product: side(product),
    reduction: {
      low: statement.low,
      high: statement.high,
      estimate: statement.estimate,
      interval_low: statement.estimate === null ? statement.low : statement.intervalLow,
      interval_high: statement.estimate === null ? statement.high : statement.intervalHigh,
      confidence: statement.confidence,
      low_at_detection_limit: null,
      bound_limit: null,
    },
  });
}

/** The ends that a printed reduction names, as fractions; null where it names none. */
export function printedEnds(text: string): { low: number | null; high: number | null } {
  const number = '(-?[\\d.]+)';
  const percent = (part: string | undefined) => (part === undefined ? null : Number(part) / 100);
  const range = new RegExp(`\\(${number} to ${number}\\)$|^${number} % to ${number} %$`).exec(text);
  if (range !== null)
    return { low: percent(range[1] ?? range[3]), high: percent(range[2] ?? range[4]) };
  const low = new RegExp(`\\(at least ${number}\\)$|^≥ ${number} %$`).exec(text);
  return { low: low === null ? null : percent(low[1] ?? low[2]), high: null };
}

/** True where the printed text excludes the truth. */
export function printedIsFalse(
  statement: ReductionStatement,
  feed: UncertainSide,
  product: UncertainSide,
  truth: Truth,
): boolean {
  // Printed ends round outward, so only false figures can print as a false statement.
  if (!figuresAreFalse(statement, truth)) return false;
  if (statement.outcome === 'rise') return true;
  const { low, high } = printedEnds(printedText(statement, feed, product));
  if (low === null) throw new RangeError(`a ${statement.outcome} printed without an end`);
  return isOutside(1 - truth.product / truth.feed, low, high);
}

/** Beyond an end by more than the rounding of a double. */
function isOutside(value: number, low: number | null, high: number | null): boolean {
  const slack = 1e-12;
  return (low !== null && value < low - slack) || (high !== null && value > high + slack);
}
