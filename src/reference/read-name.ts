import type { Analyte } from './analyte.ts';
import { nameKey } from './analyte-name.ts';
import {
  AMBIGUOUS_ROWS,
  CAPITAL_SYMBOLS,
  EXACT_ROWS,
  NO_NAME,
  NOT_THE_ANALYTE,
} from './tables/ambiguous-names.ts';

/** Names by their compared form; aliases of the bench itself come before everything else. */
export interface NameTables {
  readonly byKey: ReadonlyMap<string, Analyte>;
  readonly byName: ReadonlyMap<string, Analyte>;
  readonly ownAliases: ReadonlyMap<string, Analyte>;
}

export type NameReading =
  | {
      readonly kind: 'found';
      readonly analyte: Analyte;
      readonly basis: string | null;
      readonly via: 'key' | 'name' | 'alias';
    }
  | {
      readonly kind: 'ambiguous';
      readonly candidates: readonly Analyte[];
      readonly otherMeaning: string | null;
    }
  | { readonly kind: 'none' }
  /** No name at all, or one that holds the name of an analyte and is not that analyte. */
  | { readonly kind: 'excluded' };

/**
 * What a name means, without looking at a CAS number.
 *
 * Aliases the bench adds come first, so that a bench can settle a name with two meanings. Then what
 * only looks like an analyte, spellings taken exactly as written, names with two meanings, and the
 * aliases. A name unknown so far is tried without a stated basis (`…, as N`) and, for metals,
 * without the fraction (`total`, `dissolved`), and a name with another in brackets by both.
 */
export function readName(name: string, tables: NameTables): NameReading {
  const trimmed = name.trim();
  const key = nameKey(trimmed);
  const own = tables.ownAliases.get(key);
  if (own !== undefined) return found(own, trimmed, key);
  if (NO_NAME.test(trimmed) || key === '') return { kind: 'excluded' };
  if (NOT_THE_ANALYTE.some((pattern) => pattern.test(trimmed))) return { kind: 'excluded' };
  return (
    readExact(trimmed, tables) ??
    readAmbiguous(key, tables) ??
    readAlias(trimmed, key, tables) ??
    readStatedBasis(trimmed, tables) ??
    readMetalFraction(trimmed, tables) ??
    readDoubleName(trimmed, tables) ?? { kind: 'none' }
  );
}

function readExact(name: string, tables: NameTables): NameReading | null {
  const row = EXACT_ROWS.find(([spelling]) => spelling === name.replace(/[−⁻–]/g, '-'));
  if (row === undefined) return null;
  const candidates = row[1].split(' ').flatMap((key) => tables.byKey.get(key) ?? []);
  const only = candidates[0];
  return candidates.length === 1 && only !== undefined
    ? { kind: 'found', analyte: only, basis: null, via: 'alias' }
    : { kind: 'ambiguous', candidates, otherMeaning: null };
}

function readAmbiguous(key: string, tables: NameTables): NameReading | null {
  const row = ambiguousRows().get(key);
  if (row === undefined) return null;
  const candidates = row.keys.flatMap((candidate) => tables.byKey.get(candidate) ?? []);
  return { kind: 'ambiguous', candidates, otherMeaning: row.otherMeaning };
}

function readAlias(name: string, key: string, tables: NameTables): NameReading | null {
  if (CAPITAL_SYMBOLS.has(key) && !/^[A-Z]/.test(name)) return null;
  const analyte = tables.byName.get(key);
  return analyte === undefined ? null : found(analyte, name, key);
}

const STATED_BASIS = /^(.+?)[\s,;(_-]+as[\s_]+([A-Za-z][A-Za-z0-9]*)\)?$/i;

/** `Hardness, filtered as CaCO3`: the name without its basis, where the analyte has that basis. */
function readStatedBasis(name: string, tables: NameTables): NameReading | null {
  const match = STATED_BASIS.exec(name);
  if (match === null) return null;
  const [, rest = '', species = ''] = match;
  const reading = readName(rest, tables);
  if (reading.kind !== 'found') return null;
  const { analyte } = reading;
  const basis = basisOfSpecies(analyte, species);
  if (basis !== null) return { ...reading, basis };
  const isOwnSymbol = analyte.bases.length === 0 && tables.byName.get(nameKey(species)) === analyte;
  return isOwnSymbol ? reading : null;
}

const FRACTION = '(?:total recoverable|recoverable|total|dissolved)';
const FRACTION_BEHIND = new RegExp(`^(.+?)[\\s,;(_-]+${FRACTION}\\)?$`, 'i');
const FRACTION_BEFORE = new RegExp(`^${FRACTION}[\\s,_-]+(.+)$`, 'i');

/** `Zinc, dissolved`: a metal without the fraction that was digested or filtered. */
function readMetalFraction(name: string, tables: NameTables): NameReading | null {
  const rest = FRACTION_BEHIND.exec(name)?.[1] ?? FRACTION_BEFORE.exec(name)?.[1];
  if (rest === undefined) return null;
  const analyte = tables.byName.get(nameKey(rest));
  return analyte?.group === 'metals' ? { kind: 'found', analyte, basis: null, via: 'alias' } : null;
}

const BRACKETED = /^(.+?)\s*[([]([^()[\]]+)[)\]]$/;

/** `Perfluorooctanoic acid (PFOA)`: two names, taken only where they agree. */
function readDoubleName(name: string, tables: NameTables): NameReading | null {
  const match = BRACKETED.exec(name);
  if (match === null) return null;
  const first = readName(match[1] ?? '', tables);
  const second = readName(match[2] ?? '', tables);
  if (first.kind === 'found' && agrees(second, first.analyte)) {
    const basis = first.basis ?? (second.kind === 'found' ? second.basis : null);
    return { ...first, basis, via: 'alias' };
  }
  if (second.kind === 'found' && agrees(first, second.analyte)) return { ...second, via: 'alias' };
  return null;
}

function agrees(reading: NameReading, analyte: Analyte): boolean {
  if (reading.kind === 'found') return reading.analyte === analyte;
  return reading.kind === 'ambiguous' && reading.candidates.includes(analyte);
}

function found(analyte: Analyte, name: string, key: string): NameReading {
  if (name === analyte.key) return { kind: 'found', analyte, basis: null, via: 'key' };
  const via = key === nameKey(analyte.name) ? 'name' : 'alias';
  const alias = analyte.aliases.find((known) => nameKey(known) === key);
  const basis =
    (alias === undefined ? undefined : analyte.aliasBasis[alias]) ??
    basisOfSpecies(analyte, STATED_BASIS.exec(name)?.[2] ?? '');
  return { kind: 'found', analyte, basis, via };
}

function basisOfSpecies(analyte: Analyte, species: string): string | null {
  const wanted = `as ${species}`.toLowerCase();
  return analyte.bases.find(({ basis }) => basis.toLowerCase() === wanted)?.basis ?? null;
}

interface Ambiguity {
  readonly keys: readonly string[];
  readonly otherMeaning: string | null;
}

let ambiguities: ReadonlyMap<string, Ambiguity> | null = null;

function ambiguousRows(): ReadonlyMap<string, Ambiguity> {
  ambiguities ??= new Map(
    AMBIGUOUS_ROWS.flatMap(([spellings, keys, or]) =>
      spellings
        .split(' | ')
        .map((spelling): [string, Ambiguity] => [
          nameKey(spelling),
          { keys: keys.split(' '), otherMeaning: or === '' ? null : or },
        ]),
    ),
  );
  return ambiguities;
}
