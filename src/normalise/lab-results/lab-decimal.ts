import type { DecimalReading } from '../decimal.ts';

/** Which marks the numbers of a lab file use; null where nothing has proven it. */
export interface NumberMarks {
  readonly decimal: '.' | ',' | null;
  /** Null: whatever the decimal mark leaves over. */
  readonly thousands: 'none' | ',' | '.' | ' ' | "'" | null;
}

export const UNPROVEN_MARKS: NumberMarks = { decimal: null, thousands: null };

/** A number as labs print it, for use in longer patterns. */
export const LAB_NUMBER =
  "(?:\\d{1,3}(?:[' ]\\d{3})+(?![\\d])(?:[.,]\\d+)?|\\d[\\d.,]*|[.,]\\d+)(?:[eE][+-]?\\d+)?";

const FORM =
  /^([+-]?)((?:\d{1,3}(?:[' ]\d{3})+|\d[\d.,]*?|(?=[.,]\d)))(?:([.,])(\d*))?([eE][+-]?\d+)?$/;

/**
 * A number of a lab export.
 *
 * Marks are decided per file, never per cell: `1,234` and `313.174` have two readings and are
 * `unclear` until the file or its sidecar proves one; `0,5`, `12.34` and `1,234.5` have one only.
 * A cell that contradicts the proven mark is unclear as well.
 */
export function readLabDecimal(text: string, marks: NumberMarks): DecimalReading {
  const parts = partsOf(text);
  if (parts === null) return { kind: 'none' };
  const { sign, whole, exponent } = parts;
  const grouped = groupingOf(whole);
  if (grouped === 'none') return { kind: 'none' };
  if (grouped !== null && !mayGroup(grouped, marks, parts.mark)) return { kind: 'unclear' };
  const digits = whole.replace(/[.,' ]/g, '');
  if (parts.mark === null) return numberOf(`${sign}${digits}${exponent}`);
  if (grouped === parts.mark) return { kind: 'none' };
  const isGroupLike =
    grouped === null && exponent === '' && /^[1-9]\d{0,2}$/.test(whole) && parts.tail.length === 3;
  if (isGroupLike && parts.mark !== marks.decimal) {
    if (marks.decimal === null) return { kind: 'unclear' };
    return mayGroup(parts.mark, marks, null)
      ? numberOf(`${sign}${digits}${parts.tail}`)
      : { kind: 'unclear' };
  }
  if (marks.decimal !== null && marks.decimal !== parts.mark) return { kind: 'unclear' };
  return numberOf(`${sign}${digits === '' ? '0' : digits}.${parts.tail}${exponent}`);
}

/** The decimal mark a single cell proves by itself; null where it proves none. */
export function decimalEvidence(text: string): '.' | ',' | null {
  const parts = partsOf(text);
  if (parts === null) return null;
  const grouped = groupingOf(parts.whole);
  if (grouped === 'none') return null;
  if (parts.mark === null) return grouped === ',' ? '.' : grouped === '.' ? ',' : null;
  if (grouped === parts.mark || parts.tail === '') return null;
  const isGroupLike =
    grouped === null &&
    parts.exponent === '' &&
    /^[1-9]\d{0,2}$/.test(parts.whole) &&
    parts.tail.length === 3;
  return isGroupLike ? null : parts.mark;
}

interface Parts {
  readonly sign: string;
  readonly whole: string;
  readonly mark: '.' | ',' | null;
  readonly tail: string;
  readonly exponent: string;
}

function partsOf(text: string): Parts | null {
  const tidy = text.replace(/[\u2212\u2010-\u2013]/g, '-').replace(/[\u2019\u00b4]/g, "'");
  const match = FORM.exec(tidy);
  if (match === null) return null;
  const [, sign = '', whole = '', mark, tail = '', exponent = ''] = match;
  if (mark === undefined || !isGroups(whole, mark, tail)) {
    return {
      sign: sign === '-' ? '-' : '',
      whole,
      mark: mark === '.' || mark === ',' ? mark : null,
      tail,
      exponent,
    };
  }
  // The last mark is one more of the same grouping marks: 1,234,567.
  return {
    sign: sign === '-' ? '-' : '',
    whole: `${whole}${mark}${tail}`,
    mark: null,
    tail: '',
    exponent,
  };
}

function isGroups(whole: string, mark: string, tail: string): boolean {
  return whole.includes(mark) && tail.length === 3;
}

/** The grouping mark of a whole number; null without one, `none` where the groups are broken. */
function groupingOf(whole: string): '.' | ',' | ' ' | "'" | 'none' | null {
  const marks = new Set(whole.match(/[.,' ]/g) ?? []);
  if (marks.size === 0) return null;
  const [mark] = marks;
  if (marks.size > 1 || mark === undefined) return 'none';
  const groups = whole.split(mark);
  const isGrouped =
    /^\d{1,3}$/.test(groups[0] ?? '') && groups.slice(1).every((group) => /^\d{3}$/.test(group));
  return isGrouped ? (mark as '.' | ',' | ' ' | "'") : 'none';
}

function mayGroup(
  mark: '.' | ',' | ' ' | "'",
  marks: NumberMarks,
  decimalBeside: '.' | ',' | null,
): boolean {
  if (marks.thousands !== null) return marks.thousands === mark;
  if (mark === "'") return true;
  if (mark === ' ') return decimalBeside !== null || marks.decimal === ',';
  return marks.decimal !== mark;
}

function numberOf(text: string): DecimalReading {
  const value = Number(text);
  return Number.isFinite(value) ? { kind: 'number', value } : { kind: 'none' };
}
