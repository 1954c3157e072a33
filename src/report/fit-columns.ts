import { displayWidth } from './display-width.ts';
import { printable, printableLines } from './printable.ts';
import type { View, ViewColumn } from './view.ts';

/** A table that fits: its columns with their widths, and the cells ready to be drawn. */
export interface FittedTable {
  readonly columns: readonly ViewColumn[];
  readonly widths: readonly number[];
  readonly rows: readonly (readonly string[])[];
}

/** A text column is not squeezed below this while other columns can move to a further table. */
const COMFORTABLE = 24;
const MOST_KEYS = 3;

interface Need {
  /** Without breaking a word, or any cell of a right-aligned column. */
  readonly least: number;
  readonly comfortable: number;
  /** Without wrapping at all. */
  readonly natural: number;
}

/**
 * Splits a view into tables no wider than `width` and gives every column its width. Each table
 * starts with the first column, and with the next ones where it takes them to tell the rows apart. Width left over goes to the columns that wrap, in equal shares.
 *
 * @param gap blank columns between two table columns
 * @returns one table at least; one that is wider only where a single figure is
 * @throws {RangeError} a row has more cells than the view has columns
 */
export function fitColumns(view: View, width: number, gap: number): FittedTable[] {
  const heads = view.columns.map((column) => printable(column.head));
  const cells = view.rows.map((row) => {
    if (row.length > heads.length) {
      throw new RangeError(`${row.length} cells in ${heads.length} columns: ${view.caption}`);
    }
    return heads.map((_, i) => printableLines(row[i] ?? '').join('\n'));
  });
  const needs = view.columns.map((column, i) =>
    needOf(
      heads[i] ?? '',
      cells.map((row) => row[i] ?? ''),
      column.align === 'right',
    ),
  );
  return groups(needs, keyColumns(cells, needs, width), width, gap).map((group) => ({
    columns: group.map((i) => ({ head: heads[i] ?? '', align: view.columns[i]?.align ?? 'left' })),
    widths: widthsOf(
      group.map((i) => needs[i] ?? NOTHING),
      width,
      gap,
    ),
    rows: cells.map((row) => group.map((i) => row[i] ?? '')),
  }));
}

const NOTHING: Need = { least: 1, comfortable: 1, natural: 1 };

function needOf(head: string, cells: readonly string[], isFigure: boolean): Need {
  const lines = cells.flatMap((cell) => cell.split('\n'));
  const words = [head, ...(isFigure ? [] : lines)].flatMap((line) => line.split(' '));
  const widest = (texts: readonly string[]): number =>
    texts.reduce((most, text) => Math.max(most, displayWidth(text)), 1);
  const figures = isFigure ? widest(lines) : 1;
  const natural = Math.max(widest([head]), widest(lines));
  const least = Math.max(figures, isFigure ? widest(words) : Math.min(widest(words), COMFORTABLE));
  return {
    least,
    natural,
    comfortable: Math.max(least, isFigure ? least : Math.min(natural, COMFORTABLE)),
  };
}

/** Column numbers of each table: the key columns, then as many as fit. */
function groups(needs: readonly Need[], keys: number, width: number, gap: number): number[][] {
  const key = needs.slice(0, keys).map((_, i) => i);
  const base = key.reduce((sum, i) => {
    const need = needs[i] ?? NOTHING;
    return sum + Math.max(need.least, Math.min(need.comfortable, Math.floor(width / 3))) + gap;
  }, -gap);
  const tables: number[][] = [];
  let table = key;
  let used = base;
  for (let i = keys; i < needs.length; i += 1) {
    const more = gap + (needs[i] ?? NOTHING).comfortable;
    if (table.length > keys && used + more > width) {
      tables.push(table);
      table = key;
      used = base;
    }
    table = [...table, i];
    used += more;
  }
  return [...tables, table];
}

/**
 * How many columns from the left tell the rows apart, three at most; 1 where they do not or where
 * they would take more than half the width.
 */
function keyColumns(
  cells: readonly (readonly string[])[],
  needs: readonly Need[],
  width: number,
): number {
  let used = 0;
  for (let count = 1; count <= Math.min(MOST_KEYS, needs.length); count += 1) {
    used += (needs[count - 1] ?? NOTHING).least;
    if (count > 1 && used > width / 2) return 1;
    const seen = new Set(cells.map((row) => JSON.stringify(row.slice(0, count))));
    if (seen.size === cells.length) return count;
  }
  return 1;
}

function widthsOf(needs: readonly Need[], width: number, gap: number): number[] {
  const widths = needs.map((need) => need.least);
  let left = width - gap * (needs.length - 1) - widths.reduce((sum, each) => sum + each, 0);
  // One column of the terminal at a time to the narrowest column that still wraps.
  while (left > 0) {
    let chosen = -1;
    needs.forEach((need, i) => {
      const own = widths[i] ?? 0;
      if (own < need.natural && (chosen < 0 || own < (widths[chosen] ?? 0))) chosen = i;
    });
    if (chosen < 0) break;
    widths[chosen] = (widths[chosen] ?? 0) + 1;
    left -= 1;
  }
  return widths;
}
