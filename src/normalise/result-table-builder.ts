import type { LabFile, LabResult, ResultConversion, ResultTable } from '../model/index.ts';
import type { Analyte } from '../reference/index.ts';

const START = 1024;
const COLUMNS = ['file', 'line', 'field', 'sample', 'analyte', 'result'] as const;
type Column = (typeof COLUMNS)[number];

export interface TableRow {
  readonly line: number;
  readonly field: number;
  readonly sample: number;
  readonly analyte: number;
  readonly result: number;
}

/** Collects results in growing integer columns; distinct results are kept once. */
export class ResultTableBuilder {
  #length = 0;
  #columns = columnsOf(() => new Int32Array(START));
  readonly #files: LabFile[] = [];
  readonly #analytes: Analyte[] = [];
  readonly #analyteIndex = new Map<string, number>();
  readonly #conversions: ResultConversion[] = [];
  readonly #distinct: LabResult[] = [];

  addFile(file: LabFile): void {
    this.#files.push(file);
  }

  get length(): number {
    return this.#length;
  }

  /** The index the next file will have. */
  get fileIndex(): number {
    return this.#files.length;
  }

  addConversion(conversion: ResultConversion): number {
    return this.#conversions.push(conversion) - 1;
  }

  addDistinct(result: LabResult): number {
    return this.#distinct.push(result) - 1;
  }

  analyteIndex(analyte: Analyte): number {
    const known = this.#analyteIndex.get(analyte.key);
    if (known !== undefined) return known;
    const index = this.#analytes.push(analyte) - 1;
    this.#analyteIndex.set(analyte.key, index);
    return index;
  }

  /** @returns the position of the row, by which it can be replaced */
  add(row: TableRow): number {
    if (this.#length === this.#columns.line.length) this.#grow();
    const at = this.#length;
    this.#length += 1;
    this.replace(at, row);
    return at;
  }

  /** Puts another row of the file that is being read in the place of one. */
  replace(at: number, row: TableRow): void {
    this.#columns.file[at] = this.fileIndex;
    this.#columns.line[at] = row.line;
    this.#columns.field[at] = row.field;
    this.#columns.sample[at] = row.sample;
    this.#columns.analyte[at] = row.analyte;
    this.#columns.result[at] = row.result;
  }

  /** The rows so far of a sample and analyte, by position. */
  find(sample: number, analyte: number): number[] {
    const found: number[] = [];
    for (let at = 0; at < this.#length; at += 1) {
      const isWanted = this.#columns.sample[at] === sample && this.#columns.analyte[at] === analyte;
      if (isWanted) found.push(at);
    }
    return found;
  }

  resultAt(at: number): LabResult | undefined {
    return this.#distinct[this.#columns.result[at] ?? -1];
  }

  /** Gives a row of any file another result; its place stays. */
  setResult(at: number, result: number): void {
    this.#columns.result[at] = result;
  }

  lineAt(at: number): number {
    return this.#columns.line[at] ?? 0;
  }

  build(): ResultTable {
    return {
      length: this.#length,
      files: this.#files,
      analytes: this.#analytes,
      conversions: this.#conversions,
      distinct: this.#distinct,
      ...columnsOf((column) => this.#columns[column].slice(0, this.#length)),
    };
  }

  #grow(): void {
    this.#columns = columnsOf((column) => {
      const longer = new Int32Array(this.#columns[column].length * 2);
      longer.set(this.#columns[column]);
      return longer;
    });
  }
}

function columnsOf(
  make: (column: Column) => Int32Array<ArrayBuffer>,
): Record<Column, Int32Array<ArrayBuffer>> {
  const entries = COLUMNS.map((column) => [column, make(column)] as const);
  return Object.fromEntries(entries) as Record<Column, Int32Array<ArrayBuffer>>;
}
