import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { BenchError, compare, readBench, type TraceRow, trace } from '../../src/index.ts';

const SAMPLE = fileURLToPath(new URL('../../samples/fourteen-devices', import.meta.url));
const bench = readBench(SAMPLE);

/** The cell that a place names, read from the file on its own. */
function cellAt({ file, line, column }: TraceRow['place']): string | undefined {
  const text = readFileSync(`${SAMPLE}/${file}`, 'utf8');
  const record = text.split('\n')[(line ?? 0) - 1] ?? '';
  const delimiter = record.includes(';') && !record.includes(',') ? ';' : ',';
  const [cells = []] = parse(record, { delimiter, relax_quotes: true }) as string[][];
  return cells[(column ?? 0) - 1]?.trim();
}

const steps = (device: string, measure: string) =>
  trace(bench, device, measure).rows as readonly TraceRow[];

describe('a traced figure', () => {
  it.each([
    'reduction.lead',
    'reduction.nitrate',
    'water-use.drain-ratio',
    'water-use.total-drain-ratio.family',
  ])('%s of tankless-a names only places that hold the cell it shows', (measure) => {
    const placed = steps('tankless-a', measure).filter((row) => row.place.column !== null);
    expect(placed.length).toBeGreaterThan(1);
    for (const { place } of placed) expect(cellAt(place)).toBe(place.cell?.trim());
  });

  it('a reduction follows from the two bounds it names', () => {
    const [head] = steps('tankless-a', 'reduction.copper');
    const { rows } = compare(bench, { devices: ['tankless-a'], analytes: ['copper'] });
    expect(rows.length).toBeGreaterThan(0);
    expect(head?.value).toBeGreaterThan(0.9);
  });

  it('a drain ratio can be computed again from the runs of its trace', () => {
    const rows = steps('tankless-b', 'water-use.drain-ratio');
    const volumes = (what: string) =>
      rows.filter((row) => row.what === what).map((row) => row.value ?? Number.NaN);
    const clean = volumes('clean water');
    const drain = volumes('drain');
    const starts = volumes('starts of production');
    // Normal equations of drain = ratio x clean + per-start x starts, solved here on their own.
    const sum = (a: readonly number[], b: readonly number[]) =>
      a.reduce((total, value, index) => total + value * (b[index] ?? Number.NaN), 0);
    const determinant = sum(clean, clean) * sum(starts, starts) - sum(clean, starts) ** 2;
    const ratio =
      (sum(clean, drain) * sum(starts, starts) - sum(starts, drain) * sum(clean, starts)) /
      determinant;
    expect(rows[0]?.value).toBeCloseTo(ratio, 10);
  });

  it('names every flush that a scenario counts', () => {
    const rows = steps('tankless-a', 'water-use.total-drain-ratio.family');
    expect(rows.some((row) => row.what.startsWith('flush rule idle-flush fired'))).toBe(true);
    expect(rows.filter((row) => row.what === 'measured flush')).toHaveLength(3);
  });

  it('asks for the measure that was meant', () => {
    expect(() => trace(bench, 'tankless-a', 'reduction.laed')).toThrow(BenchError);
    try {
      trace(bench, 'tankless-a', 'reduction.laed');
    } catch (error) {
      expect(error instanceof BenchError && error.remedy).toContain('reduction.lead');
    }
  });
});
