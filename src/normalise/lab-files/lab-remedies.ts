import type { Place } from '../../findings/index.ts';
import type { Analyte, ConversionProblem, UnitReading } from '../../reference/index.ts';

/**
 * What to do about a cell of a lab file. The file itself stays untouched, so what it means is said
 * beside it: in its sidecar, in analytes.csv, or by the lab.
 */

/** The sidecar of the file of a place: `lab/july.layout.json`. */
function sidecarOf({ file }: Place): string {
  return `${(file ?? 'lab/NAME.csv').replace(/\.[^./]*$/, '')}.layout.json`;
}

/** The command that writes the sidecar of a file of a bench; no command does outside of one. */
export const STARTS = '`check --write-layouts` starts it';

/** A unit that cannot be read. A sidecar renames units and never converts. */
export function unitRemedy(
  spelling: string,
  reading: Extract<UnitReading, { kind: 'problem' }>,
  at: Place,
): string {
  if (reading.problem === 'measures-missing') return reading.remedy;
  if (/convert/.test(reading.remedy)) {
    return 'ask the lab for an export with the converted figure: a sidecar renames units and never converts';
  }
  const alias = JSON.stringify({ [spelling]: 'mg/L' });
  return (
    `ask the lab what it means, and say it in ${sidecarOf(at)} (${STARTS}): ` +
    `"unit_aliases": ${alias}, with the right unit; the lab file stays as it is`
  );
}

/** A figure without any unit. */
export function unitMissingRemedy(at: Place): string {
  return (
    'ask the lab for the export with units; where one unit holds for the whole file, ' +
    `say it in ${sidecarOf(at)} (${STARTS}) under "constants"`
  );
}

/** A name that is no analyte. */
export function analyteRemedy(shown: string, suggestions: readonly string[]): string {
  const add =
    'add it to analytes.csv, with its unit or as an alias of an analyte; the lab file stays as it is';
  return suggestions.length === 0
    ? add
    : `did you mean ${suggestions.map((word) => `"${word}"`).join(' or ')}? ` +
        `add "${shown}" as an alias in analytes.csv; the lab file stays as it is`;
}

/** A unit that cannot become that of the analyte. */
export function conversionRemedy(
  analyte: Analyte,
  { problem, remedy }: ConversionProblem,
  at: Place,
): string {
  const [basis] = analyte.bases;
  if (problem === 'basis-unstated' && basis !== undefined) {
    const example = JSON.stringify({ [analyte.key]: basis.basis });
    return (
      `ask the lab which it is, and say it in ${sidecarOf(at)} (${STARTS}): "basis": ${example}, ` +
      'with the right one; the lab file stays as it is'
    );
  }
  return problem === 'basis-unstated' ? `ask the lab: ${remedy}` : remedy;
}
