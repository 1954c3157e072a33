import { editDistance } from '../findings/index.ts';
import type { Analyte } from './analyte.ts';
import { nameKey } from './analyte-name.ts';
import { tableAnalytes } from './analyte-table.ts';
import { readCas } from './cas.ts';
import { type AnalyteProblem, addExtraAnalytes, type ExtraAnalyte } from './extra-analytes.ts';
import { type NameReading, readName } from './read-name.ts';
import { RELATED_CAS_ROWS } from './tables/related-cas.ts';

export type AnalyteReading =
  | {
      readonly kind: 'found';
      readonly analyte: Analyte;
      /** The basis the spelling fixes, `as N`; null where it fixes none. */
      readonly basis: string | null;
      readonly via: 'key' | 'name' | 'alias' | 'cas';
    }
  | { readonly kind: 'unknown'; readonly suggestions: readonly string[] }
  | {
      readonly kind: 'ambiguous';
      readonly candidates: readonly Analyte[];
      /** A further meaning that is no analyte of the tables. */
      readonly otherMeaning: string | null;
    }
  | { readonly kind: 'conflict'; readonly byName: Analyte; readonly byCas: Analyte };

/** The analytes of a bench: those of the tables and those of its analytes.csv. */
export interface AnalyteIndex {
  readonly analytes: readonly Analyte[];
  readonly byKey: (key: string) => Analyte | undefined;
  /** The analyte a name and a CAS number mean together; either may be null. */
  readonly resolve: (name: string | null, cas: string | null) => AnalyteReading;
  /** Keys of at most three analytes whose names are nearest to a misspelt one. */
  readonly suggest: (name: string) => readonly string[];
  readonly problems: readonly AnalyteProblem[];
}

let tablesOnly: AnalyteIndex | null = null;

/**
 * Index of the analytes of the tables plus those a bench adds.
 *
 * @param extra rows of the bench's analytes.csv: a new key adds an analyte, a known key adds aliases
 * @returns `problems` lists the rows, or parts of rows, that could not be taken
 * @example analyteIndex([]).resolve('NO3-N', null) // nitrate, basis 'as N', via 'alias'
 */
export function analyteIndex(extra: readonly ExtraAnalyte[]): AnalyteIndex {
  if (extra.length === 0 && tablesOnly !== null) return tablesOnly;
  const built = buildIndex(extra);
  if (extra.length === 0) tablesOnly = built;
  return built;
}

function buildIndex(extra: readonly ExtraAnalyte[]): AnalyteIndex {
  const { analytes, ownAliases, problems } = addExtraAnalytes(tableAnalytes(), extra);
  const byKey = new Map(analytes.map((analyte) => [analyte.key, analyte]));
  const byName = namesOf(analytes);
  const byCas = casNumbers(analytes, byKey);
  const besides = casBesideNames();
  const names = { byKey, byName, ownAliases };
  const suggest = (name: string) => nearestKeys(nameKey(name), byName);

  const resolve = (name: string | null, cas: string | null): AnalyteReading => {
    const reading = name === null || name.trim() === '' ? null : readName(name, names);
    const casReading = cas === null ? null : readCas(cas);
    const number = casReading?.kind === 'cas' ? casReading.cas : '';
    const related = byCas.get(number) ?? [];
    if (reading === null) return byCasAlone(related);
    if (reading.kind === 'excluded') return { kind: 'unknown', suggestions: [] };
    if (reading.kind === 'found') {
      const agrees = besides.get(number)?.has(reading.analyte.key) === true;
      return agrees ? reading : checkCas(reading, related);
    }
    if (reading.kind === 'ambiguous') {
      const settled = related.filter((analyte) => reading.candidates.includes(analyte));
      const only = settled.length === 1 ? settled[0] : undefined;
      if (only !== undefined) return { kind: 'found', analyte: only, basis: null, via: 'cas' };
      return reading;
    }
    if (related.length > 0) return byCasAlone(related);
    return {
      kind: 'unknown',
      // Most of those who ask only want to know whether a text is a name.
      get suggestions() {
        return suggest(name ?? '');
      },
    };
  };
  return { analytes, byKey: (key) => byKey.get(key), resolve, suggest, problems };
}

function checkCas(
  reading: Extract<NameReading, { kind: 'found' }>,
  related: readonly Analyte[],
): AnalyteReading {
  const other = related[0];
  return other === undefined || related.includes(reading.analyte)
    ? reading
    : { kind: 'conflict', byName: reading.analyte, byCas: other };
}

function byCasAlone(related: readonly Analyte[]): AnalyteReading {
  const only = related[0];
  if (only === undefined) return { kind: 'unknown', suggestions: [] };
  return related.length === 1
    ? { kind: 'found', analyte: only, basis: null, via: 'cas' }
    : { kind: 'ambiguous', candidates: related, otherMeaning: null };
}

function namesOf(analytes: readonly Analyte[]): ReadonlyMap<string, Analyte> {
  const names = new Map<string, Analyte>();
  for (const analyte of analytes) {
    for (const name of [analyte.key, analyte.name, ...analyte.aliases]) {
      names.set(nameKey(name), analyte);
    }
  }
  return names;
}

function casNumbers(
  analytes: readonly Analyte[],
  byKey: ReadonlyMap<string, Analyte>,
): ReadonlyMap<string, readonly Analyte[]> {
  const numbers = new Map<string, Analyte[]>();
  const add = (cas: string, analyte: Analyte) => {
    const known = numbers.get(cas) ?? [];
    if (!known.includes(analyte)) known.push(analyte);
    numbers.set(cas, known);
  };
  for (const analyte of analytes) if (analyte.cas !== null) add(analyte.cas, analyte);
  for (const [cas, alone] of RELATED_CAS_ROWS) {
    for (const key of alone.split(' ')) {
      const analyte = byKey.get(key);
      if (analyte !== undefined) add(cas, analyte);
    }
  }
  return numbers;
}

/** Keys beside which a number may stand without contradicting the name. */
function casBesideNames(): ReadonlyMap<string, ReadonlySet<string>> {
  return new Map(RELATED_CAS_ROWS.map(([cas, , beside]) => [cas, new Set(beside.split(' '))]));
}

const MOST_SUGGESTIONS = 3;

/** Near means at most a third of the letters wrong; of one or two letters none. */
function nearestKeys(name: string, byName: ReadonlyMap<string, Analyte>): readonly string[] {
  if (name === '') return [];
  const limit = Math.floor(name.length / 3);
  const nearest = new Map<string, number>();
  for (const [known, { key }] of byName) {
    if (Math.abs(known.length - name.length) > limit) continue;
    const distance = editDistance(name, known);
    if (distance <= limit && distance < (nearest.get(key) ?? Number.POSITIVE_INFINITY)) {
      nearest.set(key, distance);
    }
  }
  return [...nearest]
    .sort((a, b) => a[1] - b[1] || (a[0] < b[0] ? -1 : 1))
    .slice(0, MOST_SUGGESTIONS)
    .map(([key]) => key);
}
