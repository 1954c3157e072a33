import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

/** The JSON file of that name in this folder, as the type its reader expects. */
export function readJson<T>(name: string): T {
  return JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8')) as T;
}

/** The rows of the CSV file of that name in this folder, by header. */
export function readCsv<K extends string>(name: string): Record<K, string>[] {
  const text = readFileSync(new URL(name, import.meta.url), 'utf8');
  return parse(text, { columns: true }) as Record<K, string>[];
}
