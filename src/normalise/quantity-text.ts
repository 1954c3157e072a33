import type { Quantity, QuantityPart } from '../model/index.ts';
import {
  type Dimension,
  type Measures,
  readUnit,
  toBase,
  type Unit,
  type UnitReading,
} from '../reference/index.ts';
import { type CellProblem, type CellReading, problem } from './cell-problem.ts';
import { clockSeconds } from './clock-text.ts';
import { readDecimal } from './decimal.ts';

export interface QuantityContext {
  readonly dimensions: readonly Dimension[];
  /** The unit in the header of the column, where one stands there. */
  readonly headerUnit: Unit | null;
  readonly measures: Measures | null;
  readonly isStopwatch: boolean;
}

const APPROXIMATE = /^(?:~|≈|ca\.?\s|approx\.?\s|about\s)\s*/i;
const TIMES = /^(\d+)\s*(?:x|×|\*)\s*(?=[\d.])/i;
const FRACTION = /^(?:(\d+)\s+)?(\d+)\/(\d+)(?=\s|$|[^\d.,/])/;
const NUMBER = /^[+-]?(?:\d[\d.,]*(?:[eE][+-]?\d+(?![A-Za-z]))?|\.\d+)/;
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
};

/**
 * A quantity the way people write it: `650 ml`, `1 L 250 mL`, `1 qt + 1 cup`, `2 x 500 ml`,
 * `1/2 gal`, `0:04.2`, `4,25 s`. A unit may stand in the header instead.
 *
 * @returns the quantity in the core unit of its dimension, or what is wrong with the cell
 */
export function readQuantity(cell: string, context: QuantityContext): CellReading<Quantity> {
  const text = cell.trim();
  const isApproximate = APPROXIMATE.test(text);
  const body = spelled(text.replace(APPROXIMATE, ''));
  const clock = context.dimensions.includes('time')
    ? clockSeconds(body, context.isStopwatch)
    : null;
  if (clock !== null && 'problem' in clock) return clock;
  const parts = clock === null ? readParts(body, text, context) : clockPart(clock.value);
  if ('problem' in parts) return parts;
  return joined(parts.value, text, isApproximate, context);
}

function spelled(text: string): string {
  return text.replace(/(\d?)\s*([½⅓⅔¼¾⅛])/g, (_all, whole: string, sign: string) =>
    `${whole} ${VULGAR[sign] ?? ''}`.trim(),
  );
}

function clockPart(seconds: number): CellReading<QuantityPart[]> {
  const unit = readUnit('s', { dimension: 'time' });
  if (unit.kind !== 'unit') throw new RangeError('the table of units lacks the second');
  return { value: [{ times: 1, number: seconds, unit: unit.unit, unitFrom: 'cell' }] };
}

function readParts(
  body: string,
  text: string,
  context: QuantityContext,
): CellReading<QuantityPart[]> {
  const parts: QuantityPart[] = [];
  let rest = body;
  while (rest !== '') {
    const part = readPart(rest, text, context);
    if ('problem' in part) return part;
    parts.push(part.value.part);
    rest = part.value.rest;
  }
  return parts.length === 0 ? unreadable(text) : { value: parts };
}

function readPart(
  rest: string,
  text: string,
  context: QuantityContext,
): CellReading<{ part: QuantityPart; rest: string }> {
  const repeat = TIMES.exec(rest);
  const afterTimes = repeat === null ? rest : rest.slice(repeat[0].length).trimStart();
  const number = readNumber(afterTimes, text);
  if ('problem' in number) return number;
  const { unitText, next } = splitUnit(afterTimes.slice(number.value.length).trimStart());
  const unit = partUnit(unitText, text, context);
  if ('problem' in unit) return unit;
  const part: QuantityPart = {
    times: repeat === null ? 1 : Number(repeat[1]),
    number: number.value.number,
    unit: unit.value,
    unitFrom: unitText === '' ? 'header' : 'cell',
  };
  return { value: { part, rest: next } };
}

function readNumber(
  text: string,
  cell: string,
): CellReading<{ readonly number: number; readonly length: number }> {
  const fraction = FRACTION.exec(text);
  if (fraction !== null) {
    if (Number(fraction[3]) === 0) return unreadable(cell);
    const number = Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
    return { value: { number, length: fraction[0].length } };
  }
  const match = NUMBER.exec(text)?.[0] ?? '';
  const reading = readDecimal(match);
  if (reading.kind === 'unclear') {
    return problem(
      'decimal-unclear',
      `"${cell}" could mean ${match.replace(',', '.')} or ${match.replace(',', '')}`,
      'write the number with a decimal point and without grouping',
    );
  }
  if (reading.kind === 'none') return unreadable(cell);
  return { value: { number: reading.value, length: match.length } };
}

/** The unit reaches to the next number that follows a blank or a plus. */
function splitUnit(text: string): { readonly unitText: string; readonly next: string } {
  const match = /^([^\d\s+](?:[^+]*?[^\s+])??)(?=\s+[\d.]|\s*\+|\s*$)\s*\+?\s*/.exec(text);
  if (match !== null) return { unitText: match[1] ?? '', next: text.slice(match[0].length) };
  const plus = /^\+\s*/.exec(text);
  return { unitText: '', next: plus === null ? text : text.slice(plus[0].length) };
}

function partUnit(unitText: string, cell: string, context: QuantityContext): CellReading<Unit> {
  if (unitText === '') {
    if (context.headerUnit !== null) return { value: context.headerUnit };
    return problem(
      'unit-missing',
      `"${cell}" has no unit`,
      'write the unit behind the number, or name it in the header, such as volume (ml)',
    );
  }
  const reading = readUnitFor(unitText, context);
  if (reading.kind === 'problem') return unitProblem(reading);
  const header = context.headerUnit;
  if (header !== null && header.name !== reading.unit.name) {
    return problem(
      'unit-clash',
      `"${cell}" is in ${reading.unit.name} and the header says ${header.name}`,
      'keep one of the two units',
    );
  }
  return { value: reading.unit };
}

/** Tries the dimensions the column takes, so that `F` is a temperature in a temperature column. */
function readUnitFor(spelling: string, context: QuantityContext): UnitReading {
  const measures = {
    ...(context.measures === null ? {} : { measures: context.measures }),
    // Only the columns of a TDS meter take its scale; there ppm and mg/L are the same figure.
    ...(context.dimensions.includes('meter-tds') ? { ppmIsMgPerL: true } : {}),
  };
  let first: UnitReading | null = null;
  for (const dimension of context.dimensions) {
    const reading = readUnit(spelling, { dimension, ...measures });
    if (reading.kind === 'unit') return reading;
    first ??= reading;
  }
  return first ?? readUnit(spelling, measures);
}

const UNIT_CODES = {
  unknown: 'unit-unknown',
  ambiguous: 'unit-ambiguous',
  refused: 'unit-refused',
  'measures-missing': 'measures-missing',
} as const;

/** A unit the table cannot read, as a problem of the cell. */
export function unitProblem(reading: Extract<UnitReading, { kind: 'problem' }>): CellProblem {
  return problem(UNIT_CODES[reading.problem], reading.message, reading.remedy);
}

function joined(
  parts: readonly QuantityPart[],
  text: string,
  isApproximate: boolean,
  context: QuantityContext,
): CellReading<Quantity> {
  const dimension = parts[0]?.unit.dimension;
  if (dimension === undefined) return unreadable(text);
  const other = parts.find((part) => part.unit.dimension !== dimension);
  if (other !== undefined) {
    return problem(
      'dimension-wrong',
      `"${text}" adds ${dimension} and ${other.unit.dimension}`,
      'write one kind of quantity in a cell',
    );
  }
  if (!context.dimensions.includes(dimension)) {
    return problem(
      'dimension-wrong',
      `"${text}" is a ${dimension}; this column takes a ${context.dimensions.join(' or a ')}`,
      'check the unit, or move the figure to its column',
    );
  }
  if (parts.length > 1 && parts.some((part) => part.unit.offset.num !== 0 || part.number < 0)) {
    return unreadable(text);
  }
  let value = 0;
  for (const part of parts) value += partValue(part);
  return { value: { value, dimension, text, parts, isApproximate } };
}

/** One part in the core unit of its dimension. */
export function partValue(part: QuantityPart): number {
  return toBase(part.times * part.number, part.unit);
}

function unreadable(text: string): CellProblem {
  return problem(
    'quantity-unreadable',
    `"${text}" is not a quantity`,
    'write a number and a unit, such as 650 ml; leave the cell blank when nothing was measured',
  );
}
