import { type Place, place } from '../../findings/index.ts';

/** Makes the place of a cell of one lab file. */
export function placeMaker(
  path: string,
  header: readonly string[],
): (cells: readonly string[], line: number, column: number) => Place {
  return (cells, line, column) =>
    place({
      file: path,
      line,
      column: column + 1,
      field: header[column] ?? null,
      cell: cells[column] ?? null,
    });
}
