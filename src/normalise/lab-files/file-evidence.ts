import { decimalEvidence } from '../lab-results/lab-decimal.ts';
import { type DateOrder, orderEvidence, readLabDate } from './lab-date.ts';
import type { RecordSource } from './lab-source.ts';
import type { LayoutPlan } from './layout-plan.ts';

/** What the cells of a file prove about its marks and dates. */
export interface FileEvidence {
  readonly decimal: '.' | ',' | null;
  readonly dateOrder: DateOrder | null;
  /** The first date that could be read in two orders, where nothing proves one. */
  readonly unclearDate: {
    readonly line: number;
    readonly column: number;
    readonly cell: string;
  } | null;
}

const FIGURE =
  /^[<>=≤≥~\s]*([-+\d.,' \u00a0\u202f]*\d(?:[eE][-+]?\d+)?)(?:\s*[A-Za-z*^†+/%µ\d ]*)?$/;

/**
 * Looks for the first cells that prove the decimal mark and the order of dates. The search ends as
 * soon as both are proven; a cell that contradicts them later is asked about where it stands.
 */
export function fileEvidence(records: RecordSource, plan: LayoutPlan): FileEvidence {
  const { columns, series } = plan;
  const figures = [columns.result, columns.mdl, columns.rl, columns.limit].concat(
    series.map(({ value }) => value),
    series.flatMap(({ beside }) => [beside.mdl, beside.rl]),
  );
  const numberColumns = figures.filter((index) => index !== undefined);
  const dateColumns = [columns.collected, columns.received, columns.analysed, columns.reported];
  const dates = dateColumns.filter((index) => index !== undefined);
  let decimal: '.' | ',' | null = null;
  let dateOrder: DateOrder | null = null;
  let unclear: FileEvidence['unclearDate'] = null;
  const plainDates = new Set<number>();
  let seen = 0;
  records((cells, line) => {
    seen += 1;
    if (seen <= plan.headerRow + (plan.unitsRow ? 1 : 0)) return true;
    for (const column of numberColumns) {
      if (decimal !== null) break;
      const figure = FIGURE.exec(cells[column] ?? '')?.[1]?.trim();
      if (figure !== undefined) decimal = decimalEvidence(figure.replace(/[\u00a0\u202f]/g, ' '));
    }
    for (const column of dates) {
      const cell = cells[column] ?? '';
      dateOrder ??= orderEvidence(cell);
      const reading = readLabDate(cell, null);
      if (reading.kind === 'unclear') unclear ??= { line, column, cell };
      if (reading.kind === 'date' && orderEvidence(cell) === null) plainDates.add(column);
    }
    return decimal === null || (dateOrder === null && plainDates.size < dates.length);
  });
  return { decimal, dateOrder, unclearDate: dateOrder === null ? unclear : null };
}
