import type { Dimension } from '../reference/index.ts';
import type { DailyWindow, Money, Quantity, WallTime, Weekdays } from './quantity.ts';

/** What an amount of an analyte can be stated in; a cell converts to the unit of its analyte. */
export const AMOUNT_DIMENSIONS: readonly Dimension[] = [
  'mass-concentration',
  'amount-concentration',
  'charge-concentration',
  'hardness',
  'turbidity-white',
  'turbidity-infrared',
  'most-probable-number',
  'plate-count',
  'count',
  'cyst-count',
  'plaque-count',
  'gene-copies',
  'particle-count',
  'fibre-count',
  'activity-concentration',
];

/** What a cell of a column holds, and all the reader needs to check it. */
export type CellKind =
  | { readonly type: 'text' }
  | { readonly type: 'key' }
  | { readonly type: 'list' }
  | { readonly type: 'choice'; readonly words: readonly string[] }
  | {
      readonly type: 'quantity';
      readonly dimensions: readonly Dimension[];
      readonly min: Floor;
      /** One colon means minutes and seconds (`1:23`); in other time columns it is asked about. */
      readonly isStopwatch: boolean;
    }
  | {
      readonly type: 'number';
      readonly min: number | null;
      readonly max: number | null;
      readonly whole: boolean;
    }
  | { readonly type: 'money' }
  | { readonly type: 'time'; readonly needsClock: boolean }
  | { readonly type: 'window'; readonly mayWrap: boolean }
  | { readonly type: 'weekdays' };

/** `positive`: above zero; `not-negative`: zero allowed; `any`: no floor (temperatures). */
type Floor = 'positive' | 'not-negative' | 'any';

/**
 * One column of a bench file. The type parameter is the value a cell becomes; it exists for the
 * compiler only.
 */
export interface Column<T, Required extends boolean = boolean> {
  readonly kind: CellKind;
  readonly required: Required;
  /** One sentence for `new`, the schemas and the docs. */
  readonly about: string;
  /** A cell that reads without a finding. */
  readonly example: string;
  readonly valueType?: T;
}

type Columns = Readonly<Record<string, Column<unknown>>>;

/** The values of one row: required columns are never null. */
export type Cells<C extends Columns> = {
  readonly [K in keyof C]: C[K] extends Column<infer T, infer R>
    ? R extends true
      ? T
      : T | null
    : never;
};

function column<T>(kind: CellKind, about: string, example: string): Column<T, false> {
  return { kind, required: false, about, example };
}

/** The same column, required: a blank cell is an error. */
export function required<T>(spec: Column<T, false>): Column<T, true> {
  return { ...spec, required: true };
}

export const text = (about: string, example: string): Column<string, false> =>
  column({ type: 'text' }, about, example);

/** A name that other rows refer to; compared exactly after trimming. */
export const key = (about: string, example: string): Column<string, false> =>
  column({ type: 'key' }, about, example);

/** Several words, separated by `;` or `|`. */
export const list = (about: string, example: string): Column<readonly string[], false> =>
  column({ type: 'list' }, about, example);

export function choice<const W extends readonly string[]>(
  words: W,
  about: string,
): Column<W[number], false> {
  return column({ type: 'choice', words }, about, words[0] ?? '');
}

export const yesNo = (about: string): Column<'yes' | 'no', false> => choice(['yes', 'no'], about);

/** A quantity above zero. */
export const positive = (
  dimensions: readonly Dimension[],
  about: string,
  example: string,
): Column<Quantity, false> =>
  column({ type: 'quantity', dimensions, min: 'positive', isStopwatch: false }, about, example);

/** A quantity that may be zero. */
export const amount = (
  dimensions: readonly Dimension[],
  about: string,
  example: string,
): Column<Quantity, false> =>
  column({ type: 'quantity', dimensions, min: 'not-negative', isStopwatch: false }, about, example);

export const temperature = (about: string, example: string): Column<Quantity, false> =>
  column(
    { type: 'quantity', dimensions: ['temperature'], min: 'any', isStopwatch: false },
    about,
    example,
  );

/** A time taken with a stopwatch: above zero, and `1:23` means one minute 23 seconds. */
export const stopwatch = (about: string, example: string): Column<Quantity, false> =>
  column(
    { type: 'quantity', dimensions: ['time'], min: 'positive', isStopwatch: true },
    about,
    example,
  );

export const number = (
  bounds: { readonly min: number | null; readonly max: number | null; readonly whole: boolean },
  about: string,
  example: string,
): Column<number, false> => column({ type: 'number', ...bounds }, about, example);

export const money = (about: string, example: string): Column<Money, false> =>
  column({ type: 'money' }, about, example);

/** A date, or a date with a time of day. */
export const moment = (about: string, example: string): Column<WallTime, false> =>
  column({ type: 'time', needsClock: false }, about, example);

/** A date that must carry a time of day. */
export const clockTime = (about: string, example: string): Column<WallTime, false> =>
  column({ type: 'time', needsClock: true }, about, example);

export const dailyWindow = (
  mayWrap: boolean,
  about: string,
  example: string,
): Column<DailyWindow, false> => column({ type: 'window', mayWrap }, about, example);

export const weekdays = (about: string, example: string): Column<Weekdays, false> =>
  column({ type: 'weekdays' }, about, example);
