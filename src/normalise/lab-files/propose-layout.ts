import { BenchError, type Finding, finding, type Place, place } from '../../findings/index.ts';
import type { LabRole } from '../../model/index.ts';
import type { AnalyteIndex } from '../../reference/index.ts';
import { exchangeColumns } from './exchange-profile.ts';
import { type FileEvidence, fileEvidence } from './file-evidence.ts';
import { type FoundHeader, findHeader, type HeadRecord } from './find-header.ts';
import type { LabSource, LabText } from './lab-source.ts';
import { type LayoutPlan, PLAIN_PLAN } from './layout-plan.ts';
import { layoutRemarks } from './layout-remarks.ts';
import { ambiguousRoles, missingRoles, type PickedColumns, pickColumns } from './pick-columns.ts';
import { sampleColumns, wideColumns } from './wide-columns.ts';

/** How a lab file is read, and what is open about it. */
export interface LayoutReading {
  readonly text: LabText;
  readonly plan: LayoutPlan;
  readonly headerLine: number;
  /** False where a figure could be read wrong; nothing of the file is read then. */
  readonly isCertain: boolean;
  readonly findings: readonly Finding[];
}

const HEAD = 60;
const OTHER_DELIMITERS = [',', ';', '\t', '|'] as const;

/**
 * Concludes the layout of a lab file from the file alone.
 *
 * It is certain only where one layout fits and every role that matters has one candidate; otherwise
 * the findings name each doubt. The decimal mark and the order of dates are taken from cells that
 * prove them.
 * @throws {BenchError} file-empty
 */
export function proposeLayout(source: LabSource, analytes: AnalyteIndex): LayoutReading {
  const { text, head, found } = openAtHeader(source, analytes);
  const first = head[0];
  if (first === undefined) throw emptyFile(source.path);
  const at = head[found?.index ?? 0] ?? first;
  const header = at.cells.map((cell) => cell.trim());
  const placeOf = (column: number): Place =>
    place({ file: source.path, line: at.line, column: column + 1, field: header[column] ?? null });
  if (found === null) {
    const plan = planOf(text, { index: 0, shape: 'long', unitsRow: false, isTie: false }, header);
    return {
      text,
      plan,
      headerLine: at.line,
      isCertain: false,
      findings: [noHeader(source.path, at.line)],
    };
  }
  const picked = exchangePick(header) ?? pickColumns(header);
  const draft = withSoleSample(
    withColumns(planOf(text, found, header), picked, head, found, analytes),
    source.soleSample,
  );
  const evidence = fileEvidence(text.records, draft);
  const plan: LayoutPlan = {
    ...draft,
    marks: { decimal: evidence.decimal, thousands: null },
    dateOrder: evidence.dateOrder,
  };
  const doubts = [
    ...repeatedHeaders(plan, header, placeOf),
    ...ambiguousRoles(withoutCompanions(picked, plan), header, placeOf),
    ...missingRoles(
      plan,
      place({ file: source.path, line: at.line }),
      new Set(picked.ambiguous.map(({ role }) => role)),
    ),
    ...(found.isTie ? [tie(source.path, at.line)] : []),
    ...unknownHeads(plan, header, head, found, analytes, placeOf),
  ];
  const isCertain = doubts.length === 0;
  const remarks = isCertain
    ? layoutRemarks(plan, analytes, place({ file: source.path, line: at.line }))
    : [];
  const findings = [...doubts, ...unclearDates(source.path, header, evidence), ...remarks];
  return { text, plan, headerLine: at.line, isCertain, findings };
}

interface Opened {
  readonly text: LabText;
  readonly head: readonly HeadRecord[];
  readonly found: FoundHeader | null;
}

/** The steadiest delimiter whose records hold a header; else the first that has one. */
function openAtHeader(source: LabSource, analytes: AnalyteIndex): Opened {
  const open = (delimiter: string | null): Opened => {
    const text = source.open(null, delimiter);
    const head = firstRecords(text);
    return { text, head, found: findHeader(head, analytes) };
  };
  const steadiest = open(null);
  if (steadiest.found !== null) return steadiest;
  for (const delimiter of OTHER_DELIMITERS) {
    if (delimiter === steadiest.text.delimiter) continue;
    const opened = tryOpen(() => open(delimiter));
    if (opened?.found) return opened;
  }
  return steadiest;
}

/** A quote that fits one delimiter may be open at another; that delimiter is then not the one. */
function tryOpen(open: () => Opened): Opened | null {
  try {
    return open();
  } catch (error) {
    if (!(error instanceof BenchError)) throw error;
    return null;
  }
}

function firstRecords(text: LabText): HeadRecord[] {
  const head: HeadRecord[] = [];
  text.records((cells, line) => {
    head.push({ cells, line });
    return head.length < HEAD;
  });
  return head;
}

function planOf(text: LabText, found: FoundHeader, header: readonly string[]): LayoutPlan {
  return {
    ...PLAIN_PLAN,
    shape: found.shape,
    delimiter: text.delimiter,
    headerRow: found.index + 1,
    unitsRow: found.unitsRow,
    header,
  };
}

function exchangePick(header: readonly string[]): PickedColumns | null {
  const columns = exchangeColumns(header);
  return columns === null ? null : { columns, constants: {}, ambiguous: [] };
}

function withColumns(
  plan: LayoutPlan,
  picked: PickedColumns,
  head: readonly HeadRecord[],
  found: FoundHeader,
  analytes: AnalyteIndex,
): LayoutPlan {
  const isExchange = exchangeColumns(plan.header) !== null;
  const qualifierList = isExchange ? ('wqx' as const) : null;
  if (plan.shape === 'long' || plan.shape === 'sample-list') {
    return { ...plan, columns: picked.columns, constants: picked.constants, qualifierList };
  }
  if (plan.shape === 'samples-across') {
    const taken = new Set(Object.values(picked.columns));
    return {
      ...plan,
      columns: picked.columns,
      series: sampleColumns(plan.header, taken, analytes),
    };
  }
  const units = found.unitsRow ? (head[found.index + 1]?.cells ?? null) : null;
  const { series } = wideColumns(plan.header, bare(units), analytes);
  return { ...plan, columns: forRows(picked.columns, series), series };
}

/** A file without any column for samples holds one, where its source may. */
export function withSoleSample(plan: LayoutPlan, name: string | undefined): LayoutPlan {
  const { columns, constants, shape, sampleFrom } = plan;
  const isNamed =
    sampleFrom.length > 0 ||
    [columns, constants].some((one) => (one.labSample ?? one.clientSample) !== undefined);
  const mayLack = shape === 'long' || shape === 'analytes-across';
  return name === undefined || isNamed || !mayLack
    ? plan
    : { ...plan, constants: { ...constants, labSample: name } };
}

/** Units in a row of their own may stand in brackets. */
function bare(units: readonly string[] | null): readonly string[] | null {
  return units === null ? null : units.map((unit) => unit.trim().replace(/^[([](.*)[)\]]$/, '$1'));
}

/** In a file with analytes across, a column belongs to the row only where no series holds it. */
function forRows(
  columns: Readonly<Partial<Record<LabRole, number>>>,
  series: LayoutPlan['series'],
): Partial<Record<LabRole, number>> {
  const taken = new Set(series.flatMap(({ value, beside }) => [value, ...Object.values(beside)]));
  return Object.fromEntries(
    Object.entries(columns).filter(([, index]) => !taken.has(index)),
  ) as Partial<Record<LabRole, number>>;
}

/** A sign or limit column beside each column of figures is a companion and no candidate of the row. */
function withoutCompanions(picked: PickedColumns, plan: LayoutPlan): PickedColumns {
  const companions = new Set(plan.series.flatMap(({ beside }) => Object.values(beside)));
  const ambiguous = picked.ambiguous
    .map(({ role, indices }) => ({ role, indices: indices.filter((at) => !companions.has(at)) }))
    .filter(({ indices }) => indices.length > 1);
  return { ...picked, ambiguous };
}

/** Two equal heads are a doubt where one of them would be read; companions may repeat. */
function repeatedHeaders(
  plan: LayoutPlan,
  header: readonly string[],
  placeOf: (column: number) => Place,
): Finding[] {
  const companions = new Set(plan.series.flatMap(({ beside }) => Object.values(beside)));
  const repeated = header.findIndex(
    (name, index) =>
      name !== '' &&
      header.indexOf(name) < index &&
      !companions.has(index) &&
      (plan.shape === 'long' || plan.series.some(({ value }) => value === index)),
  );
  if (repeated === -1) return [];
  return [
    finding(
      'header-repeated',
      `the column "${header[repeated]}" stands twice`,
      'name the columns by number in the sidecar, or ask the lab for an export with one of them',
      placeOf(repeated),
    ),
  ];
}

/** Columns with a unit and no known analyte hold figures that would be lost in silence. */
function unknownHeads(
  plan: LayoutPlan,
  header: readonly string[],
  head: readonly HeadRecord[],
  found: FoundHeader,
  analytes: AnalyteIndex,
  placeOf: (column: number) => Place,
): Finding[] {
  if (plan.shape !== 'analytes-across') return [];
  const units = found.unitsRow ? (head[found.index + 1]?.cells ?? null) : null;
  const { unknown } = wideColumns(header, bare(units), analytes);
  return unknown.map(({ column, name }) =>
    finding(
      'analyte-unknown',
      `"${name}" is not a known analyte`,
      'add it to analytes.csv with its unit, or leave the column out of the series of the sidecar',
      placeOf(column),
    ),
  );
}

function unclearDates(path: string, header: readonly string[], evidence: FileEvidence): Finding[] {
  const date = evidence.unclearDate;
  if (date === null) return [];
  return [
    finding(
      'date-order-unclear',
      `"${date.cell.trim()}" could be day first or month first, and no date of the file tells`,
      'set date_order in the sidecar, which `check --write-layouts` starts',
      place({
        file: path,
        line: date.line,
        column: date.column + 1,
        field: header[date.column] ?? null,
        cell: date.cell,
      }),
    ),
  ];
}

function noHeader(path: string, line: number): Finding {
  return finding(
    'layout-unclear',
    'no record of the file names the columns of a lab export',
    'write the sidecar by hand; `check --write-layouts` starts one',
    place({ file: path, line }),
  );
}

function tie(path: string, line: number): Finding {
  return finding(
    'layout-unclear',
    'the file could hold one row per figure or one column per analyte',
    'name the layout in the sidecar, which `check --write-layouts` starts',
    place({ file: path, line }),
  );
}

export function emptyFile(path: string): BenchError {
  return new BenchError(
    'file-empty',
    'the lab file holds no header line',
    'put the export into lab/ again, or remove the file',
    place({ file: path }),
  );
}
