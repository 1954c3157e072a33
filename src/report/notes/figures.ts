import {
  intervalOf,
  type LabResult,
  type LevelVerdict,
  type NondetectBound,
  type ReductionRow,
  type Spread,
} from '../../model/index.ts';
import { atMostDigits, plainNumber, significant } from '../format-number.ts';
import { lowerBoundText, percentEstimate, percentRange } from '../format-percent.ts';
import { volumeText } from '../format-quantity.ts';
import { sideText } from '../views/index.ts';
import { rangeText } from '../views/water-use-view.ts';
import { figure, markup, NOTHING, type Piece, quoted, say } from './piece.ts';

/** Figures of the notes as pieces: value in full, printed as everywhere else. */

/** What is known of one concentration. */
export type SideFigures = Pick<ReductionRow['feed'], 'low' | 'high' | 'estimate'>;

/** The figures of one lab result; null for a missing one. */
export function resultSide(result: LabResult, bound: NondetectBound): SideFigures | null {
  const interval = intervalOf(result, bound);
  if (interval === null) return null;
  return {
    low: interval.low,
    high: Number.isFinite(interval.high) ? interval.high : null,
    estimate: result.kind === 'quantified' ? interval.low : null,
  };
}

/** A concentration side without its unit: `12.4`, `< 0.5`, `0.1 to 0.5`. */
export function sideFigure(key: string, side: SideFigures, unit: string): Piece {
  const bounds = side.low === 0 && side.high !== null ? [side.high] : [side.low, side.high];
  const values = side.estimate === null ? bounds : [side.estimate];
  // The words rest on these three figures alone.
  return figure(key, values, unit, sideText(side as ReductionRow['feed']));
}

/** The same with its unit. */
export function sidePiece(key: string, side: SideFigures, unit: string): Piece {
  return side.low === null
    ? sideFigure(key, side, unit)
    : say`${sideFigure(key, side, unit)} ${unit}`;
}

export function amount(key: string, value: number, unit: string, digits = 4): Piece {
  return say`${number(key, value, unit, digits)} ${unit}`;
}

export function number(key: string, value: number, unit: string, digits = 4): Piece {
  return figure(key, value, unit, atMostDigits(value, digits));
}

/** Litres to drain per litre of clean water, without unit. */
export function ratio(key: string, value: number | null): Piece {
  return value === null ? markup('not tested') : figure(key, value, 'L/L', significant(value, 3));
}

/** Litres, three digits: a yearly drain or a part of it. */
export function litres(key: string, value: number | null): Piece {
  return value === null ? markup('not tested') : figure(key, value, 'L', significant(value, 3));
}

/**
 * A figure with its range behind it, the ends rounded outward: `2.10 (1.95 to 2.31)`. Without an
 * estimate the range alone; `not tested` without any figure.
 */
export function spreadFigure(
  key: string,
  { low, estimate, high }: Spread,
  unit: string,
  { digits = 3, unknown = 'not tested' } = {},
): Piece {
  const range = rangeText(low, high, digits);
  if (estimate === null)
    return range === '' ? markup(unknown) : figure(key, [low, high], unit, range);
  const text = significant(estimate, digits);
  const [from, to] = range.split(' to ');
  return range === '' || (from === text && to === text)
    ? figure(key, estimate, unit, text)
    : figure(key, [estimate, low, high], unit, `${text} (${range})`);
}

export function pour(key: string, millilitres: number): Piece {
  return figure(key, millilitres, 'mL', volumeText(millilitres / 1000));
}

const percent = (fraction: number | null): number | null =>
  fraction === null ? null : fraction * 100;

/** An upper bound of complete removal bounds nothing and is never printed. */
const percentBelowAll = (fraction: number | null): number | null =>
  fraction !== null && fraction < 1 ? percent(fraction) : null;

/** A lower bound, rounded down: `98.4 %`. */
export function lowerBound(key: string, fraction: number): Piece {
  return figure(key, fraction * 100, '%', lowerBoundText(fraction));
}

export function range(key: string, low: number | null, high: number | null): Piece {
  return figure(key, [percent(low), percentBelowAll(high)], '%', percentRange(low, high));
}

/** A measured reduction, with its interval where there is one. */
export function estimate(key: string, measured: MeasuredReduction): Piece {
  const value = measured.estimate ?? 0;
  const text = percentEstimate(value, measured.low, measured.high);
  const ends = measured.low === measured.high ? [] : [measured.low, measured.high];
  return figure(key, [value * 100, ...ends.map(percentBelowAll)], '%', text);
}

/** The reduction of one pair, in the words of its outcome; a rise has a paragraph of its own. */
export function reductionFigure(
  key: string,
  {
    outcome,
    reduction,
  }: Pick<ReductionRow, 'outcome'> & {
    readonly reduction: Pick<
      ReductionRow['reduction'],
      'estimate' | 'interval_low' | 'interval_high'
    >;
  },
): Piece {
  const { estimate: value, interval_low: low, interval_high: high } = reduction;
  switch (outcome) {
    case 'measured':
      return estimate(key, { low, estimate: value, high });
    case 'at-least':
      return range(key, low, null);
    case 'between':
      return range(key, low, high);
    case 'not-shown':
      return markup('no reduction shown');
    case 'rise':
      return markup('a rise');
    case 'untestable':
      return markup('feed too low to show');
    case 'untested':
      return markup('not tested');
    default:
      return outcome satisfies never;
  }
}

export interface MeasuredReduction {
  readonly low: number | null;
  readonly estimate: number | null;
  readonly high: number | null;
}

/** `US-EPA action level of 0.015 mg/L`; figures in the unit of the source. */
export function levelPiece(level: LevelVerdict): Piece {
  const basis = level.basis === null ? NOTHING : say` ${level.basis}`;
  const values = [level.low, level.value];
  const text = values
    .filter((value) => value !== null)
    .map(plainNumber)
    .join(' to ');
  const value = figure(`level.${level.jurisdiction}.${level.kind}`, values, level.unit, text);
  return say`${level.jurisdiction} ${level.kind} of ${value} ${quoted(level.unit)}${basis}`;
}
