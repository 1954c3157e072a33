import { displayWidth } from './display-width.ts';
import { type FittedTable, fitColumns } from './fit-columns.ts';
import { printable } from './printable.ts';
import { PLAIN_STYLE, type Style } from './style.ts';
import type { View } from './view.ts';
import { wrapText } from './wrap-text.ts';

/** Columns between two table columns. */
const GAP = 2;
const NARROWEST = 20;

/** cli-table3 with no frame: a rule under the head, blanks between columns. */
const FRAMELESS = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '─',
  'mid-mid': '─'.repeat(GAP),
  right: '',
  'right-mid': '',
  middle: ' '.repeat(GAP),
};

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
export async function textTables(
  views: readonly View[],
  width: number,
  style: Style = PLAIN_STYLE,
): Promise<string> {
  const { default: Table } = await import('cli-table3');
  const usable = Math.max(Math.floor(width), NARROWEST);

  const draw = (part: FittedTable): string => {
    const cellText = (text: string, column: number): string =>
      wrapText(text, part.widths[column] ?? NARROWEST).join('\n');
    const heads = part.columns.map((column, i) =>
      wrapText(column.head, part.widths[i] ?? NARROWEST)
        .map(style.strong)
        .join('\n'),
    );
    const table = new Table({
      head: heads,
      chars: FRAMELESS,
      colWidths: [...part.widths],
      colAligns: part.columns.map((column) => column.align),
      style: { 'padding-left': 0, 'padding-right': 0, head: [], border: [], compact: true },
    });
    for (const row of part.rows) {
      table.push(
        row.map((cell, i) =>
          cell
            .split('\n')
            .map((line) => cellText(line, i))
            .join('\n'),
        ),
      );
    }
    return table.toString().replace(/ +$/gm, '');
  };

  const paragraph = (text: string): string => wrapText(printable(text), usable).join('\n');
  const blocks = views.map((view) => {
    const caption = wrapText(printable(view.caption), usable).map(style.strong).join('\n');
    const tables =
      view.columns.length === 0 ? [] : fitColumns(view, usable, GAP).map((part) => draw(part));
    const body = [...tables, ...(view.rows.length === 0 ? ['no rows'] : [])].join('\n\n');
    const legend = view.legend.map(paragraph).map(style.faint).join('\n');
    return [caption, body, legend].filter((text) => displayWidth(text) > 0).join('\n\n');
  });
  return blocks.length === 0 ? '' : `${blocks.join('\n\n\n')}\n`;
}
