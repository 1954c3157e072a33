import { describe, expect, it } from 'vitest';
import { readBench } from '../../src/commands/read-bench.ts';
import { sheets } from '../../src/commands/sheets.ts';
import type { Bench, SheetRow } from '../../src/model/index.ts';

const bench = readBench('samples/fourteen-devices');
const without: Bench = { ...bench, tables: { ...bench.tables, samples: [] } };
const rowsOf = (of: Bench, seed: number) => sheets(of, { seed }).rows as SheetRow[];
const codes = (rows: readonly SheetRow[]) =>
  rows.flatMap((row) => (row.sheet === 'sampling' ? (row.sample ?? '') : []));

describe('the sheets of a sampling day', () => {
  it('hold every sample that is not void exactly once', () => {
    const valid = bench.tables.samples.filter(({ values }) => values.status !== 'void');
    expect(codes(rowsOf(bench, 3)).sort()).toEqual(valid.map(({ values }) => values.sample).sort());
  });

  it('come in the same order for the same seed and in another for another', () => {
    expect(rowsOf(bench, 3)).toEqual(rowsOf(bench, 3));
    expect(codes(rowsOf(bench, 3))).not.toEqual(codes(rowsOf(bench, 4)));
  });

  it('put the feed of each event first', () => {
    const first = rowsOf(bench, 3).filter((row) => row.sheet === 'sampling' && row.order === 1);
    expect(first.length).toBeGreaterThan(1);
    for (const row of first) expect([row.position, row.of]).toEqual(['feed', null]);
  });

  it('count each deadline from the time of sampling', () => {
    const row = rowsOf(bench, 3).find(
      (each) => each.sample === 'jul-feed' && each.analytes.includes('nitrate'),
    );
    expect([row?.taken_at, row?.holding_hours, row?.analyse_by]).toEqual([
      '2026-07-14T08:10',
      48,
      '2026-07-16T08:10',
    ]);
  });

  it('propose feed, products, two duplicates and a blank where samples.csv is missing', () => {
    const rows = rowsOf(without, 3).filter((row) => row.sheet === 'sampling');
    expect(rows.every((row) => row.proposed)).toBe(true);
    expect(new Set(codes(rows)).size).toBe(rows.length);
    expect(rows.filter((row) => row.of !== null)).toHaveLength(2);
    expect(rows.filter((row) => row.position === 'blank')).toHaveLength(1);
    const products = rows.filter((row) => row.position === 'product' && row.of === null);
    const devices = new Set(products.map((row) => row.device));
    expect(devices.size).toBe(bench.tables.devices.length);
    expect(rowsOf(without, 3).every((row) => row.analyse_by === null)).toBe(true);
  });

  it('ask for no flush of a rule that is off, and no drain of a device without a drain line', () => {
    const rows = rowsOf(bench, 3);
    const flushes = rows.filter((row) => row.sheet === 'flushes' && row.device === 'tankless-a');
    expect(flushes.map((row) => row.variant)).toEqual(['standard', 'standard', 'standard']);
    expect(rows.some((row) => row.sheet === 'drain-runs' && row.device === 'pitcher-b')).toBe(
      false,
    );
  });

  it('keep codes and order when they are limited to one device', () => {
    const some = sheets(bench, { seed: 3, devices: ['tankless-a'] }).rows as SheetRow[];
    const all = rowsOf(bench, 3).filter(
      (row) => row.sheet === 'sampling' && (row.device === null || row.device === 'tankless-a'),
    );
    expect(some.filter((row) => row.sheet === 'sampling')).toEqual(all);
  });
});
