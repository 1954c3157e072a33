import { FINDING_CODES, type FindingCode } from './codes.ts';
import { NOWHERE, type Place } from './place.ts';

export type Level = 'error' | 'warning' | 'note';

/** Something to know about the data: what is wrong, where, and what to do. */
export interface Finding {
  readonly level: Level;
  readonly code: FindingCode;
  readonly message: string;
  readonly remedy: string;
  readonly place: Place;
}

/**
 * Makes a finding at the level its code carries in the catalogue.
 *
 * @param code a code of the catalogue
 * @param message what was found, in one sentence without a final full stop
 * @param remedy what the user does about it
 * @param at the place; leave out only when the finding concerns the bench as a whole
 */
export function finding(
  code: FindingCode,
  message: string,
  remedy: string,
  at: Place = NOWHERE,
): Finding {
  return { level: FINDING_CODES[code].level, code, message, remedy, place: at };
}

const RANK: Readonly<Record<Level, number>> = { error: 2, warning: 1, note: 0 };

/** True when `level` is as grave as `floor` or graver. */
export function atLeast(level: Level, floor: Level): boolean {
  return RANK[level] >= RANK[floor];
}

/** True when any finding is an error. */
export function hasErrors(findings: readonly Finding[]): boolean {
  return findings.some((item) => item.level === 'error');
}

/**
 * Findings in reading order: by file, line, column, then code, so that the order in which the
 * checks ran never shows.
 */
export function sortFindings(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(
    (a, b) =>
      compareText(a.place.file ?? '', b.place.file ?? '') ||
      (a.place.line ?? 0) - (b.place.line ?? 0) ||
      (a.place.column ?? 0) - (b.place.column ?? 0) ||
      compareText(a.code, b.code) ||
      compareText(a.message, b.message),
  );
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
