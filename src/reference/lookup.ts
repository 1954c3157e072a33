import type { Analyte } from './analyte.ts';
import type { AnalyteIndex } from './analyte-index.ts';
import { readCas } from './cas.ts';
import { levelsOf, type ReferenceLevel } from './levels.ts';
import { exactRatio, ratioValue } from './ratio.ts';
import { BASIS_MUST_BE_STATED } from './tables/basis-rules.ts';
import { RELATED_CAS_ROWS } from './tables/related-cas.ts';

/** A basis with the factor that leads from it to the canonical basis; null without a molar mass. */
export interface BasisFactor {
  readonly basis: string;
  readonly gPerMol: number | null;
  readonly toCanonical: number | null;
}

/** All the tables say about one analyte. */
export interface AnalyteFacts {
  readonly analyte: Analyte;
  readonly bases: readonly BasisFactor[];
  /** True where a report must state the basis. */
  readonly mustStateBasis: boolean;
  /** CAS numbers of related forms under which it is reported too. */
  readonly relatedCas: readonly { readonly cas: string; readonly form: string }[];
  readonly levels: readonly ReferenceLevel[];
}

export interface Lookup {
  /** One entry, or several where the text can mean several analytes. */
  readonly found: readonly AnalyteFacts[];
  /** A further meaning that is no analyte of the tables. */
  readonly otherMeaning: string | null;
  /** Keys of analytes with a name near to the text, or holding it; empty when one was found. */
  readonly suggestions: readonly string[];
}

const MOST_SUGGESTIONS = 8;

/**
 * What the tables hold under a name, alias, key or CAS number.
 *
 * @param text what the user typed
 * @param index analytes of the tables, or of a bench
 * @returns nothing found and suggestions where no name fits; blank text finds and suggests nothing
 * @example lookUp('7439-92-1', analyteIndex([])).found[0].analyte.key // 'lead'
 */
export function lookUp(text: string, index: AnalyteIndex): Lookup {
  const isCas = readCas(text).kind === 'cas';
  const reading = isCas ? index.resolve(null, text) : index.resolve(text, null);
  switch (reading.kind) {
    case 'found':
      return { found: [factsOf(reading.analyte)], otherMeaning: null, suggestions: [] };
    case 'ambiguous':
      return {
        found: reading.candidates.map(factsOf),
        otherMeaning: reading.otherMeaning,
        suggestions: [],
      };
    case 'conflict':
      return {
        found: [factsOf(reading.byName), factsOf(reading.byCas)],
        otherMeaning: null,
        suggestions: [],
      };
    case 'unknown': {
      const suggestions = new Set([...reading.suggestions, ...keysHolding(text, index)]);
      return {
        found: [],
        otherMeaning: null,
        suggestions: [...suggestions].slice(0, MOST_SUGGESTIONS),
      };
    }
  }
}

function factsOf(analyte: Analyte): AnalyteFacts {
  const canonical = analyte.bases[0]?.gPerMol ?? null;
  return {
    analyte,
    bases: analyte.bases.map(({ basis, gPerMol }) => ({
      basis,
      gPerMol,
      toCanonical:
        gPerMol === null || canonical === null
          ? null
          : ratioValue(exactRatio(`${canonical}/${gPerMol}`)),
    })),
    mustStateBasis: BASIS_MUST_BE_STATED.has(analyte.key),
    relatedCas: RELATED_CAS_ROWS.filter(
      ([cas, alone, beside]) =>
        cas !== analyte.cas && `${alone} ${beside}`.split(' ').includes(analyte.key),
    ).map(([cas, , , form]) => ({ cas, form })),
    levels: levelsOf(analyte),
  };
}

/** Keys of analytes one of whose names holds the text; shorter than three letters finds none. */
function keysHolding(text: string, index: AnalyteIndex): readonly string[] {
  const wanted = text.trim().toLowerCase();
  if (wanted.length < 3) return [];
  return index.analytes
    .filter((analyte) =>
      [analyte.key, analyte.name, ...analyte.aliases].some((name) =>
        name.toLowerCase().includes(wanted),
      ),
    )
    .map(({ key }) => key);
}
