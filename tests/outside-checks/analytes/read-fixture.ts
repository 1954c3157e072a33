import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { type Analyte, analyteIndex } from '../../../src/reference/index.ts';

/** The rows of a CSV file of this folder, by header. */
export function readCsv<K extends string>(name: string): Record<K, string>[] {
  const text = readFileSync(new URL(name, import.meta.url), 'utf8');
  return parse(text, { columns: true }) as Record<K, string>[];
}

/** The analyte of that key; a test that names an unknown key fails here. */
export function analyteOf(key: string): Analyte {
  const analyte = analyteIndex([]).byKey(key);
  if (analyte === undefined) throw new Error(`no analyte ${key}`);
  return analyte;
}
