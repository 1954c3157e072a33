import type { Finding, Place } from '../../findings/index.ts';
import {
  type Bench,
  type Interval,
  intervalOf,
  type LabResult,
  type ResultTable,
  resultAt,
  resultPlace,
  type SampleRow,
} from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';

/** A check of a bench: what it saw that is worth knowing. */
export type QualityCheck = (view: SampleResults) => Finding[];

/**
 * The results of a bench by sample and analyte, as an order of the table in two integer columns, so
 * that a million results cost no object each.
 *
 * Results of void samples stay in it; a check asks `isUsable` first.
 */
export class SampleResults {
  readonly bench: Bench;
  readonly table: ResultTable;
  /** Result indices by sample, then analyte, then row of the table. */
  readonly #order: Int32Array;
  /** Where each sample starts in the order; one more entry at the end. */
  readonly #starts: Int32Array;
  readonly #analyteIndex: ReadonlyMap<string, number>;
  readonly #sampleIndex: ReadonlyMap<string, number>;

  constructor(bench: Bench) {
    this.bench = bench;
    this.table = bench.results;
    const { analytes, length } = bench.results;
    this.#analyteIndex = new Map(analytes.map(({ key }, index) => [key, index]));
    this.#sampleIndex = new Map(
      bench.tables.samples.map(({ values }, index) => [values.sample, index]),
    );
    const rows = new Int32Array(length);
    for (let index = 0; index < length; index += 1) rows[index] = index;
    const byAnalyte = bucketed(rows, bench.results.analyte, analytes.length).order;
    const { order, starts } = bucketed(byAnalyte, bench.results.sample, this.samples.length);
    this.#order = order;
    this.#starts = starts;
  }

  get samples(): readonly SampleRow[] {
    return this.bench.tables.samples;
  }

  /** Result indices of a sample, by analyte. */
  of(sample: number): Int32Array {
    return this.#order.subarray(this.#starts[sample] ?? 0, this.#starts[sample + 1] ?? 0);
  }

  /** The sample of that name; -1 when there is none. */
  sampleNamed(name: string): number {
    return this.#sampleIndex.get(name) ?? -1;
  }

  /** The index of an analyte that occurs in the bench; -1 for others. */
  analyteNamed(key: string): number {
    return this.#analyteIndex.get(key) ?? -1;
  }

  /**
   * The result of a sample and an analyte, from the given lab file only where one is given; -1 when
   * there is none.
   */
  find(sample: number, analyte: number, file: number | null = null): number {
    const { analyte: analytes, file: files } = this.table;
    let low = this.#starts[sample] ?? 0;
    const end = this.#starts[sample + 1] ?? 0;
    let high = end;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((analytes[this.#order[middle] ?? 0] ?? 0) < analyte) low = middle + 1;
      else high = middle;
    }
    for (; low < end; low += 1) {
      const index = this.#order[low] ?? 0;
      if (analytes[index] !== analyte) return -1;
      if (file === null || files[index] === file) return index;
    }
    return -1;
  }

  result(index: number): LabResult {
    return resultAt(this.table, index);
  }

  /** Bounds of a result by the limit the bench uses; null where the cell holds none. */
  interval(index: number): Interval | null {
    return intervalOf(this.result(index), this.bench.settings.nondetect_bound);
  }

  /** The figure of a quantified result; null for all others. */
  value(index: number): number | null {
    const result = this.result(index);
    return result.kind === 'quantified' ? result.value : null;
  }

  analyte(index: number): Analyte {
    const analyte = this.table.analytes[this.table.analyte[index] ?? -1];
    if (analyte === undefined) throw new RangeError(`no analyte of result ${index}`);
    return analyte;
  }

  place(index: number): Place {
    return resultPlace(this.table, index);
  }

  sampleName(sample: number): string {
    return this.samples[sample]?.values.sample ?? '';
  }
}

/** True where a sample counts. */
export function isUsable(row: SampleRow): boolean {
  return row.values.status !== 'void';
}

/** A stable counting sort of row numbers by a column; rows outside 0 to size - 1 are left out. */
function bucketed(
  rows: Int32Array,
  column: Int32Array,
  size: number,
): { readonly order: Int32Array; readonly starts: Int32Array } {
  const starts = new Int32Array(size + 1);
  for (const row of rows) {
    const bucket = column[row] ?? -1;
    if (bucket >= 0 && bucket < size) starts[bucket + 1] = (starts[bucket + 1] ?? 0) + 1;
  }
  for (let bucket = 0; bucket < size; bucket += 1) {
    starts[bucket + 1] = (starts[bucket + 1] ?? 0) + (starts[bucket] ?? 0);
  }
  const next = starts.slice();
  const order = new Int32Array(starts[size] ?? 0);
  for (const row of rows) {
    const bucket = column[row] ?? -1;
    if (bucket < 0 || bucket >= size) continue;
    const at = next[bucket] ?? 0;
    order[at] = row;
    next[bucket] = at + 1;
  }
  return { order, starts };
}
