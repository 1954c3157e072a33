import type { ViewColumn } from '../view.ts';
import { blocks, bullets, joined, markup, type Piece, quoted } from './piece.ts';

export interface NotesTable {
  /** States the finding. */
  readonly caption: Piece;
  readonly columns: readonly (Omit<ViewColumn, 'head'> & { readonly head: Piece | string })[];
  readonly rows: readonly (readonly (Piece | string)[])[];
  readonly legend?: readonly Piece[];
}

/** A Markdown table: caption in bold, legend as a list. Plain strings are quoted from the bench. */
export function tablePiece(table: NotesTable): Piece {
  const line = (cells: readonly (Piece | string)[]): Piece => {
    const row = joined(
      cells.map((cell) => spaced(typeof cell === 'string' ? quoted(cell) : cell)),
      '|',
    );
    return { ...row, markdown: `|${row.markdown}|` };
  };
  const marks = table.columns.map(({ align }) => (align === 'right' ? '---:' : '---'));
  const body = [
    line(table.columns.map((column) => column.head)),
    markup(`| ${marks.join(' | ')} |`),
    ...table.rows.map(line),
  ];
  return blocks([
    { ...table.caption, markdown: `**${table.caption.markdown}**` },
    joined(body, '\n'),
    bullets(table.legend ?? []),
  ]);
}

function spaced(cell: Piece): Piece {
  return { ...cell, markdown: cell.markdown === '' ? ' ' : ` ${cell.markdown} ` };
}

export const left = (head: Piece | string) => ({ head, align: 'left' }) as const;
export const right = (head: Piece | string) => ({ head, align: 'right' }) as const;
