import type { Place } from '../../findings/index.ts';
import { type Analyte, type AnalyteIndex, readCas } from '../../reference/index.ts';
import type { FindingLog } from './finding-log.ts';
import { analyteRemedy } from './lab-remedies.ts';

export interface ResolvedAnalyte {
  readonly analyte: Analyte;
  /** The basis the spelling fixes; null where it fixes none. */
  readonly basis: string | null;
}

export interface AnalyteCells {
  readonly name: string;
  readonly cas: string;
  /** Total, dissolved, free available … where a column says so. */
  readonly fraction: string;
}

/** The analyte of a row by its name and CAS number; null where it has to be asked about. */
export function resolveAnalyte(
  { name, cas, fraction }: AnalyteCells,
  analytes: AnalyteIndex,
  log: FindingLog,
  placeOf: (role: 'analyte' | 'cas') => Place,
): ResolvedAnalyte | null {
  checkCas(cas, log, placeOf);
  const shown = name === '' ? cas : name;
  const subject = `${name}|${cas}`;
  if (shown === '') {
    log.raise('cell-missing', 'analyte', 'the row names no analyte', ASK, placeOf('analyte'));
    return null;
  }
  const resolved = analytes.resolve(name === '' ? null : name, cas === '' ? null : cas);
  switch (resolved.kind) {
    case 'found':
      return resolved;
    case 'unknown':
      log.raise(
        'analyte-unknown',
        subject,
        `"${shown}" is not a known analyte`,
        analyteRemedy(shown, resolved.suggestions),
        placeOf('analyte'),
      );
      return null;
    case 'ambiguous': {
      const settled = byFraction(name, fraction, analytes, resolved.candidates);
      if (settled !== null) return settled;
      log.raise(
        'analyte-ambiguous',
        subject,
        `"${shown}" could be ${resolved.candidates.map((item) => item.name).join(' or ')}`,
        'add the spelling as an alias of the right one in analytes.csv',
        placeOf('analyte'),
      );
      return null;
    }
    case 'conflict':
      log.raise(
        'analyte-conflict',
        subject,
        `the name says ${resolved.byName.name} and the CAS number ${resolved.byCas.name}`,
        'ask the lab which of the two it measured',
        placeOf('cas'),
      );
      return null;
    default:
      return resolved satisfies never;
  }
}

/** Exchange data name organic carbon and chlorine by the fraction column. */
function byFraction(
  name: string,
  fraction: string,
  analytes: AnalyteIndex,
  candidates: readonly Analyte[],
): ResolvedAnalyte | null {
  const word = /^(?:un)?filter|^free|^total|^dissolved/i.exec(fraction)?.[0]?.toLowerCase();
  if (word === undefined) return null;
  const kind = word === 'filter' ? 'dissolved' : word === 'unfilter' ? 'total' : word;
  const reading = analytes.resolve(`${kind} ${name}`, null);
  const isOne = reading.kind === 'found' && candidates.includes(reading.analyte);
  return isOne ? { analyte: reading.analyte, basis: reading.basis } : null;
}

const ASK = 'ask the lab for the export with the name of every analyte';

/** A CAS number is never repaired; one that is wrong is told and the name decides. */
function checkCas(cas: string, log: FindingLog, placeOf: (role: 'cas') => Place): void {
  if (cas === '') return;
  const reading = readCas(cas);
  if (reading.kind !== 'problem' || reading.problem === 'form') return;
  log.raise('cas-check-digit', cas, reading.message, reading.remedy, placeOf('cas'));
}
