import type { ReductionSummary } from '../../compare/index.ts';
import type { LevelVerdict, ReductionRow } from '../../model/index.ts';
import { atMostDigits, plainNumber } from '../format-number.ts';
import { percentEstimate, percentRange } from '../format-percent.ts';

/** A concentration side in words: `12.4`, `< 0.5`, `0.1 to 0.5`, `> 2420`. */
export function sideText(side: Pick<ReductionRow['feed'], 'low' | 'high' | 'estimate'>): string {
  if (side.low === null) return 'not tested';
  if (side.estimate !== null) return concentration(side.estimate);
  if (side.high === null) return `> ${concentration(side.low)}`;
  if (side.low === 0) return `< ${concentration(side.high)}`;
  return `${concentration(side.low)} to ${concentration(side.high)}`;
}

/** Four significant digits at most: a lab result carries two or three. */
function concentration(value: number): string {
  return atMostDigits(value, 4);
}

/** The parts of a row that its printed reduction rests on. */
type PrintedParts = Pick<
  ReductionRow,
  'outcome' | 'firm' | 'unit' | 'feed' | 'product' | 'reduction'
>;

/**
 * The reduction as it is printed: an estimate with its interval, a bound as a bound. Bounds and ends
 * round outward, and nothing is complete removal.
 */
export function reductionText(row: PrintedParts): string {
  const { estimate, interval_low, interval_high } = row.reduction;
  return outcomeText({
    outcome: row.outcome,
    firm: row.firm,
    low: interval_low,
    estimate,
    high: interval_high,
    unit: row.unit,
    rise: riseOf(row),
  });
}

function riseOf(row: PrintedParts): ReductionSummary['rise'] {
  const { feed, product } = row;
  if (row.outcome !== 'rise' || product.low === null || feed.high === null) return null;
  return {
    atLeast: product.low - feed.high,
    isExact: feed.estimate !== null && product.estimate !== null,
  };
}

/** Explains the words `not rejection` beside a reduction. */
export const STAGE_LEGEND =
  'Not rejection: the reduction is not a measure of rejection; dissolved solids and conductivity hold what the mineral stage adds behind the membrane; `minerals` gives the rejection of ions it does not add.';

/** The mineral stage of the device adds to what was measured. */
export function isNoRejection(row: Pick<ReductionRow, 'findings'>): boolean {
  return row.findings.includes('solids-not-rejection');
}

/** The headline of a device and analyte over its events. */
export function summaryText(summary: ReductionSummary | null): string {
  if (summary === null) return 'not tested';
  return outcomeText({ ...summary, unit: summary.analyte.unit });
}

function outcomeText(parts: {
  readonly outcome: ReductionRow['outcome'];
  readonly firm: boolean;
  readonly low: number | null;
  readonly estimate: number | null;
  readonly high: number | null;
  readonly unit: string;
  readonly rise: ReductionSummary['rise'];
}): string {
  switch (parts.outcome) {
    case 'untested':
      return 'not tested';
    case 'rise':
      return riseText(parts);
    case 'untestable':
      return 'feed too low to show';
    case 'not-shown':
      return 'no reduction shown';
    case 'at-least':
      return percentRange(parts.low, null);
    case 'between':
      return percentRange(parts.low, parts.high);
    case 'measured':
      return parts.estimate === null
        ? 'not tested'
        : percentEstimate(parts.estimate, parts.low, parts.high);
    default:
      return parts.outcome satisfies never;
  }
}

/** `+0.8 mg/L`, with `at least` where a bound says so and `apparent` on assumed uncertainty. */
function riseText(parts: {
  readonly firm: boolean;
  readonly unit: string;
  readonly rise: ReductionSummary['rise'];
}): string {
  const { firm, unit, rise } = parts;
  const strength = firm ? '' : ' (apparent)';
  if (rise === null) return `rise${strength}`;
  const amount = `+${atMostDigits(rise.atLeast, 2)} ${unit}`;
  return `${rise.isExact ? amount : `at least ${amount}`}${strength}`;
}

/**
 * The product against the chosen reference levels, in one cell: those it is above and those the
 * result does not decide are named, those it is within are counted.
 */
export function levelsText(row: Pick<ReductionRow, 'reference_levels'>): string {
  const named = (verdict: LevelVerdict['verdict']): string[] =>
    row.reference_levels.filter((level) => level.verdict === verdict).map(levelText);
  const above = named('above');
  const open = named('cannot-say');
  const within = named('within').length;
  return [
    ...(above.length === 0 ? [] : [`above ${above.join(', ')}`]),
    ...(open.length === 0 ? [] : [`cannot say for ${open.join(', ')}`]),
    ...(within === 0 ? [] : [`within ${within}`]),
  ].join('; ');
}

/** `US-EPA MCL 0.01 mg/L`. */
export function levelText(level: LevelVerdict): string {
  const low = level.low === null ? '' : `${plainNumber(level.low)} to `;
  const value = level.value === null ? '' : plainNumber(level.value);
  const basis = level.basis === null ? '' : ` ${level.basis}`;
  return `${level.jurisdiction} ${level.kind} ${low}${value} ${level.unit}${basis}`;
}
