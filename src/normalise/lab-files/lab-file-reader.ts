import { type FindingCode, finding, type Place, place } from '../../findings/index.ts';
import type { LabRole } from '../../model/index.ts';
import type { AnalyteIndex } from '../../reference/index.ts';
import type { ResultTableBuilder } from '../result-table-builder.ts';
import type { SampleLookup } from '../sample-lookup.ts';
import { FigureReader, type FigureReading, isBlank } from './figure-reader.ts';
import { FindingLog } from './finding-log.ts';
import { readLabDate, readLabTime } from './lab-date.ts';
import { type LabRow, RowFactory } from './lab-row.ts';
import { layoutWords, type Series } from './layout-plan.ts';
import { placeMaker } from './place-in-file.ts';
import type { LayoutReading } from './propose-layout.ts';
import { readySidecar } from './ready-sidecar.ts';
import { recordOutline } from './record-outline.ts';
import { RepeatedResults } from './repeated-in-file.ts';
import { type LeftOut, leftOutBy, qualityControlName } from './row-filter.ts';

export interface LabFileContext {
  readonly path: string;
  readonly stem: string;
  readonly analytes: AnalyteIndex;
  readonly sampleOf: SampleLookup;
  /** True where a sidecar rules, so that none has to be proposed. */
  readonly hasSidecar: boolean;
}

/** Reading stops growing its memory at so many distinct rows; they are then read anew. */
const MEMO_LIMIT = 200_000;

interface Memo {
  readonly out: LeftOut | null;
  /** Null until a row of a known sample asks for it. */
  reading: FigureReading | null;
}

/**
 * Reads one lab file into the table of results.
 *
 * Rows with the same texts share one parsed result, so that the cost of a row is a look-up. A
 * problem is reported once for each distinct text, at the first row that holds it. Every row ends
 * as a result, as left out for a reason, or as asked about: rows read = results + left out.
 */
export class LabFileReader {
  readonly log = new FindingLog();
  /** Lab numbers of samples, to tell two exports of one job. */
  readonly labSamples = new Set<string>();
  readonly #context: LabFileContext;
  readonly #layout: LayoutReading;
  readonly #builder: ResultTableBuilder;
  readonly #figures: FigureReader;
  readonly #repeats: RepeatedResults;
  readonly #rows: RowFactory;
  readonly #memo = new Map<string, Memo>();
  readonly #samples = new Map<string, number>();
  readonly #collected = new Map<number, string>();
  readonly #leftOut = new Map<string, number>();
  readonly #place: (cells: readonly string[], line: number, column: number) => Place;
  #rowsRead = 0;
  #results = 0;

  constructor(context: LabFileContext, layout: LayoutReading, builder: ResultTableBuilder) {
    this.#context = context;
    this.#layout = layout;
    this.#builder = builder;
    this.#rows = new RowFactory(layout.plan);
    this.#place = placeMaker(context.path, layout.plan.header);
    this.#figures = new FigureReader(
      layout.plan,
      context.analytes,
      builder,
      this.log,
      (row, role) => this.#placeOf(row, role),
    );
    this.#repeats = new RepeatedResults(layout.plan, builder, this.log);
    this.log.add(...layout.findings);
  }

  read(): void {
    const { plan, text, isCertain } = this.#layout;
    const outline = recordOutline(text.records, plan);
    let index = 0;
    text.records((cells, line) => {
      index += 1;
      const kind = outline.kindOf(index, cells);
      if (kind === 'before') return;
      if (kind === 'blank') return;
      if (kind !== 'row') {
        if (kind === 'ragged') this.#ragged(cells, line);
        this.#count(kind === 'ragged' ? 'asked: ragged row' : kind, 1);
        this.#rowsRead += 1;
        return;
      }
      if (plan.shape === 'sample-list' || !isCertain) {
        this.#rowsRead += 1;
        this.#count(isCertain ? 'sample list' : 'asked: layout', 1);
        return;
      }
      for (const series of this.#rows.figures) this.#figure(cells, line, series);
    });
    this.#results -= this.#repeats.report((reason, count) => this.#count(reason, count));
    this.#builder.addFile({
      path: this.#context.path,
      stem: this.#context.stem,
      header: plan.header,
      layout: isCertain ? layoutWords(plan) : 'not certain',
      rowsRead: this.#rowsRead,
      results: this.#results,
      leftOut: [...this.#leftOut]
        .map(([reason, count]) => ({ reason, count }))
        .sort((a, b) => (a.reason < b.reason ? -1 : 1)),
      proposal: this.#context.hasSidecar ? null : readySidecar(this.#layout),
      collected: this.#collected,
    });
    this.#reportLeftOut();
  }

  #figure(cells: readonly string[], line: number, series: Series | null): void {
    this.#rowsRead += 1;
    const row = this.#rows.row(cells, line, series);
    const key = this.#rows.keyOf(cells, series);
    let memo = this.#memo.get(key);
    if (memo === undefined) {
      if (this.#memo.size >= MEMO_LIMIT) this.#memo.clear();
      memo = { out: leftOutBy(row, this.#layout.plan), reading: null };
      this.#memo.set(key, memo);
    }
    if (memo.out !== null && !memo.out.unlessListed) {
      this.#count(memo.out.reason, 1);
      return;
    }
    const hasNothing = isBlank(row);
    const sample = hasNothing ? -1 : this.#sampleOf(row, memo.out);
    if (hasNothing || sample === -1) {
      if (hasNothing) this.#count('blank', 1);
      return;
    }
    memo.reading ??= this.#figures.read(row);
    const reading = memo.reading;
    if (reading.kind !== 'result') {
      this.#count(reading.kind === 'asked' ? `asked: ${reading.reason}` : reading.reason, 1);
      return;
    }
    this.#results += 1;
    this.#repeats.add(reading.candidate, {
      row: {
        line,
        field: row.column('result'),
        sample,
        analyte: reading.candidate.analyte,
        result: reading.candidate.result,
      },
      at: () => this.#placeOf(row, 'result'),
    });
  }

  #sampleOf(row: LabRow, out: LeftOut | null): number {
    const [lab, client] = [row.cell('labSample'), row.cell('clientSample')];
    const key = `${lab}\u0001${client}`;
    let sample = this.#samples.get(key);
    if (sample === undefined) {
      sample = this.#context.sampleOf(lab, client);
      this.#samples.set(key, sample);
      if (lab !== '') this.labSamples.add(lab);
      if (sample !== -1) this.#keepDate(row, sample);
    }
    if (sample !== -1) return sample;
    const reason = out?.reason ?? qualityControlName([lab, client]);
    if (reason !== null) {
      this.#count(reason, 1);
      return -1;
    }
    this.#count('asked: sample', 1);
    const shown = lab === '' ? client : lab;
    this.log.raise(
      'sample-unknown',
      shown,
      `the sample "${shown}" is in neither samples.csv nor bottles.csv`,
      "add it to samples.csv; where the lab's number differs from yours, add it to bottles.csv",
      this.#sampleplace(row),
    );
    return -1;
  }

  #keepDate(row: LabRow, sample: number): void {
    const date = readLabDate(row.cell('collected'), this.#layout.plan.dateOrder);
    if (date.kind !== 'date' || this.#collected.has(sample)) return;
    const time = readLabTime(row.cell('collectedTime'));
    const iso = time === null || date.iso.includes('T') ? date.iso : `${date.iso}T${time}`;
    this.#collected.set(sample, iso);
  }

  #ragged(cells: readonly string[], line: number): void {
    this.log.raise(
      'row-ragged',
      String(line),
      `the row has ${cells.length} fields and the header ${this.#layout.plan.header.length}`,
      'ask the lab for the export again; a cell may hold an unquoted delimiter',
      place({ file: this.#context.path, line }),
    );
  }

  #count(reason: string, count: number): void {
    if (count > 0) this.#leftOut.set(reason, (this.#leftOut.get(reason) ?? 0) + count);
  }

  #reportLeftOut(): void {
    const isCounted = this.#layout.isCertain && this.#leftOut.size > 0;
    if (!isCounted) return;
    const reasons = [...this.#leftOut]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([reason, count]) => `${count} ${reason}`)
      .join(', ');
    const code: FindingCode = 'rows-left-out';
    this.log.add(
      finding(
        code,
        `of ${this.#rowsRead} rows, ${this.#results} are results; left out: ${reasons}`,
        'none needed if the reasons are right',
        place({ file: this.#context.path }),
      ),
    );
  }

  #sampleplace(row: LabRow): Place {
    const { columns } = this.#layout.plan;
    if (row.series?.sample) return this.#placeOf(row, 'result');
    return this.#place(row.cells, row.line, columns.labSample ?? columns.clientSample ?? 0);
  }

  #placeOf(row: LabRow, role: LabRole): Place {
    return this.#place(row.cells, row.line, row.column(role));
  }
}
