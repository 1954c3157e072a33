import { type Finding, type Place, place } from '../findings/index.ts';
import type { AnalyteIndex } from '../reference/index.ts';
import type { FileName } from './catalogue.ts';
import type { LabResult, ResultTable } from './results.ts';
import type { BenchRow } from './rows.ts';
import type { BenchSettings } from './settings.ts';

/** A file that was read, for the fingerprint and the provenance of every output. */
export interface InputFile {
  /** Relative to the bench, with forward slashes. */
  readonly path: string;
  readonly sha256: string;
  /** Data rows of a table; null for JSON. */
  readonly rows: number | null;
}

/** A recorded use of water: one file of `usage/`. */
export interface Recording {
  readonly scenario: string;
  readonly path: string;
  readonly rows: readonly BenchRow<'usage'>[];
}

type Tables = {
  readonly [F in Exclude<FileName, 'usage'>]: readonly BenchRow<F>[];
};

/** A bench, read and checked: immutable, and all that any analysis may look at. */
export interface Bench {
  readonly settings: BenchSettings;
  readonly tables: Tables;
  readonly recordings: readonly Recording[];
  readonly analytes: AnalyteIndex;
  readonly results: ResultTable;
  readonly inputs: readonly InputFile[];
  /** `sha256:` over the sorted lines `path\tsha256\n` of all inputs. */
  readonly fingerprint: string;
  readonly findings: readonly Finding[];
}

export type DeviceRow = BenchRow<'devices'>;
export type SampleRow = BenchRow<'samples'>;

/** The name of the state in which nothing is switched off. */
export const STANDARD = 'standard';

/** The built-in variant with every switchable flush rule off. */
export const FLUSH_OFF = 'flush-off';

/** The result at an index of the table. */
export function resultAt(table: ResultTable, index: number): LabResult {
  const result = table.distinct[table.result[index] ?? -1];
  if (result === undefined) throw new RangeError(`no result ${index}`);
  return result;
}

/** Where the result at an index stands: file, line, field and the cell itself. */
export function resultPlace(table: ResultTable, index: number): Place {
  const file = table.files[table.file[index] ?? -1];
  const field = table.field[index] ?? 0;
  return place({
    file: file?.path ?? null,
    line: table.line[index] ?? null,
    column: field + 1,
    field: file?.header[field] ?? null,
    cell: resultAt(table, index).text,
  });
}
