import type { LabRole } from '../../model/index.ts';
import type { LayoutPlan, Series } from './layout-plan.ts';

/** One figure of a lab file with the cells that belong to it, in whatever layout. */
export interface LabRow {
  readonly cells: readonly string[];
  readonly line: number;
  readonly series: Series | null;
  /** The trimmed cell of a role; empty where the layout has none. */
  readonly cell: (role: LabRole) => string;
  /** The field index of a role, or of the figure where the layout has none. */
  readonly column: (role: LabRole) => number;
}

/** Roles that decide how a figure is read; rows that agree in them share one reading. */
const JUDGED: readonly LabRole[] = [
  'analyte',
  'cas',
  'result',
  'sign',
  'unit',
  'mdl',
  'rl',
  'limit',
  'limitType',
  'limitUnit',
  'qualifier',
  'basis',
  'condition',
  'uncertainty',
  'fraction',
  'dilution',
  'method',
  'reported',
  'sampleKind',
  'matrix',
];

/** Makes the rows of one layout; where cells stand is found out once. */
export class RowFactory {
  readonly #plan: LayoutPlan;
  readonly #keyColumns: readonly number[];
  readonly #figures: readonly (Series | null)[];

  constructor(plan: LayoutPlan) {
    this.#plan = plan;
    const columns = JUDGED.flatMap((role) => plan.columns[role] ?? []);
    this.#keyColumns = [...new Set([...columns, ...plan.filters.map(({ column }) => column)])];
    this.#figures = plan.series.length > 0 ? plan.series : [null];
  }

  /** The figures of a record: null stands for the record itself. */
  get figures(): readonly (Series | null)[] {
    return this.#figures;
  }

  row(cells: readonly string[], line: number, series: Series | null): LabRow {
    const { columns, constants, sampleFrom } = this.#plan;
    const column = (role: LabRole): number | undefined =>
      series === null ? columns[role] : (seriesColumn(series, role) ?? columns[role]);
    const figure = series?.value ?? columns.result ?? 0;
    return {
      cells,
      line,
      series,
      cell: (role) => {
        const index = column(role);
        if (role === 'unit' && series?.unit) return series.unit;
        if (role === 'analyte' && series?.analyte) return series.analyte;
        if (role === 'labSample' && series?.sample) return series.sample;
        if (role === 'basis' && series?.basis) return series.basis;
        if (role === 'labSample' && sampleFrom.length > 0) {
          return sampleFrom.map((each) => (cells[each] ?? '').trim()).join(' ');
        }
        if (index === undefined) return constants[role] ?? '';
        const cell = (cells[index] ?? '').trim();
        return isSampleRole(role) && NO_SAMPLE.test(cell) ? '' : cell;
      },
      column: (role) => column(role) ?? figure,
    };
  }

  /** Equal for two figures exactly when every cell that decides their reading is equal. */
  keyOf(cells: readonly string[], series: Series | null): string {
    let key = series === null ? '' : String(series.value);
    for (const index of this.#keyColumns) key += `\u0001${cells[index] ?? ''}`;
    if (series === null) return key;
    key += `\u0002${cells[series.value] ?? ''}`;
    for (const index of Object.values(series.beside)) key += `\u0001${cells[index] ?? ''}`;
    return key;
  }
}

/** What stands where a sample has no number. */
const NO_SAMPLE = /^(?:n\/?a|none|null|-+)$/i;

function isSampleRole(role: LabRole): boolean {
  return role === 'labSample' || role === 'clientSample';
}

function seriesColumn(series: Series, role: LabRole): number | undefined {
  switch (role) {
    case 'result':
      return series.value;
    case 'sign':
    case 'qualifier':
    case 'mdl':
    case 'rl':
      return series.beside[role];
    default:
      return undefined;
  }
}
