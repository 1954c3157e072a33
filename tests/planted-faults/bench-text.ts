import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { readBench } from '../../src/commands/read-bench.ts';
import type { Bench } from '../../src/model/index.ts';

/** Where a cell stands: what a finding about it has to name. */
export interface CellPlace {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** Cells of a row by header; what is left out is blank. */
export type Cells = Readonly<Record<string, string>>;

/** The text of a bench: tables whose cells can be changed, each change giving its place. */
export class BenchText {
  readonly settings: Record<string, unknown>;
  readonly #tables = new Map<string, { readonly header: string[]; readonly rows: string[][] }>();
  readonly #delimiters = new Map<string, string>();

  constructor(settings: Readonly<Record<string, unknown>>) {
    this.settings = { title: 'Invented bench', edition: '2026-01', ...settings };
  }

  /** Adds a table; its header holds every field that any of its rows has. */
  add(file: string, rows: readonly Cells[], delimiter = ','): this {
    const header = [...new Set(rows.flatMap((row) => Object.keys(row)))];
    const cells = rows.map((row) => header.map((field) => row[field] ?? ''));
    this.#tables.set(file, { header, rows: cells });
    this.#delimiters.set(file, delimiter);
    return this;
  }

  /** Adds one more row at the end and gives the place of one of its cells. */
  append(file: string, row: Cells, field: string): CellPlace {
    const { header, rows } = this.#table(file);
    for (const name of Object.keys(row)) if (!header.includes(name)) this.#addColumn(file, name);
    rows.push(header.map((name) => row[name] ?? ''));
    return this.#placeOf(file, rows.length - 1, field);
  }

  /** Changes one cell of the first row that matches, and gives its place. */
  set(file: string, match: Cells, field: string, value: string): CellPlace {
    const { header, rows } = this.#table(file);
    if (!header.includes(field)) this.#addColumn(file, field);
    const place = this.place(file, match, field);
    const row = rows[place.line - 2];
    if (row === undefined) throw new RangeError(`no line ${place.line}`);
    if (row[place.column - 1] === value) throw new RangeError(`${field} is "${value}" already`);
    row[place.column - 1] = value;
    return place;
  }

  get(file: string, match: Cells, field: string): string {
    const { line, column } = this.place(file, match, field);
    return this.#table(file).rows[line - 2]?.[column - 1] ?? '';
  }

  /** Turns the rows of a table round. */
  reverse(file: string): void {
    this.#table(file).rows.reverse();
  }

  /** One field of every row that matches. */
  column(file: string, match: Cells, field: string): string[] {
    const { header, rows } = this.#table(file);
    return rows
      .filter((row) => matches(header, row, match))
      .map((row) => row[header.indexOf(field)] ?? '');
  }

  /** The place of a cell of the first row that matches. */
  place(file: string, match: Cells, field: string): CellPlace {
    const { header, rows } = this.#table(file);
    const at = rows.findIndex((row) => matches(header, row, match));
    if (at === -1) throw new RangeError(`${file} has no row ${JSON.stringify(match)}`);
    return this.#placeOf(file, at, field);
  }

  /** Writes the bench into a temporary folder, reads it, and takes the folder away again. */
  read(): Bench {
    const folder = mkdtempSync(path.join(tmpdir(), 'bench-'));
    try {
      writeFileSync(path.join(folder, 'bench.json'), JSON.stringify(this.settings));
      for (const [file, { header, rows }] of this.#tables) {
        const target = path.join(folder, file);
        mkdirSync(path.dirname(target), { recursive: true });
        const delimiter = this.#delimiters.get(file) ?? ',';
        const lines = [header, ...rows].map((cells) =>
          cells.map((cell) => quoted(cell, delimiter)).join(delimiter),
        );
        writeFileSync(target, `${lines.join('\n')}\n`);
      }
      return readBench(folder);
    } finally {
      rmSync(folder, { recursive: true });
    }
  }

  #table(file: string) {
    const table = this.#tables.get(file);
    if (table === undefined) throw new RangeError(`no table ${file}`);
    return table;
  }

  #addColumn(file: string, field: string): void {
    const { header, rows } = this.#table(file);
    header.push(field);
    for (const row of rows) row.push('');
  }

  #placeOf(file: string, row: number, field: string): CellPlace {
    const column = this.#table(file).header.indexOf(field) + 1;
    if (column === 0) throw new RangeError(`${file} has no column ${field}`);
    return { file, line: row + 2, column };
  }
}

function matches(header: readonly string[], row: readonly string[], match: Cells): boolean {
  return Object.entries(match).every(([name, text]) => row[header.indexOf(name)] === text);
}

function quoted(cell: string, delimiter: string): string {
  return cell.includes(delimiter) || cell.includes('"') ? `"${cell.replaceAll('"', '""')}"` : cell;
}
