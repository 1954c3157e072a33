import { describe, expect, it } from 'vitest';
import {
  detectionLimit,
  pooledSd,
  sdConfidenceFactors,
  studentTQuantile,
} from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readCsv, readJson } from './read-fixture.ts';

interface Case {
  id: string;
  source: string;
  seen: string;
  spikes?: number[] | number[][];
  blanks?: (number | null)[];
  published?: { s?: number; s_pooled?: number; MDL: number };
  expected: {
    s?: number;
    s_pooled?: number;
    MDL_s?: number;
    MDL_b?: number | null;
    MDL?: number;
    df6_90pct_two_sided?: [number, number];
    df6_95pct_two_sided?: [number, number];
    df12_95pct_two_sided?: [number, number];
  };
  notes?: string;
}

const cases = readJson<Case[]>('mdl-cases.json');
const PRINTED = { relative: 1e-9, reason: 'R 4.2.2, printed to 12 figures' };

describe('40 CFR 136 appendix B as printed in Wis. Adm. Code NR 252.0365', () => {
  for (const row of readCsv<'replicates' | 'df' | 't_published' | 't_computed'>(
    'mdl-t-table.csv',
  )) {
    it(`Student t factor at 99 % for ${row.replicates} replicates is ${row.t_published}`, () => {
      const t = studentTQuantile(0.99, row.df === 'infinite' ? Infinity : Number(row.df));
      expectClose(t, Number(row.t_published), {
        absolute: 5.0001e-4,
        reason: 'half a unit of the last printed digit',
      });
      expectClose(t, Number(row.t_computed), {
        relative: 1e-8,
        reason: 'printed to 9 places but good to about 8 only: R qt differs from it as we do',
      });
    });
  }

  it('confidence factors 0.69 and 1.92 (90 %), 0.72 and 1.65 (95 %)', () => {
    const expected = cases.find(({ id }) => id === 'mdl_confidence_limits')?.expected ?? {};
    const check = (df: number, level: number, pair: [number, number] | undefined): void => {
      const factors = sdConfidenceFactors(df, level);
      expectClose(factors.low, pair?.[0] ?? Number.NaN, PRINTED);
      expectClose(factors.high, pair?.[1] ?? Number.NaN, PRINTED);
    };
    check(6, 0.9, expected.df6_90pct_two_sided);
    check(6, 0.95, expected.df6_95pct_two_sided);
    check(12, 0.95, expected.df12_95pct_two_sided);
    const half = { absolute: 0.005, reason: 'half a unit of the last printed digit' };
    expectClose(sdConfidenceFactors(6, 0.9).low, 0.69, half);
    expectClose(sdConfidenceFactors(6, 0.9).high, 1.92, half);
    expectClose(sdConfidenceFactors(12, 0.95).low, 0.72, half);
    expectClose(sdConfidenceFactors(12, 0.95).high, 1.65, half);
  });
});

describe('Detection limits from repeats', () => {
  const example = cases[0]?.source ?? '';
  for (const { id, source, seen, spikes, blanks, published, expected } of cases) {
    if (spikes === undefined) continue;
    const groups = (Array.isArray(spikes[0]) ? spikes : [spikes]) as number[][];
    it(`${source === 'same' || source.startsWith('same;') ? example : source} (${seen}): ${id}`, () => {
      const limit = detectionLimit({ spikes: groups, ...(blanks === undefined ? {} : { blanks }) });
      expectClose(limit.fromSpikes, expected.MDL_s ?? Number.NaN, PRINTED);
      const s = expected.s ?? expected.s_pooled;
      if (s !== undefined) expectClose(pooledSd(groups).sd, s, PRINTED);
      if (expected.MDL_b === null) expect(limit.fromBlanks).toBeNull();
      else if (expected.MDL_b !== undefined) expectClose(limit.fromBlanks, expected.MDL_b, PRINTED);
      if (expected.MDL !== undefined) expectClose(limit.limit, expected.MDL, PRINTED);
      if (published === undefined) return;
      // The pooled example rounds s to two digits before multiplying: 0.36 x 2.681 = 0.965.
      const rounded = { absolute: id === 'pooled' ? 0.02 : 0.05, reason: 'book rounds on the way' };
      expectClose(limit.limit, published.MDL, rounded);
      expectClose(pooledSd(groups).sd, published.s ?? published.s_pooled ?? Number.NaN, {
        absolute: 0.005,
        reason: 'half a unit of the last printed digit',
      });
    });
  }
});
