import { describe, expect, it } from 'vitest';
import {
  chiSquareQuantile,
  normalQuantile,
  studentTQuantile,
} from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readCsv } from './read-fixture.ts';

const TABLE = readCsv<'distribution' | 'df' | 'p' | 'quantile'>('quantiles.csv');

const quantileOf: Record<string, (p: number, df: number) => number> = {
  normal: (p) => normalQuantile(p),
  t: studentTQuantile,
  chi_square: chiSquareQuantile,
};

describe('R 4.2.2 table of quantiles to 13 figures', () => {
  for (const [distribution, count] of [
    ['normal', 10],
    ['t', 238],
    ['chi_square', 330],
  ] as const) {
    it(`R q-functions: ${count} quantiles of ${distribution}`, () => {
      const rows = TABLE.filter((row) => row.distribution === distribution);
      expect(rows).toHaveLength(count);
      for (const { p, df, quantile } of rows) {
        const degreesOfFreedom = df === 'infinite' ? Infinity : Number(df);
        expectClose(quantileOf[distribution]?.(Number(p), degreesOfFreedom), Number(quantile), {
          relative: 1e-11,
          absolute: 1e-15,
          reason: 'printed to 13 figures, of which R iterates to about 12',
        });
      }
    });
  }
});
