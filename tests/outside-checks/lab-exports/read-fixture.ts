import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { forEachRecord } from '../../../src/read/index.ts';

/** The rows of a fixture of this folder, by header. */
export function readFixture(name: string): readonly Readonly<Record<string, string>>[] {
  const text = readFileSync(fileURLToPath(new URL(name, import.meta.url)), 'utf8');
  const rows: Record<string, string>[] = [];
  let header: readonly string[] | null = null;
  forEachRecord(text, { path: name, delimiter: ',', comments: false }, (cells) => {
    if (header === null) header = cells;
    else rows.push(Object.fromEntries(header.map((field, index) => [field, cells[index] ?? ''])));
  });
  return rows;
}
