import type { AnalyteIndex } from '../../reference/index.ts';
import { type ColumnTitle, readColumnTitle } from './column-title.ts';
import { normalHeader } from './header-roles.ts';
import type { Series, SeriesRole } from './layout-plan.ts';

export interface WideColumns {
  readonly series: readonly Series[];
  /** Columns that carry a unit and no known analyte. */
  readonly unknown: readonly { readonly column: number; readonly name: string }[];
  /** Columns nobody reads: verdicts, places, comments. */
  readonly unread: readonly number[];
}

/**
 * The columns of figures of a file with analytes across, and the columns beside each.
 *
 * A companion that names its analyte belongs to it wherever it stands. One that does not belongs to
 * the figures before it, or behind it where the first companion stands before the first figures.
 */
export function wideColumns(
  header: readonly string[],
  units: readonly string[] | null,
  analytes: AnalyteIndex,
): WideColumns {
  const titles = header.map((text) => readColumnTitle(text, analytes));
  const firstValue = titles.findIndex(({ kind }) => kind === 'analyte');
  const firstBeside = titles.findIndex((title) => title.kind === 'beside' && title.of === null);
  const leads = firstBeside !== -1 && firstBeside < firstValue;
  const series = titles.flatMap((title, column): Series[] =>
    title.kind === 'analyte'
      ? [
          {
            value: column,
            analyte: title.name,
            sample: null,
            unit: title.unit ?? unitBelow(units, column),
            basis: null,
            beside: companions(titles, column, title.name, leads),
          },
        ]
      : [],
  );
  const unknown = titles.flatMap((title, column) =>
    title.kind === 'unknown-analyte' ? [{ column, name: title.name }] : [],
  );
  const unread = titles.flatMap((title, column) =>
    title.kind === 'other' || title.kind === 'verdict' ? [column] : [],
  );
  return { series, unknown, unread: unread.filter((column) => header[column] !== '') };
}

function unitBelow(units: readonly string[] | null, column: number): string | null {
  const text = (units?.[column] ?? '').trim();
  return text === '' ? null : text;
}

function companions(
  titles: readonly ColumnTitle[],
  column: number,
  name: string,
  leads: boolean,
): Partial<Record<SeriesRole, number>> {
  const beside: Partial<Record<SeriesRole, number>> = {};
  for (const [index, title] of titles.entries()) {
    if (title.kind === 'beside' && title.of === normalHeader(name)) beside[title.role] ??= index;
  }
  const step = leads ? -1 : 1;
  for (let at = column + step; at >= 0 && at < titles.length; at += step) {
    const title = titles[at];
    if (title?.kind === 'verdict') continue;
    if (title?.kind !== 'beside' || title.of !== null) break;
    beside[title.role] ??= at;
  }
  return beside;
}

/** Columns of figures of a file with samples across: all that have no role and no companion's head. */
export function sampleColumns(
  header: readonly string[],
  taken: ReadonlySet<number>,
  analytes: AnalyteIndex,
): Series[] {
  const titles = header.map((text): ColumnTitle => {
    const title = readColumnTitle(text, analytes);
    return title.kind === 'beside' ? title : { kind: 'other' };
  });
  return header.flatMap((text, column): Series[] =>
    taken.has(column) || titles[column]?.kind !== 'other' || text.trim() === ''
      ? []
      : [
          {
            value: column,
            analyte: null,
            sample: text.trim(),
            unit: null,
            basis: null,
            beside: companions(titles, column, '', false),
          },
        ],
  );
}
