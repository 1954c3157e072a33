import { type Finding, finding, place } from '../../findings/index.ts';
import {
  type LabLayoutSettings,
  type LabRole,
  type LabRoleKey,
  type LayoutColumn,
  roleOfKey,
} from '../../model/index.ts';
import { fileEvidence } from './file-evidence.ts';
import type { LabSource } from './lab-source.ts';
import { type LayoutPlan, PLAIN_PLAN, type Series, type SeriesRole } from './layout-plan.ts';
import { missingRoles } from './pick-columns.ts';
import { emptyFile, type LayoutReading, withSoleSample } from './propose-layout.ts';

/**
 * The layout a sidecar states. It rules: nothing is concluded that it says otherwise, and a file
 * with another header than the one it was made for is refused.
 * @throws {BenchError} file-empty
 */
export function layoutOfSidecar(source: LabSource, settings: LabLayoutSettings): LayoutReading {
  const text = source.open(settings.encoding ?? null, settings.delimiter);
  let header: readonly string[] = [];
  let headerLine = 0;
  let count = 0;
  text.records((cells, line) => {
    count += 1;
    if (count < settings.header_row) return true;
    header = cells.map((cell) => cell.trim());
    headerLine = line;
    return false;
  });
  if (count === 0) throw emptyFile(source.path);
  const file = source.sidecarPath ?? source.path;
  const columns = new ColumnNames(header, file);
  const plan = withSoleSample(planOf(settings, header, columns), source.soleSample);
  const changed = changedHeader(source.path, settings.header, header, headerLine);
  const findings = [
    ...changed,
    ...(changed.length === 0 ? columns.findings : []),
    ...(changed.length === 0 ? missingRoles(plan, place({ file })) : []),
    ...(settings.questions ?? []).map((question) => openQuestion(question, file)),
  ];
  const isCertain = findings.length === 0;
  if (!isCertain) return { text, plan, headerLine, isCertain, findings };
  const evidence = fileEvidence(text.records, plan);
  const decided: LayoutPlan = {
    ...plan,
    marks: { ...plan.marks, decimal: plan.marks.decimal ?? evidence.decimal },
    dateOrder: plan.dateOrder ?? evidence.dateOrder,
  };
  const date = decided.dateOrder === null ? evidence.unclearDate : null;
  const doubts =
    date === null
      ? []
      : [
          finding(
            'date-order-unclear',
            `"${date.cell.trim()}" could be day first or month first, and no date of the file tells`,
            'set date_order in the sidecar',
            place({ file: source.path, line: date.line, column: date.column + 1, cell: date.cell }),
          ),
        ];
  return { text, plan: decided, headerLine, isCertain, findings: doubts };
}

function planOf(
  settings: LabLayoutSettings,
  header: readonly string[],
  columns: ColumnNames,
): LayoutPlan {
  return {
    ...PLAIN_PLAN,
    shape: settings.layout,
    delimiter: settings.delimiter,
    headerRow: settings.header_row,
    unitsRow: settings.units_row ?? false,
    header,
    skipEnd: settings.skip_end ?? 0,
    columns: columns.ofRoles(settings.columns),
    series: (settings.series ?? []).flatMap((item) => seriesOf(item, columns)),
    constants: byRole(settings.constants ?? {}),
    filters: (settings.rows ?? []).flatMap((rule) => {
      const column = columns.indexOf(rule.column);
      if (column === null) return [];
      const keep = rule.keep === undefined ? null : new Set(rule.keep);
      const leaveOut = rule.leave_out === undefined ? null : new Set(rule.leave_out);
      const reason = rule.reason ?? `left out by "${String(rule.column)}"`;
      return [{ column, keep, leaveOut, reason }];
    }),
    aliases: new Map(Object.entries(settings.samples ?? {})),
    sampleFrom: (settings.sample_from ?? []).flatMap((item) => columns.indexOf(item) ?? []),
    sampleList: settings.sample_list ?? null,
    loneLimit: settings.lone_limit ?? 'reporting',
    notDetected: settings.not_detected ?? null,
    qualifierList: settings.qualifier_list ?? null,
    letters: settings.letters ?? {},
    sentinels: new Set(settings.sentinels ?? []),
    countableMaximum: settings.countable_maximum ?? null,
    coverageFactor: settings.coverage_factor ?? null,
    basis: settings.basis ?? {},
    unitAliases: new Map(Object.entries(settings.unit_aliases ?? {})),
    marks: { decimal: settings.decimal_mark, thousands: settings.thousands_mark ?? null },
    dateOrder: settings.date_order ?? null,
    timeZone: settings.time_zone ?? null,
    preferMethods: settings.prefer_methods ?? [],
    preferFraction: settings.prefer_fraction ?? 'total',
  };
}

function seriesOf(
  item: NonNullable<LabLayoutSettings['series']>[number],
  columns: ColumnNames,
): Series[] {
  const value = columns.indexOf(item.column);
  if (value === null) return [];
  const beside: Partial<Record<SeriesRole, number>> = {};
  for (const role of ['sign', 'qualifier', 'mdl', 'rl'] as const) {
    const column = item[role] === undefined ? null : columns.indexOf(item[role]);
    if (column !== null) beside[role] = column;
  }
  return [
    {
      value,
      analyte: item.analyte ?? null,
      sample: item.sample ?? null,
      unit: item.unit ?? null,
      basis: item.basis ?? null,
      beside,
    },
  ];
}

function byRole(
  constants: Readonly<Partial<Record<LabRoleKey, string>>>,
): Partial<Record<LabRole, string>> {
  const entries = Object.entries(constants) as [LabRoleKey, string][];
  return Object.fromEntries(entries.map(([key, text]) => [roleOfKey(key), text]));
}

/** Finds the columns a sidecar names, and says which are not there. */
class ColumnNames {
  readonly findings: Finding[] = [];
  readonly #header: readonly string[];
  readonly #file: string;

  constructor(header: readonly string[], file: string) {
    this.#header = header;
    this.#file = file;
  }

  indexOf(column: LayoutColumn): number | null {
    if (typeof column === 'number') {
      if (column <= this.#header.length) return column - 1;
      return this.#missing(`number ${column}`);
    }
    const name = column.trim();
    const index = this.#header.indexOf(name);
    if (index === -1) return this.#missing(`"${name}"`);
    if (this.#header.lastIndexOf(name) !== index) {
      this.findings.push(
        finding(
          'layout-role-ambiguous',
          `the column "${name}" stands twice in the file`,
          'name it by its number, 1 is the first',
          place({ file: this.#file }),
        ),
      );
      return null;
    }
    return index;
  }

  ofRoles(columns: LabLayoutSettings['columns']): Partial<Record<LabRole, number>> {
    const found: Partial<Record<LabRole, number>> = {};
    for (const [key, column] of Object.entries(columns) as [LabRoleKey, LayoutColumn][]) {
      const index = this.indexOf(column);
      if (index !== null) found[roleOfKey(key)] = index;
    }
    return found;
  }

  #missing(name: string): null {
    this.findings.push(
      finding(
        'layout-role-missing',
        `the file has no column ${name}, which its sidecar names`,
        'correct the name in the sidecar',
        place({ file: this.#file }),
      ),
    );
    return null;
  }
}

function changedHeader(
  path: string,
  stated: readonly string[],
  header: readonly string[],
  line: number,
): Finding[] {
  const names = stated.map((name) => name.trim());
  const length = Math.max(names.length, header.length);
  const at = Array.from({ length }, (_, index) => index).find(
    (index) => names[index] !== header[index],
  );
  if (at === undefined) return [];
  return [
    finding(
      'layout-header-changed',
      `the header differs from the one its sidecar was made for: column ${at + 1} is ` +
        `"${header[at] ?? ''}" and was "${names[at] ?? ''}"`,
      'compare the two exports, then correct the sidecar or remove it and write it again',
      place({ file: path, line, column: at + 1, field: header[at] ?? null }),
    ),
  ];
}

function openQuestion(question: string, file: string): Finding {
  return finding(
    'layout-unclear',
    `a question of the sidecar is open: ${question}`,
    'answer it in the sidecar, then take it out of "questions"',
    place({ file }),
  );
}
