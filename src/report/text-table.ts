import { displayWidth } from './display-width.ts';
import { type FittedTable, fitColumns } from './fit-columns.ts';
import { printable } from './printable.ts';
import { PLAIN_STYLE, type Style } from './style.ts';
import type { View } from './view.ts';
import { wrapText } from './wrap-text.ts';

/** Columns between two table columns. */
const GAP = 2;
const NARROWEST = 20;

/**
 * Views as tables for a terminal: caption above, legend below, a blank line between views.
 *
 * Long cells wrap between words. A view wider than the terminal becomes several tables, each with
 * the columns in front that tell the rows apart; cells of right-aligned columns are never broken, so that no figure is
 * cut, and one that alone is wider than the terminal runs over.
 *
 * @param width columns of the terminal; below 20 counts as 20
 * @returns empty for no views; otherwise ends with a line break
 */
export function textTables(
  views: readonly View[],
  width: number,
  style: Style = PLAIN_STYLE,
): string {
  const usable = Math.max(Math.floor(width), NARROWEST);
  const paragraph = (text: string): string => wrapText(printable(text), usable).join('\n');
  const blocks = views.map((view) => {
    const caption = wrapText(printable(view.caption), usable).map(style.strong).join('\n');
    const tables =
      view.columns.length === 0
        ? []
        : fitColumns(view, usable, GAP).map((part) => drawn(part, style));
    const body = [...tables, ...(view.rows.length === 0 ? ['no rows'] : [])].join('\n\n');
    const legend = view.legend.map(paragraph).map(style.faint).join('\n');
    return [caption, body, legend].filter((text) => displayWidth(text) > 0).join('\n\n');
  });
  return blocks.length === 0 ? '' : `${blocks.join('\n\n\n')}\n`;
}

function drawn(table: FittedTable, style: Style): string {
  const heads = table.columns.map((column) => column.head);
  const rule = '─'.repeat(table.widths.reduce((sum, width) => sum + width + GAP, -GAP));
  const body = table.rows.flatMap((row) => rowLines(row, table));
  return [...rowLines(heads, table, style.strong), rule, ...body].join('\n');
}

const same = (text: string): string => text;

/** The lines of a row whose cells wrap, each without blanks at its end. */
function rowLines(
  cells: readonly string[],
  { columns, widths }: FittedTable,
  style: (text: string) => string = same,
): string[] {
  const wrapped = cells.map((cell, i) =>
    cell.split('\n').flatMap((line) => wrapText(line, widths[i] ?? NARROWEST)),
  );
  const height = Math.max(1, ...wrapped.map((lines) => lines.length));
  return Array.from({ length: height }, (_, n) =>
    wrapped
      .map((lines, i) => {
        const text = lines[n] ?? '';
        const blanks = ' '.repeat(Math.max(0, (widths[i] ?? 0) - displayWidth(text)));
        const shown = text === '' ? '' : style(text);
        return columns[i]?.align === 'right' ? blanks + shown : shown + blanks;
      })
      .join(' '.repeat(GAP))
      .trimEnd(),
  );
}
