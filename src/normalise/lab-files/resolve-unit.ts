import type { FindingCode, Place } from '../../findings/index.ts';
import {
  type Analyte,
  readUnit,
  type Unit,
  type UnitReading,
  unitNamed,
} from '../../reference/index.ts';
import type { FindingLog } from './finding-log.ts';
import { unitMissingRemedy, unitRemedy } from './lab-remedies.ts';

/** Dimensions of the units of the bench, never of a concentration, whose letters (J, F, L) a lab uses as qualifiers and never for a result. */
export const BENCH_DIMENSIONS: ReadonlySet<string> = new Set([
  'volume',
  'mass',
  'time',
  'flow',
  'pressure',
  'power',
  'energy',
]);

/** True when a text behind a figure is a unit rather than qualifier letters. */
export function isLabUnit(text: string): boolean {
  if (text === '%') return true;
  const isWord = text.length >= 3 || text.includes('/');
  const reading = readUnit(text, {});
  if (reading.kind === 'problem') return isWord && reading.problem !== 'unknown';
  return isWord || !BENCH_DIMENSIONS.has(reading.unit.dimension);
}

export type UnitOutcome =
  | { readonly kind: 'unit'; readonly unit: Unit }
  | { readonly kind: 'left-out'; readonly reason: string }
  | { readonly kind: 'asked' };

const ASKED = { kind: 'asked' } as const;

const CODES = {
  unknown: 'unit-unknown',
  ambiguous: 'unit-ambiguous',
  refused: 'unit-refused',
  'measures-missing': 'measures-missing',
} as const satisfies Record<string, FindingCode>;

export interface UnitCells {
  readonly column: string;
  readonly cell: string | null;
  readonly result: string;
}

/**
 * The unit of a figure: that of its cell and that of its column have to agree. What a file calls
 * ppm is mg/L only where its sidecar says so. Recoveries and solids are no water and are left out.
 */
export function resolveUnit(
  cells: UnitCells,
  analyte: Analyte,
  aliases: ReadonlyMap<string, string>,
  log: FindingLog,
  at: Place,
): UnitOutcome {
  const column = read(cells.column, analyte, aliases, log, at);
  const inCell = cells.cell === null ? null : read(cells.cell, analyte, aliases, log, at);
  const isBlank = cells.column === '' && cells.cell === null;
  if (isBlank && column.kind === 'problem') {
    log.raise('unit-missing', 'blank', 'the result has no unit', unitMissingRemedy(at), at);
    return ASKED;
  }
  const reading = cells.column === '' && inCell !== null ? inCell : column;
  const refused = [column, inCell].find((each) => isOther(each));
  if (refused !== undefined) return { kind: 'left-out', reason: 'a solid or air, not water' };
  for (const [each, spelling] of [
    [reading, cells.column === '' ? (cells.cell ?? '') : cells.column],
    [inCell, cells.cell ?? ''],
  ] as const) {
    if (each?.kind !== 'problem') continue;
    log.raise(CODES[each.problem], spelling, each.message, unitRemedy(spelling, each, at), at);
    return ASKED;
  }
  if (reading.kind === 'problem') return ASKED;
  if (inCell?.kind === 'unit' && inCell.unit.name !== reading.unit.name) {
    log.raise(
      'unit-clash',
      `${cells.cell}|${cells.column}`,
      `the cell is in ${inCell.unit.name} and the unit column says ${reading.unit.name}`,
      'ask the lab which of the two holds',
      at,
    );
    return ASKED;
  }
  const unit = reading.unit;
  if (unit.dimension === 'recovery') return { kind: 'left-out', reason: 'recovery' };
  if (unit.dimension === 'presence') return presenceUnit(unit, cells, analyte, log, at);
  return { kind: 'unit', unit };
}

function read(
  spelling: string,
  analyte: Analyte,
  aliases: ReadonlyMap<string, string>,
  log: FindingLog,
  at: Place,
): UnitReading {
  const alias = aliases.get(spelling);
  if (alias !== undefined) {
    log.raise(
      'unit-alias',
      spelling,
      `"${spelling}" was read as ${alias}, as the sidecar says`,
      'none needed',
      at,
    );
  }
  const dimension = unitNamed(analyte.unit)?.dimension;
  return readUnit(alias ?? spelling, dimension === undefined ? {} : { dimension });
}

function isOther(reading: UnitReading | null): boolean {
  return reading?.kind === 'problem' && reading.problem === 'refused';
}

/** Present or absent is a statement about a volume, which has to be stated. */
function presenceUnit(
  unit: Unit,
  cells: UnitCells,
  analyte: Analyte,
  log: FindingLog,
  at: Place,
): UnitOutcome {
  const own = unitNamed(analyte.unit);
  const isPer100 = /100 ?ml/i.test(`${unit.spelling} ${cells.result}`);
  if (own !== undefined && isPer100 && /\/100mL$/.test(own.name))
    return { kind: 'unit', unit: own };
  log.raise(
    'unit-missing',
    `presence|${unit.spelling}`,
    `"${unit.spelling}" does not say in which volume was looked`,
    'name it in the sidecar under unit_aliases, as "P/A per 100mL"',
    at,
  );
  return ASKED;
}
