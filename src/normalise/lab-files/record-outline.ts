import type { RecordSource } from './lab-source.ts';
import type { LayoutPlan } from './layout-plan.ts';

/** What a record of a lab file is before its cells are looked at one by one. */
export type RecordKind = 'before' | 'blank' | 'row' | 'ragged' | 'text line' | 'footer';

export interface RecordOutline {
  /** @param index number of the record, 1 is the first */
  readonly kindOf: (index: number, cells: readonly string[]) => RecordKind;
}

const FOOTER =
  /^(?:totals?:?|sum:?|average:?|mean:?|end of (?:report|file|data)\b.*|page \d.*|notes?(?::.*)?|legend.*|key:.*|signed.*|signature.*|(?:approved|reviewed|reported) by.*)$/i;

/**
 * Tells preamble, rows and footer apart.
 *
 * A record with one filled cell is a line of text: a heading, a note, an end mark. What stands
 * behind the last figure is the footer. A record of another width is ragged elsewhere, since a cell
 * could be read under the wrong header. Blank cells behind the last header carry nothing.
 */
export function recordOutline(records: RecordSource, plan: LayoutPlan): RecordOutline {
  const width = lastFilled(plan.header) + 1;
  const skipped = plan.headerRow + (plan.unitsRow ? 1 : 0);
  const end = endOfRows(records, plan, skipped, width);
  return {
    kindOf: (index, cells) => {
      if (index <= skipped) return 'before';
      if (index <= end && cells.length === plan.header.length && isDense(cells)) return 'row';
      const filled = cells.filter((cell) => cell.trim() !== '').length;
      if (filled === 0) return 'blank';
      const isRow = fits(cells, width);
      if (index > end) return isRow && filled >= 3 && !isFooter(cells) ? 'row' : 'footer';
      if (filled === 1 && width > 1) return 'text line';
      return isRow ? 'row' : 'ragged';
    },
  };
}

/** Most rows have their first two cells filled, which settles the matter at once. */
function isDense(cells: readonly string[]): boolean {
  return (cells[0] ?? '').trim() !== '' && (cells[1] ?? '').trim() !== '';
}

function fits(cells: readonly string[], width: number): boolean {
  return cells.length >= width && lastFilled(cells) < width;
}

function lastFilled(cells: readonly string[]): number {
  for (let at = cells.length - 1; at >= 0; at -= 1) if ((cells[at] ?? '').trim() !== '') return at;
  return -1;
}

function isFooter(cells: readonly string[]): boolean {
  return FOOTER.test((cells[0] ?? '').trim());
}

/** The last record with a figure, or too wide for a footer; what follows it is the footer. */
function endOfRows(
  records: RecordSource,
  plan: LayoutPlan,
  skipped: number,
  width: number,
): number {
  const { result, sign, condition } = plan.columns;
  const figures = [result, sign, condition, ...plan.series.map(({ value }) => value)].filter(
    (column) => column !== undefined,
  );
  let index = 0;
  let last = skipped;
  records((cells) => {
    index += 1;
    if (index <= skipped || isFooter(cells)) return;
    if (fits(cells, width)) {
      const hasFigure = figures.some((column) => (cells[column] ?? '').trim() !== '');
      if (hasFigure || figures.length === 0) last = index;
      return;
    }
    if (cells.filter((cell) => cell.trim() !== '').length >= 3) last = index;
  });
  return plan.skipEnd > 0 ? Math.min(last, index - plan.skipEnd) : last;
}
