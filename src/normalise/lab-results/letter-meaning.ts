import type { LetterMeaning, QualifierList } from '../../model/index.ts';
import { LETTER_LISTS, SHARED_LETTERS } from './letter-lists.ts';

/** What a letter means in one file; null for a letter nobody has explained. */
export type LetterReader = (letter: string) => LetterMeaning | null;

const HARMLESS: ReadonlySet<LetterMeaning> = new Set(['note', 'doubtful']);

/** T is a trace in some exports and a calculated hardness in another list. */
const DISPUTED_BY_USE = ['T'];

/** Letters that change the figure in some list and not in all: E, B, K, A, M … */
const DISPUTED: ReadonlySet<string> = new Set(
  DISPUTED_BY_USE.concat(
    Object.values(LETTER_LISTS).flatMap((list) =>
      [...list]
        .filter(([letter, meaning]) => /^[A-Z]{1,2}$/.test(letter) && !HARMLESS.has(meaning))
        .map(([letter]) => letter)
        .filter((letter) => !SHARED_LETTERS.has(letter)),
    ),
  ),
);

/**
 * The meaning of letters in a file.
 *
 * Own meanings go before the named list. Without a list, letters that mean one thing everywhere are
 * read, and a letter that changes the figure in one of the lists is asked about; every other letter
 * is unknown: it is kept beside the figure and reported.
 */
export function letterReader(
  list: QualifierList | null,
  own: Readonly<Record<string, LetterMeaning>>,
): LetterReader {
  const owned = new Map(Object.entries(own).map(([key, value]) => [key.toUpperCase(), value]));
  const named = list === null ? SHARED_LETTERS : LETTER_LISTS[list];
  return (letter) => {
    const upper = letter.toUpperCase();
    const known = owned.get(upper) ?? named.get(upper);
    if (known !== undefined) return known;
    if (list === null && DISPUTED.has(letter)) return 'ask';
    // U*, J^ : a footnote mark behind a known letter changes nothing about the letter.
    const bare = /^([A-Z]+)[*^†]+$/.exec(upper)?.[1];
    return bare === undefined ? null : (owned.get(bare) ?? named.get(bare) ?? null);
  };
}

export const SHARED_READER: LetterReader = letterReader(null, {});

const NO_LETTERS = /^(?:n\/?a|none|null|-+|—)$/i;

/** The letters of a qualifier cell; separators are blanks, commas, semicolons, bars and slashes. */
export function lettersOf(text: string): string[] {
  if (NO_LETTERS.test(text.trim())) return [];
  return text.split(/[\s,;|/]+/).filter((letter) => letter !== '');
}
