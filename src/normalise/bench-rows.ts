import { closestWord, type Finding, finding, type Place, place } from '../findings/index.ts';
import {
  type BenchRow,
  type Cells,
  type Column,
  cellPlace,
  FILES,
  type FileName,
  type PlacedRow,
  type RawRow,
  type RawTable,
  type TableSource,
} from '../model/index.ts';
import { type Measures, readUnit, type Unit } from '../reference/index.ts';
import { unitProblem } from './quantity-text.ts';
import { readCell } from './read-cell.ts';

type ColumnsOfFile = Readonly<Record<string, Column<unknown>>>;

/** What the reader has to know of a file: its columns, and which of them exclude each other. */
export interface RowSpec<C extends ColumnsOfFile> {
  readonly columns: C;
  readonly eitherOf: readonly (readonly [string, string])[];
}

/** One row with its values and its place. */
export interface SpecRow<C extends ColumnsOfFile> extends PlacedRow {
  readonly values: Cells<C>;
}

export interface RowsReading<R> {
  readonly rows: readonly R[];
  readonly findings: readonly Finding[];
}

interface MappedColumn {
  readonly name: string;
  readonly index: number;
  readonly headerUnit: Unit | null;
  readonly headerCurrency: string | null;
}

/** The rows of a bench file with their values, as the catalogue describes them. */
export function readRows<F extends FileName>(
  file: F,
  table: RawTable,
  measures: Measures | null,
): RowsReading<BenchRow<F>> {
  return readSpecRows<(typeof FILES)[F]['columns']>(FILES[file], table, measures);
}

/**
 * The rows of a file with their values, as its columns describe them.
 *
 * Every problem of the file is reported, each with its cell. A row with a problem is left out; its
 * finding is an error, so no analysis runs on what remains.
 */
export function readSpecRows<C extends ColumnsOfFile>(
  spec: RowSpec<C>,
  table: RawTable,
  measures: Measures | null,
): RowsReading<SpecRow<C>> {
  const findings: Finding[] = [];
  const mapped = mapHeader(spec.columns, table, measures, findings);
  const source: TableSource = {
    path: table.path,
    header: table.header,
    fieldIndex: new Map(mapped.map((column) => [column.name, column.index])),
  };
  const rows: SpecRow<C>[] = [];
  for (const raw of table.rows) {
    const row = readRow(spec, raw, mapped, source, measures, findings);
    if (row !== null) rows.push(row);
  }
  return { rows, findings };
}

function readRow<C extends ColumnsOfFile>(
  spec: RowSpec<C>,
  raw: RawRow,
  mapped: readonly MappedColumn[],
  source: TableSource,
  measures: Measures | null,
  findings: Finding[],
): SpecRow<C> | null {
  const values: Record<string, unknown> = {};
  for (const name of Object.keys(spec.columns)) values[name] = null;
  const row = { line: raw.line, raw: raw.cells, source };
  const before = findings.length;
  for (const { name, index, headerUnit, headerCurrency } of mapped) {
    const column = columnOf(spec.columns, name);
    const cell = raw.cells[index] ?? '';
    if (cell.trim() === '') {
      if (column.required) findings.push(missingCell(name, cellPlace(row, name)));
      continue;
    }
    const reading = readCell(column.kind, cell, { headerUnit, headerCurrency, measures });
    if ('problem' in reading) {
      findings.push(
        finding(reading.problem, reading.message, reading.remedy, cellPlace(row, name)),
      );
    } else {
      values[name] = reading.value;
      if (isApproximate(reading.value)) {
        findings.push(
          finding(
            'quantity-approximate',
            `"${cell.trim()}" is marked as approximate and was taken as written`,
            'measure it again where the figure matters',
            cellPlace(row, name),
          ),
        );
      }
    }
  }
  for (const [a, b] of spec.eitherOf) findings.push(...eitherOf(row, a, b));
  const failed = findings.slice(before).some((item) => item.level === 'error');
  return failed ? null : { ...row, values: values as Cells<C> };
}

function columnOf(columns: ColumnsOfFile, name: string): Column<unknown> {
  const column = columns[name];
  if (column === undefined) throw new RangeError(`the file has no column ${name}`);
  return column;
}

function isApproximate(value: unknown): boolean {
  return (
    typeof value === 'object' &&
    value !== null &&
    'isApproximate' in value &&
    value.isApproximate === true
  );
}

function missingCell(name: string, at: Place): Finding {
  return finding(
    'cell-missing',
    `the cell is blank and ${name} is required`,
    'fill it in, or remove the row',
    at,
  );
}

/** Of two columns that stand for each other exactly one holds a cell, readable or not. */
function eitherOf(row: PlacedRow, a: string, b: string): Finding[] {
  const isFilled = (field: string): boolean => {
    const index = row.source.fieldIndex.get(field);
    return index !== undefined && (row.raw[index] ?? '').trim() !== '';
  };
  if (isFilled(a) !== isFilled(b)) return [];
  const at = cellPlace(row, a);
  return [
    isFilled(a)
      ? finding(
          'either-both',
          `${a} and ${b} are both filled in`,
          'keep the one that was measured',
          at,
        )
      : finding('either-missing', `neither ${a} nor ${b} is filled in`, 'write one of them', at),
  ];
}

const HEADER = /^(.*?)\s*[([]\s*([^()[\]]*)\s*[)\]]$/;

function mapHeader(
  columns: ColumnsOfFile,
  table: RawTable,
  measures: Measures | null,
  findings: Finding[],
): MappedColumn[] {
  const known = Object.keys(columns);
  const mapped: MappedColumn[] = [];
  const seen = new Set<string>();
  for (const [index, header] of table.header.entries()) {
    const at = place({
      file: table.path,
      line: table.headerLine,
      column: index + 1,
      field: header,
      cell: header,
    });
    if (header === '') {
      if (table.rows.some((row) => (row.cells[index] ?? '').trim() !== '')) {
        findings.push(
          finding(
            'header-blank',
            'a column holds cells and has no header',
            'name the column, or remove it',
            at,
          ),
        );
      }
      continue;
    }
    const parts = HEADER.exec(header);
    const name = normalName(parts?.[1] ?? header);
    if (!known.includes(name)) {
      findings.push(unknownColumn(header, name, known, at));
    } else if (seen.has(name)) {
      findings.push(
        finding(
          'header-repeated',
          `the column "${name}" stands twice`,
          'keep one of the two columns',
          at,
        ),
      );
    } else {
      seen.add(name);
      mapped.push({
        name,
        index,
        ...headerUnit(columns, name, parts?.[2] ?? null, measures, at, findings),
      });
    }
  }
  for (const name of known) {
    if (!seen.has(name) && columnOf(columns, name).required) {
      findings.push(
        finding(
          'column-missing',
          `the column ${name} is missing`,
          `add the column ${name} to the header`,
          place({ file: table.path, line: table.headerLine }),
        ),
      );
    }
  }
  return mapped;
}

function normalName(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_')
    .replace(/\*$/, '');
}

function unknownColumn(header: string, name: string, known: readonly string[], at: Place): Finding {
  const near = closestWord(name, known);
  return finding(
    'column-unknown',
    `"${header}" is not a column of this file`,
    near === null
      ? `use one of: ${known.join(', ')}; notes belong in a # line`
      : `did you mean "${near}"? otherwise remove the column`,
    at,
  );
}

function headerUnit(
  columns: ColumnsOfFile,
  name: string,
  unitText: string | null,
  measures: Measures | null,
  at: Place,
  findings: Finding[],
): { readonly headerUnit: Unit | null; readonly headerCurrency: string | null } {
  const none = { headerUnit: null, headerCurrency: null };
  if (unitText === null || unitText === '') return none;
  const { kind } = columnOf(columns, name);
  if (kind.type === 'money') {
    if (/^[A-Z]{3}$/.test(unitText)) return { headerUnit: null, headerCurrency: unitText };
    findings.push(
      finding(
        'currency-missing',
        `"${unitText}" is not a currency code`,
        'write the ISO 4217 code, such as price (USD)',
        at,
      ),
    );
    return none;
  }
  if (kind.type !== 'quantity') return none;
  let problem: ReturnType<typeof unitProblem> | null = null;
  for (const dimension of kind.dimensions) {
    const reading = readUnit(unitText, measures === null ? { dimension } : { dimension, measures });
    if (reading.kind === 'problem') {
      problem ??= unitProblem(reading);
    } else if (kind.dimensions.includes(reading.unit.dimension)) {
      return { headerUnit: reading.unit, headerCurrency: null };
    } else {
      problem ??= {
        problem: 'dimension-wrong',
        message: `"${unitText}" is a unit of ${reading.unit.dimension}`,
        remedy: `name a unit of ${kind.dimensions.join(' or ')}`,
      };
    }
  }
  if (problem !== null)
    findings.push(finding(problem.problem, problem.message, problem.remedy, at));
  return none;
}
