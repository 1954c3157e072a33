import type { Dimension, Measures } from './dimensions.ts';
import { exactRatio, ZERO } from './ratio.ts';
import { COUNTRY_ROWS, type CountryRow } from './tables/country-units.ts';
import { ASKED_ROWS, CONTEXT_ROWS, REFUSED_ROWS } from './tables/doubtful-units.ts';
import { QUIET_UNIT_ROWS, UNIT_ROWS, type UnitRow } from './tables/units.ts';
import type { Unit } from './unit.ts';
import { foldCase, foldWords, tidySpelling } from './unit-spelling.ts';

/** What the tables say about one spelling. */
export type UnitEntry =
  | { readonly kind: 'sure'; readonly unit: Unit }
  | {
      readonly kind: 'context';
      readonly unit: Unit;
      readonly dimension: Dimension;
      readonly otherwise: string;
    }
  | { readonly kind: 'asked'; readonly meanings: string; readonly remedy: string }
  | { readonly kind: 'refused'; readonly why: string; readonly remedy: string }
  | { readonly kind: 'country'; readonly word: CountryWord };

/** A word whose size depends on the country, with its units by measures. */
export interface CountryWord {
  readonly sizes: ReadonlyMap<Measures, Unit>;
  readonly presumedUs: boolean;
}

interface UnitIndex {
  readonly named: ReadonlyMap<string, Unit>;
  readonly exact: ReadonlyMap<string, readonly UnitEntry[]>;
  readonly folded: ReadonlyMap<string, readonly UnitEntry[]>;
  readonly words: ReadonlyMap<string, readonly UnitEntry[]>;
}

let index: UnitIndex | null = null;

/**
 * The entries of a tidied spelling: by its exact form first, then by a form in which only letters
 * that cannot change the meaning lost their case.
 */
export function entriesOf(tidy: string): readonly UnitEntry[] {
  const { exact, folded, words } = unitIndex();
  const word = foldWords(tidy);
  return (
    exact.get(tidy) ??
    (tidy.length > 1 ? folded.get(foldCase(tidy)) : undefined) ??
    (word === null ? undefined : words.get(word)) ??
    []
  );
}

/** All named units, in table order. */
export function namedUnits(): ReadonlyMap<string, Unit> {
  return unitIndex().named;
}

function unitIndex(): UnitIndex {
  index ??= buildIndex();
  return index;
}

function buildIndex(): UnitIndex {
  const named = new Map<string, Unit>();
  const exact = new Map<string, UnitEntry[]>();
  const add = (spellings: string, entry: UnitEntry) => {
    for (const spelling of splitSpellings(spellings)) {
      const { text } = tidySpelling(spelling);
      const entries = exact.get(text) ?? [];
      if (!entries.some((known) => sameMeaning(known, entry))) entries.push(entry);
      exact.set(text, entries);
    }
  };
  for (const row of UNIT_ROWS) {
    const unit = unitOfRow(row);
    named.set(unit.name, unit);
    add(`${row[0]} | ${row[3]}`, { kind: 'sure', unit });
  }
  for (const row of QUIET_UNIT_ROWS) named.set(row[0], unitOfRow(row));
  for (const row of COUNTRY_ROWS) {
    const word = countryWord(row);
    for (const unit of word.sizes.values()) if (!named.has(unit.name)) named.set(unit.name, unit);
    add(row.spellings, { kind: 'country', word });
  }
  for (const [spellings, name, dimension, otherwise] of CONTEXT_ROWS) {
    const unit = named.get(name);
    if (unit !== undefined) add(spellings, { kind: 'context', unit, dimension, otherwise });
  }
  for (const [spellings, meanings, remedy] of ASKED_ROWS) {
    add(spellings, { kind: 'asked', meanings, remedy });
  }
  for (const [spellings, why, remedy] of REFUSED_ROWS) {
    add(spellings, { kind: 'refused', why, remedy });
  }
  return {
    named,
    exact,
    folded: foldedMap(exact, foldCase),
    words: foldedMap(exact, foldWords),
  };
}

/** Folded spellings, leaving out those on which two meanings fall together. */
function foldedMap(
  exact: ReadonlyMap<string, readonly UnitEntry[]>,
  fold: (text: string) => string | null,
): ReadonlyMap<string, readonly UnitEntry[]> {
  const folded = new Map<string, readonly UnitEntry[] | null>();
  for (const [text, entries] of exact) {
    const key = text.length > 1 ? fold(text) : null;
    if (key === null) continue;
    const known = folded.get(key);
    if (known === undefined) folded.set(key, entries);
    else if (known === null || !sameEntries(known, entries)) folded.set(key, null);
  }
  const clear = new Map<string, readonly UnitEntry[]>();
  for (const [key, entries] of folded) if (entries !== null) clear.set(key, entries);
  return clear;
}

function sameEntries(a: readonly UnitEntry[], b: readonly UnitEntry[]): boolean {
  return (
    a.length === b.length &&
    a.every((entry, i) => {
      const other = b[i];
      return other !== undefined && sameMeaning(entry, other);
    })
  );
}

function sameMeaning(a: UnitEntry, b: UnitEntry): boolean {
  if (a.kind === 'sure' && b.kind === 'sure') return a.unit === b.unit;
  if (a.kind === 'context' && b.kind === 'context') {
    return a.unit === b.unit && a.dimension === b.dimension;
  }
  if (a.kind === 'country' && b.kind === 'country') return a.word === b.word;
  return a.kind === b.kind && 'remedy' in a && 'remedy' in b && a.remedy === b.remedy;
}

function countryWord(row: CountryRow): CountryWord {
  const sizes = new Map<Measures, Unit>();
  for (const measures of ['us', 'imperial', 'metric'] as const) {
    const size = row.sizes[measures];
    if (size === undefined) continue;
    const extra = row.basis === undefined ? {} : { basis: row.basis };
    sizes.set(measures, unitOfRow([size[0], row.dimension, size[1], '', extra]));
  }
  return { sizes, presumedUs: row.presumedUs === true };
}

function unitOfRow([name, dimension, factor, , extra]: UnitRow): Unit {
  return {
    spelling: name,
    name,
    dimension,
    basis: extra?.basis ?? null,
    toBase: exactRatio(factor),
    offset: extra?.offset === undefined ? ZERO : exactRatio(extra.offset),
    note: extra?.note ?? null,
  };
}

function splitSpellings(spellings: string): string[] {
  return spellings.split(' | ').filter((spelling) => spelling !== '');
}
