import type {
  LabLayoutSettings,
  LabRole,
  LetterMeaning,
  QualifierList,
} from '../../model/index.ts';
import type { NumberMarks } from '../lab-results/lab-decimal.ts';
import type { DateOrder } from './lab-date.ts';

/** One column of figures of a wide file, with the columns that belong to it. */
export interface Series {
  readonly value: number;
  readonly analyte: string | null;
  readonly sample: string | null;
  readonly unit: string | null;
  readonly basis: string | null;
  readonly beside: Readonly<Partial<Record<SeriesRole, number>>>;
}

export type SeriesRole = 'sign' | 'qualifier' | 'mdl' | 'rl';

export type Shape = LabLayoutSettings['layout'];

/** Everything about how one lab file is read, wherever it came from. */
export interface LayoutPlan {
  readonly shape: Shape;
  readonly delimiter: string;
  /** Number of the header among the records, 1 is the first. */
  readonly headerRow: number;
  readonly unitsRow: boolean;
  readonly header: readonly string[];
  readonly skipEnd: number;
  readonly columns: Readonly<Partial<Record<LabRole, number>>>;
  readonly series: readonly Series[];
  readonly constants: Readonly<Partial<Record<LabRole, string>>>;
  readonly filters: readonly RowFilterRule[];
  readonly aliases: ReadonlyMap<string, string>;
  /** Columns whose cells, joined by blanks, name the sample; empty where a role does. */
  readonly sampleFrom: readonly number[];
  readonly sampleList: SampleListJoin | null;
  readonly loneLimit: 'reporting' | 'detection';
  readonly notDetected: 'reporting' | 'detection' | 'not-tested' | null;
  readonly qualifierList: QualifierList | null;
  readonly letters: Readonly<Record<string, LetterMeaning>>;
  readonly sentinels: ReadonlySet<string>;
  readonly countableMaximum: number | null;
  readonly coverageFactor: number | null;
  readonly basis: Readonly<Record<string, string>>;
  readonly unitAliases: ReadonlyMap<string, string>;
  readonly marks: NumberMarks;
  readonly dateOrder: DateOrder | null;
  readonly timeZone: string | null;
  readonly preferMethods: readonly string[];
  readonly preferFraction: 'total' | 'dissolved';
}

export interface RowFilterRule {
  readonly column: number;
  readonly keep: ReadonlySet<string> | null;
  readonly leaveOut: ReadonlySet<string> | null;
  readonly reason: string;
}

export interface SampleListJoin {
  readonly file: string;
  readonly number: string | number;
  readonly name: string | number;
}

/** What a file says of itself, before any sidecar. */
export const PLAIN_PLAN = {
  unitsRow: false,
  skipEnd: 0,
  columns: {},
  series: [],
  constants: {},
  filters: [],
  aliases: new Map(),
  sampleFrom: [],
  sampleList: null,
  loneLimit: 'reporting',
  notDetected: null,
  qualifierList: null,
  letters: {},
  sentinels: new Set<string>(),
  countableMaximum: null,
  coverageFactor: null,
  basis: {},
  unitAliases: new Map(),
  marks: { decimal: null, thousands: null },
  dateOrder: null,
  timeZone: null,
  preferMethods: [],
  preferFraction: 'total',
} as const satisfies Partial<LayoutPlan>;

/** The layout in words, as `check` shows it. */
export function layoutWords(plan: LayoutPlan): string {
  switch (plan.shape) {
    case 'long':
      if (plan.columns.condition !== undefined) return 'long, condition column';
      return plan.columns.sign === undefined ? 'long, result text' : 'long, sign column';
    case 'analytes-across':
    case 'samples-across': {
      const words = plan.shape === 'analytes-across' ? 'analytes across' : 'samples across';
      const isInterleaved = plan.series.some(({ beside }) => Object.keys(beside).length > 0);
      return isInterleaved ? `${words}, interleaved` : words;
    }
    case 'sample-list':
      return 'sample list';
    default:
      return plan.shape satisfies never;
  }
}
