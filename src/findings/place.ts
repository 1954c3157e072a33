/**
 * Where a figure or a finding comes from.
 *
 * `line` is the 1-based line at which the record starts, `column` the 1-based number of the field,
 * `field` the header of that field, `cell` what stood there (at most 80 characters).
 * A part that does not apply is null.
 */
export interface Place {
  readonly file: string | null;
  readonly line: number | null;
  readonly column: number | null;
  readonly field: string | null;
  readonly cell: string | null;
}

const CELL_LIMIT = 80;

/** A place; parts left out are null, and the cell is cut to 80 characters. */
export function place(parts: Partial<Place>): Place {
  const cell = parts.cell ?? null;
  return {
    file: parts.file ?? null,
    line: parts.line ?? null,
    column: parts.column ?? null,
    field: parts.field ?? null,
    cell:
      cell !== null && cell.length > CELL_LIMIT
        ? `${Array.from(cell)
            .slice(0, CELL_LIMIT - 1)
            .join('')}…`
        : cell,
  };
}

/** The place of something that has no place in a file. */
export const NOWHERE: Place = place({});

/** `file:line:column`, leaving out what is unknown; empty when nothing is known. */
export function placeText(at: Place): string {
  if (at.file === null) return '';
  if (at.line === null) return at.file;
  return at.column === null ? `${at.file}:${at.line}` : `${at.file}:${at.line}:${at.column}`;
}
