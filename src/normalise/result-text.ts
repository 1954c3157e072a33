import type { MissingReason } from '../model/index.ts';
import {
  LAB_NUMBER,
  type NumberMarks,
  readLabDecimal,
  UNPROVEN_MARKS,
} from './lab-results/lab-decimal.ts';
import { LIMIT_WORDS, type LimitKind, RESULT_WORDS } from './lab-results/result-words.ts';

/** What the cell of a lab result says, before limits and units are looked at. */
export type ResultText =
  | {
      readonly kind: 'number';
      readonly value: number;
      /** The printed figure behind ±; what it covers is the lab's to say. */
      readonly plusMinus: number | null;
      /** Marked as approximate: `~5`, `ca. 5`. */
      readonly isApproximate: boolean;
      readonly tail: string;
    }
  | {
      readonly kind: 'below';
      readonly limit: number | null;
      /** Which limit the word speaks of; null where it does not say. */
      readonly of: LimitKind | null;
      readonly tail: string;
    }
  | {
      readonly kind: 'above';
      readonly limit: number | null;
      readonly isUncountable: boolean;
      readonly tail: string;
    }
  | { readonly kind: 'trace'; readonly value: number | null; readonly tail: string }
  | {
      readonly kind: 'range';
      readonly low: number;
      readonly high: number;
      readonly tail: string;
    }
  | { readonly kind: 'absent' }
  | { readonly kind: 'present' }
  | { readonly kind: 'missing'; readonly reason: MissingReason }
  | { readonly kind: 'unclear-decimal' }
  | { readonly kind: 'asked'; readonly why: string }
  | { readonly kind: 'unreadable' };

const N = LAB_NUMBER;
const SIGNED = `[+-]?${N}`;
const LIMIT = [...LIMIT_WORDS.keys()].join('|');
const PLUS_MINUS = '(?:±|\\+/-|\\+-)';

const PLAIN = new RegExp(
  `^(${SIGNED})\\s*(?:${PLUS_MINUS}\\s*(${N})\\s*(%)?|\\((${N})\\)$)?\\s*(.*)$`,
);
const BELOW = new RegExp(
  `^(?:<=?|=<|<\\s*or\\s*=|˂|less than|LT(?=\\s*[\\d.,])|L(?=[\\d.,]))\\s*(${N})\\s*(.*)$`,
  'i',
);
const ABOVE = new RegExp(`^(?:>=?|˃|more than|GT(?=\\s*[\\d.,]))\\s*(${N})\\s*(.*)$`, 'i');
const NOT_DETECTED_AT = new RegExp(
  `^(?:nd|n\\.d\\.|not detected)\\s*(?:[(@/]|at|<)\\s*<?\\s*(${N})\\s*\\)?$`,
  'i',
);
const NOT_DETECTED_BEHIND = new RegExp(`^(${N})\\s*nd$`, 'i');
const LIMIT_FIRST = new RegExp(`^(${LIMIT})\\s*[=:]?\\s*(${N})$`, 'i');
const LIMIT_BEHIND = new RegExp(`^(${N})\\s*\\(?(${LIMIT})\\)?$`, 'i');
const UNCOUNTABLE = new RegExp(`^tntc\\s*\\(?\\s*>\\s*(${N})\\s*\\)?$`, 'i');
const TRACE_AT = new RegExp(`^(?:dnq|trace|tr)\\s*(${N})$`, 'i');
const APPROXIMATE = new RegExp(
  `^(?:~|≈|ca\\.?|approx\\.?|about|env\\.?|c\\.)\\s*(${N})\\s*(.*)$`,
  'i',
);
const RANGE = new RegExp(
  `^(<?\\s*${N}|nd)\\s*(?:-|to|bis)\\s*(${N})(?:\\s+(?![\\d/-])(.*))?$`,
  'i',
);
const MEAN_WITH_RANGE = new RegExp(`^${N}\\s*\\((${N})\\s*-\\s*(${N})\\)$`);
const MEAN = new RegExp(
  `^(?:(?:avg|average|mean)\\.?\\s*${N}|${N}\\s*\\(?(?:avg|average|mean)\\b.*)$`,
  'i',
);
const LETTER_FIRST = new RegExp(`^([A-Z]{1,2})\\s+(${N})$`);
const DATE =
  /^(?:\d{1,2}-[a-z]{3}(?:-\d{2,4})?|[a-z]{3}-\d{1,4}|\d{1,2}[/.]\d{1,2}[/.]\d{2,4}|\d{4}-\d{2}-\d{2}.*)$/i;
const PROPORTION = /^\d+:\d+$/;
const DILUTION = /^\d+(?:\.\d+)?\s*x$/i;

/**
 * The cell of a lab result. Whatever is left behind a number (qualifier letters, a unit) is given
 * as `tail`; the reader of the row decides what it means, and nothing is dropped.
 *
 * @param marks the decimal and thousands mark of the file
 */
export function readResultText(cell: string, marks: NumberMarks = UNPROVEN_MARKS): ResultText {
  const text = tidy(cell);
  const word = RESULT_WORDS.get(wordForm(text));
  if (word !== undefined) return word;
  if (DATE.test(text)) {
    return {
      kind: 'asked',
      why: 'a date, which a spreadsheet may have made of a number or a range',
    };
  }
  if (PROPORTION.test(text)) return { kind: 'asked', why: 'a proportion or a dilution' };
  if (DILUTION.test(text)) return { kind: 'missing', reason: 'verdict' };
  if (MEAN.test(text)) return { kind: 'asked', why: 'a mean of several results without its range' };
  return (
    belowText(text, marks) ??
    aboveText(text, marks) ??
    rangeText(text, marks) ??
    numberText(text, marks) ?? { kind: 'unreadable' }
  );
}

/** The compared form of a word in a result, sign or condition cell. */
export function wordForm(text: string): string {
  return text
    .toLowerCase()
    .replace(/^<\s+/, '<')
    .replace(/^＜|^&lt;/, '<');
}

/** Code points folded, blanks single, the escapes of spreadsheets taken off. */
function tidy(cell: string): string {
  const text = cell
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .normalize('NFKC')
    .replace(/≤/g, '<=')
    .replace(/≥/g, '>=')
    .replace(/[−‐‑‒–—](?=.)/g, '-')
    .replace(/’/g, "'")
    .replace(/\s+/g, ' ')
    .trim();
  const escaped = /^=?"(.*)"$/.exec(text)?.[1] ?? text;
  return escaped.replace(/^'/, '').trim();
}

function belowText(text: string, marks: NumberMarks): ResultText | null {
  const range = RANGE.exec(text);
  if (range !== null) return null;
  const stated = LIMIT_FIRST.exec(text);
  const behind = LIMIT_BEHIND.exec(text);
  const [figure, word] = stated ? [stated[2], stated[1]] : behind ? [behind[1], behind[2]] : [];
  if (figure !== undefined) {
    const of = LIMIT_WORDS.get((word ?? '').toLowerCase()) ?? null;
    return limited(figure, marks, (limit) => ({ kind: 'below', limit, of, tail: '' }));
  }
  const plain =
    NOT_DETECTED_AT.exec(text) ?? NOT_DETECTED_BEHIND.exec(text) ?? BELOW.exec(text) ?? null;
  if (plain === null) return null;
  return limited(plain[1] ?? '', marks, (limit) => ({
    kind: 'below',
    limit,
    of: null,
    tail: plain[2] ?? '',
  }));
}

function aboveText(text: string, marks: NumberMarks): ResultText | null {
  const match = UNCOUNTABLE.exec(text) ?? ABOVE.exec(text);
  if (match !== null) {
    return limited(match[1] ?? '', marks, (limit) => ({
      kind: 'above',
      limit,
      isUncountable: false,
      tail: match[2] ?? '',
    }));
  }
  const trace = TRACE_AT.exec(text);
  if (trace === null) return null;
  return limited(trace[1] ?? '', marks, (value) => ({ kind: 'trace', value, tail: '' }));
}

function limited(
  text: string,
  marks: NumberMarks,
  make: (value: number) => ResultText,
): ResultText {
  const reading = readLabDecimal(text, marks);
  if (reading.kind === 'unclear') return { kind: 'unclear-decimal' };
  return reading.kind === 'none' ? { kind: 'unreadable' } : make(reading.value);
}

function rangeText(text: string, marks: NumberMarks): ResultText | null {
  const match = MEAN_WITH_RANGE.exec(text) ?? RANGE.exec(text);
  if (match === null) return null;
  const from = match[1] ?? '';
  const isBelow = /^(?:<|nd)/i.test(from);
  const low = readLabDecimal(from.replace(/^<\s*/, ''), marks);
  const high = readLabDecimal(match[2] ?? '', marks);
  if ((!isBelow && low.kind === 'unclear') || high.kind === 'unclear') {
    return { kind: 'unclear-decimal' };
  }
  if (high.kind === 'none' || (!isBelow && low.kind === 'none')) return { kind: 'unreadable' };
  const least = isBelow ? 0 : low.kind === 'number' ? low.value : 0;
  const ends = [least, high.value] as const;
  return { kind: 'range', low: Math.min(...ends), high: Math.max(...ends), tail: match[3] ?? '' };
}

function numberText(text: string, marks: NumberMarks): ResultText | null {
  const near = APPROXIMATE.exec(text);
  const led = LETTER_FIRST.exec(text);
  const plain = near ?? (led === null ? PLAIN.exec(text) : null);
  const figure = led?.[2] ?? plain?.[1];
  if (figure === undefined) return null;
  const value = readLabDecimal(figure, marks);
  const spreadText = near === null && led === null ? (plain?.[2] ?? plain?.[4]) : undefined;
  const spread = spreadText === undefined ? null : readLabDecimal(spreadText, marks);
  if (value.kind === 'unclear' || spread?.kind === 'unclear') return { kind: 'unclear-decimal' };
  if (value.kind === 'none' || spread?.kind === 'none') return { kind: 'unreadable' };
  const isRelative = near === null && plain?.[3] === '%';
  const half =
    spread === null ? null : isRelative ? (value.value * spread.value) / 100 : spread.value;
  return {
    kind: 'number',
    value: value.value,
    plusMinus: half,
    isApproximate: near !== null,
    tail: led?.[1] ?? (near === null ? (plain?.[5] ?? '') : (near[2] ?? '')),
  };
}
