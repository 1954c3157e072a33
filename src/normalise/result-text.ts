import type { MissingReason } from '../model/index.ts';
import { readDecimal } from './decimal.ts';

/** What the cell of a lab result says, before limits and units are looked at. */
export type ResultText =
  | {
      readonly kind: 'number';
      readonly value: number;
      /** The printed figure behind ±; what it covers is the lab's to say. */
      readonly plusMinus: number | null;
      readonly tail: string;
    }
  | { readonly kind: 'below'; readonly limit: number | null; readonly tail: string }
  | { readonly kind: 'above'; readonly limit: number; readonly tail: string }
  | { readonly kind: 'trace' }
  | { readonly kind: 'absent' }
  | { readonly kind: 'present' }
  | { readonly kind: 'missing'; readonly reason: MissingReason }
  | { readonly kind: 'unclear-decimal' }
  | { readonly kind: 'unreadable' };

const NOT_DETECTED = new Set([
  'nd',
  'n.d.',
  'n/d',
  'nd.',
  'not detected',
  'none detected',
  'non-detect',
  'non detect',
  'nondetect',
  'not detect',
  'bdl',
  'b.d.l.',
  'below detection limit',
  'below detection',
  'bql',
  'bpql',
  'blq',
  'bloq',
  'brl',
  'below reporting limit',
  'not detected at reporting limit',
  'not found',
  'nn',
  'n.n.',
  'u',
]);
const TRACE = new Set([
  'trace',
  'tr',
  'traces',
  'dnq',
  'd.n.q.',
  'detected, not quantified',
  'detected not quantified',
  'present below quantification limit',
]);
const ABSENT = new Set(['absent', 'absence', 'a', 'negative', 'not present']);
const PRESENT = new Set(['present', 'presence', 'p', 'positive']);
const MISSING: ReadonlyMap<string, MissingReason> = new Map([
  ['', 'blank'],
  ['-', 'not-tested'],
  ['--', 'not-tested'],
  ['—', 'not-tested'],
  ['–', 'not-tested'],
  ['…', 'not-tested'],
  ['...', 'not-tested'],
  ['na', 'not-tested'],
  ['n/a', 'not-tested'],
  ['n.a.', 'not-tested'],
  ['not analyzed', 'not-tested'],
  ['not analysed', 'not-tested'],
  ['not tested', 'not-tested'],
  ['not reported', 'not-tested'],
  ['not requested', 'not-tested'],
  ['rejected', 'rejected'],
  ['r', 'rejected'],
]);

const NUMBER = '[+-]?(?:\\d[\\d.,]*(?:[eE][+-]?\\d+)?|[.,]\\d+)';
const PLAIN = new RegExp(`^(${NUMBER})\\s*(?:(?:±|\\+/-|\\+-)\\s*(${NUMBER}))?\\s*(.*)$`);
const BELOW = new RegExp(`^(?:<=?|≤|＜|&lt;|LT(?=\\s*[\\d.]))\\s*(${NUMBER})\\s*(.*)$`);
const BELOW_WORD = /^(?:<|＜|&lt;)\s*(?:mdl|lod|dl|idl|mda|rl|mrl|pql|loq|lq|ql|lloq|lor)$/;
const ABOVE = new RegExp(`^(?:>=?|≥|＞|&gt;|GT(?=\\s*[\\d.]))\\s*(${NUMBER})\\s*(.*)$`);
const INSIDE = new RegExp(
  `^(?:nd|n\\.d\\.|not detected)\\s*(?:[(@/]|at|<)\\s*<?\\s*(${NUMBER})\\s*\\)?$`,
  'i',
);

/**
 * The cell of a lab result. Whatever is left behind a number (qualifier letters, a unit) is given
 * as `tail`; the reader of the row decides what it means, and nothing is dropped.
 */
export function readResultText(cell: string): ResultText {
  const text = cell.normalize('NFKC').replace(/\s+/g, ' ').trim();
  const word = text.toLowerCase();
  const missing = MISSING.get(word);
  if (missing !== undefined) return { kind: 'missing', reason: missing };
  if (NOT_DETECTED.has(word) || BELOW_WORD.test(word)) {
    return { kind: 'below', limit: null, tail: '' };
  }
  if (TRACE.has(word)) return { kind: 'trace' };
  if (ABSENT.has(word)) return { kind: 'absent' };
  if (PRESENT.has(word)) return { kind: 'present' };
  return (
    limited(INSIDE.exec(text), 'below') ??
    limited(BELOW.exec(text), 'below') ??
    limited(ABOVE.exec(text), 'above') ??
    plain(PLAIN.exec(text)) ?? { kind: 'unreadable' }
  );
}

function limited(match: RegExpExecArray | null, kind: 'below' | 'above'): ResultText | null {
  if (match === null) return null;
  const reading = readDecimal(match[1] ?? '');
  if (reading.kind === 'unclear') return { kind: 'unclear-decimal' };
  if (reading.kind === 'none' || reading.value < 0) return { kind: 'unreadable' };
  return { kind, limit: reading.value, tail: match[2] ?? '' };
}

function plain(match: RegExpExecArray | null): ResultText | null {
  if (match === null) return null;
  const value = readDecimal(match[1] ?? '');
  const spread = match[2] === undefined ? null : readDecimal(match[2]);
  if (value.kind === 'unclear' || spread?.kind === 'unclear') return { kind: 'unclear-decimal' };
  if (value.kind === 'none' || spread?.kind === 'none') return { kind: 'unreadable' };
  return {
    kind: 'number',
    value: value.value,
    plusMinus: spread?.value ?? null,
    tail: match[3] ?? '',
  };
}
