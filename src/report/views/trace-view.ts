import { placeText } from '../../findings/index.ts';
import type { TraceRow } from '../../model/index.ts';
import { plainNumber } from '../format-number.ts';
import type { View } from '../view.ts';

/** A trace as an indented list: each step with its value, its formula and its place. */
export function traceView(rows: readonly TraceRow[]): View {
  return {
    caption: rows[0]?.what ?? 'Nothing to trace',
    columns: [
      { head: 'Step', align: 'left' },
      { head: 'Value', align: 'right' },
      { head: 'Place', align: 'left' },
    ],
    rows: rows.map((row) => [
      `${'· '.repeat(row.depth)}${row.what}${row.formula === null ? '' : ` [${row.formula}]`}`,
      row.value === null
        ? ''
        : `${plainNumber(row.value)}${row.unit === null ? '' : ` ${row.unit}`}`,
      placeText(row.place),
    ]),
    legend: [
      'In brackets: the formula, or how the cell was read.',
      'A place is file:line:column. A step explains the one above it with one dot less.',
    ],
  };
}
