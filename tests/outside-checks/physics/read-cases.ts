import { readFileSync } from 'node:fs';

/** A stored case: what goes in, what must come out, how near, and where it comes from. */
export interface StoredCase {
  readonly id: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, number | boolean>>;
  readonly tolerance: { readonly rel?: number; readonly abs?: number };
  readonly source: string;
  readonly status: string;
}

/** A fixture of this folder: finds a case by its id. */
export function casesOf(file: string): (id: string) => StoredCase {
  const text = readFileSync(new URL(file, import.meta.url), 'utf8');
  const { cases } = JSON.parse(text) as { cases: readonly StoredCase[] };
  return (id) => {
    const found = cases.find((item) => item.id === id);
    if (found === undefined) throw new RangeError(`${file} has no case ${id}`);
    return found;
  };
}

/** The rows of a CSV of numbers, by header. */
export function numberRows(file: string): readonly Readonly<Record<string, number>>[] {
  const [head = '', ...lines] = readFileSync(new URL(file, import.meta.url), 'utf8')
    .trim()
    .split('\n');
  const names = head.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(names.map((name, i) => [name, Number(cells[i])]));
  });
}

/** A number of a case's inputs or of one of its groups. */
export function numberIn(record: Readonly<Record<string, unknown>>, name: string): number {
  const value = record[name];
  if (typeof value !== 'number') throw new RangeError(`no number ${name}`);
  return value;
}

/** How far a figure lies beyond what the case allows: 0 or less is within. */
export function excess(item: StoredCase, name: string, got: number | null): number {
  const expected = numberIn(item.expected, name);
  if (got === null) return Number.POSITIVE_INFINITY;
  const { rel = 0, abs = 0 } = item.tolerance;
  return Math.abs(got - expected) - Math.max(rel * Math.abs(expected), abs);
}
