import type { LabFile, LabResult, ResultConversion, ResultTable } from '../model/index.ts';
import type { Analyte } from '../reference/index.ts';

const START = 1024;

/** Collects results in growing integer columns; distinct results are kept once. */
export class ResultTableBuilder {
  #length = 0;
  #columns = {
    file: new Int32Array(START),
    line: new Int32Array(START),
    field: new Int32Array(START),
    sample: new Int32Array(START),
    analyte: new Int32Array(START),
    result: new Int32Array(START),
  };
  readonly #files: LabFile[] = [];
  readonly #analytes: Analyte[] = [];
  readonly #analyteIndex = new Map<string, number>();
  readonly #conversions: ResultConversion[] = [];
  readonly #distinct: LabResult[] = [];

  addFile(file: LabFile): void {
    this.#files.push(file);
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

  add(row: {
    readonly line: number;
    readonly field: number;
    readonly sample: number;
    readonly analyte: number;
    readonly result: number;
  }): void {
    if (this.#length === this.#columns.line.length) this.#grow();
    const at = this.#length;
    this.#columns.file[at] = this.fileIndex;
    this.#columns.line[at] = row.line;
    this.#columns.field[at] = row.field;
    this.#columns.sample[at] = row.sample;
    this.#columns.analyte[at] = row.analyte;
    this.#columns.result[at] = row.result;
    this.#length += 1;
  }

  build(): ResultTable {
    const cut = (column: Int32Array): Int32Array => column.slice(0, this.#length);
    return {
      length: this.#length,
      files: this.#files,
      analytes: this.#analytes,
      conversions: this.#conversions,
      distinct: this.#distinct,
      file: cut(this.#columns.file),
      line: cut(this.#columns.line),
      field: cut(this.#columns.field),
      sample: cut(this.#columns.sample),
      analyte: cut(this.#columns.analyte),
      result: cut(this.#columns.result),
    };
  }

  #grow(): void {
    const double = (column: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> => {
      const longer = new Int32Array(column.length * 2);
      longer.set(column);
      return longer;
    };
    const { file, line, field, sample, analyte, result } = this.#columns;
    this.#columns = {
      file: double(file),
      line: double(line),
      field: double(field),
      sample: double(sample),
      analyte: double(analyte),
      result: double(result),
    };
  }
}
