import { type Finding, finding } from '../findings/index.ts';
import { cellPlace, type PlacedRow } from '../model/index.ts';
import type { Analyte, AnalyteIndex } from '../reference/index.ts';

/** The analyte a row of a bench file names by key, name or alias, or the finding that says why not. */
export function namedAnalyte(
  row: PlacedRow,
  name: string,
  analytes: AnalyteIndex,
): { readonly analyte: Analyte; readonly basis: string | null } | Finding {
  const known = analytes.byKey(name);
  if (known !== undefined) return { analyte: known, basis: null };
  const reading = analytes.resolve(name, null);
  if (reading.kind === 'found') return { analyte: reading.analyte, basis: reading.basis };
  const near = reading.kind === 'unknown' ? analytes.suggest(name) : [];
  return finding(
    reading.kind === 'ambiguous' ? 'analyte-ambiguous' : 'analyte-unknown',
    `"${name}" is not one analyte of the tables or of analytes.csv`,
    near.length === 0 ? 'name one analyte as the lab does' : `did you mean ${near.join(' or ')}?`,
    cellPlace(row, 'analyte'),
  );
}
