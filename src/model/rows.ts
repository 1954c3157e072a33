import { type Place, place } from '../findings/index.ts';
import type { CellsOf, FileName } from './catalogue.ts';

/** A file as records of text, before any meaning. */
export interface RawTable {
  /** Relative to the bench, with forward slashes. */
  readonly path: string;
  readonly header: readonly string[];
  readonly headerLine: number;
  readonly rows: readonly RawRow[];
}

export interface RawRow {
  /** The line at which the record starts. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** The text of a file and where each catalogue column stands in it; shared by all its rows. */
export interface TableSource {
  readonly path: string;
  readonly header: readonly string[];
  /** Catalogue column to 0-based field index. */
  readonly fieldIndex: ReadonlyMap<string, number>;
}

/** One row of a bench file with its place. */
export interface BenchRow<F extends FileName> {
  readonly values: CellsOf<F>;
  readonly line: number;
  readonly raw: readonly string[];
  readonly source: TableSource;
}

/** Any row: what is needed to say where it stands. */
export type PlacedRow = Pick<BenchRow<FileName>, 'line' | 'raw' | 'source'>;

/** The place of one cell of a row; the row itself when no field is given or the field is absent. */
export function cellPlace(row: PlacedRow, field?: string): Place {
  const index = field === undefined ? undefined : row.source.fieldIndex.get(field);
  if (index === undefined) return place({ file: row.source.path, line: row.line });
  return place({
    file: row.source.path,
    line: row.line,
    column: index + 1,
    field: row.source.header[index] ?? null,
    cell: row.raw[index] ?? null,
  });
}
