import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { readUnit, type Unit, unitNamed } from '../../../src/reference/index.ts';

/** The rows of a CSV file of this folder, by header. */
export function readCsv<K extends string>(name: string): Record<K, string>[] {
  const text = readFileSync(new URL(name, import.meta.url), 'utf8');
  return parse(text, { columns: true }) as Record<K, string>[];
}

/** The unit of that name or spelling; a test that names an unknown unit fails here. */
export function unitOf(spelling: string): Unit {
  const named = unitNamed(spelling);
  if (named !== undefined) return named;
  const reading = readUnit(spelling, {});
  if (reading.kind === 'problem') throw new Error(reading.message);
  return reading.unit;
}

/** Half a unit in the last digit of a printed decimal: `2.834 952E-02` gives 5e-9. */
export function halfLastDigit(printed: string): number {
  const [mantissa = '', exponent = '0'] = printed.replaceAll(' ', '').split(/e/i);
  const digits = mantissa.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** (Number(exponent) - digits);
}
