import { describe, expect, it } from 'vitest';
import type { ToldApartRow } from '../model/index.ts';
import { readBench } from './read-bench.ts';
import { toldApart, toldApartGroups } from './tell-apart.ts';

const bench = readBench('samples/fourteen-devices');

describe('the pairs of devices that are told apart', () => {
  it('keep their numbers under a filter by device', () => {
    const all = toldApart(bench).rows as ToldApartRow[];
    const own = toldApart(bench, { devices: ['tankless-c'] }).rows;
    expect(own).toEqual(
      all.filter((row) => row.device_a === 'tankless-c' || row.device_b === 'tankless-c'),
    );
    expect(own.length).toBeGreaterThan(0);
  });

  it('carry the confidence of one interval beside that of all, and agree with their interval', () => {
    for (const row of toldApart(bench).rows as ToldApartRow[]) {
      if (row.adjusted_confidence === null) {
        expect(row.verdict).toBe('not-comparable');
        continue;
      }
      expect(1 - row.adjusted_confidence).toBeCloseTo(0.05 / row.comparisons, 12);
      const { low, high } = row.product_difference;
      const leavesOutZero = (low !== null && low > 0) || (high !== null && high < 0);
      if (row.verdict === 'differ') expect(leavesOutZero).toBe(true);
      const areBounds = row.product_a.estimate === null && row.product_b.estimate === null;
      if (areBounds) expect(row.less_passes).toBeNull();
    }
  });

  it('move between equivalent and not told apart with the margin, never into differ', () => {
    const verdicts = (margin: string) =>
      (toldApart(bench, { margin }).rows as ToldApartRow[]).map(({ verdict }) => verdict);
    const narrow = verdicts('0.1 %');
    const wide = verdicts('90 %');
    const count = (all: readonly string[], word: string) =>
      all.filter((one) => one === word).length;
    expect(count(wide, 'differ')).toBe(count(narrow, 'differ'));
    expect(count(wide, 'equivalent')).toBeGreaterThan(count(narrow, 'equivalent'));
  });

  it('stand together in a group exactly where they do not differ', () => {
    const rows = toldApart(bench, { analytes: ['lead'] }).rows as ToldApartRow[];
    const groups = toldApartGroups(bench, { analytes: ['lead'] }).rows as {
      kind: string;
      members: { device: string; variant: string }[];
    }[];
    for (const row of rows) {
      const isTogether = groups.some(
        ({ kind, members }) =>
          kind === row.kind &&
          [
            [row.device_a, row.variant_a],
            [row.device_b, row.variant_b],
          ].every(([device, variant]) =>
            members.some((one) => one.device === device && one.variant === variant),
          ),
      );
      expect(isTogether).toBe(row.verdict !== 'differ');
    }
  });
});
