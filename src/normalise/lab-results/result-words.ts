// biome-ignore-all format: one family of words per line
import type { MissingReason } from '../../model/index.ts';

/** Which limit a word for "less than" speaks of; null where it does not say. */
export type LimitKind = 'detection' | 'reporting';

export type WordMeaning =
  | { readonly kind: 'below'; readonly limit: null; readonly of: LimitKind | null; readonly tail: '' }
  | { readonly kind: 'trace'; readonly value: null; readonly tail: '' }
  | { readonly kind: 'above'; readonly limit: null; readonly isUncountable: boolean; readonly tail: '' }
  | { readonly kind: 'absent' }
  | { readonly kind: 'present' }
  | { readonly kind: 'missing'; readonly reason: MissingReason }
  | { readonly kind: 'asked'; readonly why: string };

/**
 * Words that stand in a result cell, or in the column that says why a result is blank.
 *
 * Source: the domain list "Result Detection Condition" of the US Water Quality Exchange; public
 * laboratory and agency exports in six languages; common laboratory usage, from memory.
 * Verified: tests/outside-checks/lab-exports.
 */
const NOT_DETECTED = [
  'nd', 'nd.', 'n/d', 'ndu', 'nd u', 'not detected', 'not detect', 'none detected', 'undetected', 'non-detect', '*non-detect', 'non detect', 'nondetect',
  'n.n.', 'n. n.', 'nn', 'nicht nachweisbar', 'not present', 'uu', 'u',
];
/** In German and Italian reports these may mean that nothing was determined. */
const NOT_DETECTED_OR_NOT_DETERMINED = ['n.d.', 'n.d', 'n. d.'];
const BELOW_DETECTION = [
  'bdl', 'b.d.l.', 'bld', 'below detection limit', 'below detection', 'below method detection limit', 'below daily detection limit', 'below system detection limit',
  'below sample-specific detect limit', 'below long-term blank-basd dt limit', 'not detected at detection limit', 'menor_ld',
  '<mdl', '<lod', '<dl', '<ld', '<idl', '<mdc', '<mda', '<seuil', '<ng', 'u.d.n.', 'unter nachweisgrenze',
];
const BELOW_REPORTING = [
  'bpql', 'brl', 'bql', 'bmrl', 'blq', 'bloq', 'b.q.l.', 'below reporting limit', 'not detected at reporting limit', 'below quantitation limit', 'below quantification limit',
  '<rl', '<pql', '<loq', '<lq', '<mrl', '<ql', '<crdl', '<lloq', '<eql', '<lor', '<lc', '<bg', 'u.d.b.', 'unter bestimmungsgrenze', '<2b',
];
const TRACE = [
  'trace', 'traces', 'tr', 't', 'spuren', 'trazas', 'sp.', 'dnq', 'd.n.q.', 'detected not quantified', 'detected, not quantified', 'present below quantification limit',
  'between inst detect and quant limit', '*present <ql', '*present', 'menor_lq', 'm', 'j-r', 'ltgte',
];
const ABOVE = ['present above quantification limit', 'above operating range', 'above range'];
const UNCOUNTABLE = ['tntc', 't.n.t.c.', 'too numerous to count', 'incompt.', 'confluent growth', 'confluent', 'cg', 'overgrown'];
const ABSENT = ['absent', 'absence', 'ausente', 'ausencia', 'assente', 'afwezig', 'not found', 'nicht nachgewiesen', 'ej påvisad', 'negative', 'neg', 'absent/100ml', 'a'];
const PRESENT = ['present', 'presence', 'presente', 'positive', 'pos', '+', 'detected', 'påvisad', 'nachgewiesen', 'p'];
const NOT_TESTED = [
  '-', '--', '---', '—', '–', '…', '...', '.', 'na', 'n/a', 'n.a.', '#n/a', 'nan', 'null', 'none', '(null)', '<na>', 'nt', 'n.t.', 'not tested', 'not analysed', 'not analyzed',
  'nr', 'n.r.', 'not reported', 'not requested', 'ns', 'no sample', 'n.m.', 'nm', 'not measured', 'qns', 'is', 'pending', 'in progress', 'tbd', 'see attached', 'see remark for text',
  'reported in raw data (attached)', 'see sub report', 'k.a.', 'k. a.', 'keine angabe',
];
const REJECTED = ['r', 'rejected', 'illisibl', 'unable to measure', 'interference', 'la', 'lab accident', 'broken', 'void', 'invalid', 'iv'];
const VERDICTS = [
  'pass', 'fail', 'ok', 'conforme', 'c', 'n', 'y', 'within limits', 'satisfactory', 'unsatisfactory', 'aspect normal', 'aspect anormal', 'acceptable', 'nac', 'changement anormal', 'oui', 'non', 'yes', 'no',
  'clear', 'mild', 'moderate', 'strong', 'slight', 'normal', 'abnormal',
];
const NOT_DETERMINED = ['n.b.', 'nicht bestimmt', 'n.best.', 'n. b.'];

const below = (of: LimitKind | null): WordMeaning => ({ kind: 'below', limit: null, of, tail: '' });
const missing = (reason: MissingReason): WordMeaning => ({ kind: 'missing', reason });

/** Words, in lower case with single blanks, and what they mean. */
export const RESULT_WORDS: ReadonlyMap<string, WordMeaning> = new Map(
  (
    [
      [NOT_DETECTED, below(null)],
      [NOT_DETECTED_OR_NOT_DETERMINED, below(null)],
      [BELOW_DETECTION, below('detection')],
      [BELOW_REPORTING, below('reporting')],
      [TRACE, { kind: 'trace', value: null, tail: '' }],
      [ABOVE, { kind: 'above', limit: null, isUncountable: false, tail: '' }],
      [UNCOUNTABLE, { kind: 'above', limit: null, isUncountable: true, tail: '' }],
      [ABSENT, { kind: 'absent' }],
      [PRESENT, { kind: 'present' }],
      [NOT_TESTED, missing('not-tested')],
      [REJECTED, missing('rejected')],
      [VERDICTS, missing('verdict')],
      [NOT_DETERMINED, { kind: 'asked', why: 'not determined or not quantifiable' }],
      [[''], missing('blank')],
    ] as const
  ).flatMap(([words, meaning]) => words.map((word) => [word, meaning as WordMeaning] as const)),
);

/** True for a spelling that is "not detected" in one language and "not determined" in another. */
export function isDoubtfulNotDetected(word: string): boolean {
  return NOT_DETECTED_OR_NOT_DETERMINED.includes(word);
}

/** Words of the condition column that change nothing about the figure beside them. */
export const CONDITION_NOTES: ReadonlySet<string> = new Set([
  'value decensored',
  'value affected by contamination',
  'high moisture',
]);

/** Abbreviations of limits as they stand beside a number. */
export const LIMIT_WORDS: ReadonlyMap<string, LimitKind> = new Map([
  ...['mdl', 'lod', 'dl', 'ld', 'idl', 'mdc', 'mda', 'ng'].map((word) => [word, 'detection'] as const),
  ...['rl', 'pql', 'loq', 'lq', 'mrl', 'ql', 'crdl', 'lloq', 'eql', 'lor', 'lc', 'bg'].map((word) => [word, 'reporting'] as const),
]);
