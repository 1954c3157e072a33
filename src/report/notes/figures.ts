import type { LevelVerdict, ReductionRow } from '../../model/index.ts';
import { plainNumber, significant } from '../format-number.ts';
import { lowerBoundText, percentEstimate, percentRange } from '../format-percent.ts';
import { volumeText } from '../format-quantity.ts';
import { sideText } from '../views/index.ts';
import { figure, markup, NOTHING, type Piece, quoted, say } from './piece.ts';

/** Figures of the notes as pieces: value in full, printed as everywhere else. */

/** A concentration side without its unit: `12.4`, `< 0.5`, `0.1 to 0.5`. */
export function sideFigure(key: string, side: ReductionRow['feed'], unit: string): Piece {
  const values = side.estimate === null ? [side.low, side.high] : [side.estimate];
  return figure(key, values, unit, sideText(side));
}

/** The same with its unit. */
export function sidePiece(key: string, side: ReductionRow['feed'], unit: string): Piece {
  return side.low === null
    ? sideFigure(key, side, unit)
    : say`${sideFigure(key, side, unit)} ${unit}`;
}

export function amount(key: string, value: number, unit: string, digits = 4): Piece {
  return say`${number(key, value, unit, digits)} ${unit}`;
}

export function number(key: string, value: number, unit: string, digits = 4): Piece {
  return figure(key, value, unit, shortNumber(value, digits));
}

function shortNumber(value: number, digits: number): string {
  const text = significant(value, digits);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** Litres to drain per litre of clean water, without unit. */
export function ratio(key: string, value: number | null): Piece {
  return value === null ? markup('not tested') : figure(key, value, 'L/L', significant(value, 3));
}

/** Litres, three digits: a yearly drain or a part of it. */
export function litres(key: string, value: number | null): Piece {
  return value === null ? markup('not tested') : figure(key, value, 'L', significant(value, 3));
}

export function pour(key: string, millilitres: number): Piece {
  return figure(key, millilitres, 'mL', volumeText(millilitres / 1000));
}

const percent = (fraction: number | null): number | null =>
  fraction === null ? null : fraction * 100;

/** A lower bound, rounded down: `98.4 %`. */
export function lowerBound(key: string, fraction: number): Piece {
  return figure(key, fraction * 100, '%', lowerBoundText(fraction));
}

export function range(key: string, low: number | null, high: number | null): Piece {
  return figure(key, [percent(low), percent(high)], '%', percentRange(low, high));
}

export function estimate(key: string, value: number): Piece {
  return figure(key, value * 100, '%', percentEstimate(value));
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
