import { describe, expect, it } from 'vitest';
import {
  pooledRelativeSd,
  pooledSd,
  relativePercentDifference,
} from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readJson } from './read-fixture.ts';

interface Case {
  id: string;
  x1: number | string;
  x2: number | string;
  expected: {
    RPD_pct: number | null;
    RPD_lower_bound_pct?: number;
    sd_of_pair?: number;
    rsd_pct?: number;
  };
}

const file = readJson<{
  cases: Case[];
  pooled_from_pairs: { pairs: [number, number][]; s_pooled: number; rsd_pooled_pct: number };
}>('duplicate-cases.json');

const PRINTED = { relative: 1e-9, absolute: 1e-11, reason: 'closed form, printed to 12 figures' };

function toInterval(text: number | string): { low: number; high: number } {
  if (typeof text === 'number') return { low: text, high: text };
  return { low: 0, high: Number(text.replace('<', '')) };
}

describe('Duplicates: RPD of USEPA National Functional Guidelines (from memory), derived cases', () => {
  for (const { id, x1, x2, expected } of file.cases) {
    it(`derived: ${id}, ${x1} and ${x2}`, () => {
      const rpd = relativePercentDifference(toInterval(x1), toInterval(x2));
      if (expected.RPD_pct !== null) {
        expectClose(rpd?.low, expected.RPD_pct, PRINTED);
        expectClose(rpd?.high, expected.RPD_pct, PRINTED);
        const pair = [[Number(x1), Number(x2)]];
        expectClose(pooledSd(pair).sd, expected.sd_of_pair ?? Number.NaN, PRINTED);
        expectClose(100 * pooledRelativeSd(pair).sd, expected.rsd_pct ?? Number.NaN, PRINTED);
      } else if (expected.RPD_lower_bound_pct !== undefined) {
        expectClose(rpd?.low, expected.RPD_lower_bound_pct, PRINTED);
        expect(rpd?.high).toBe(200);
      } else {
        expect(rpd).toBeNull();
      }
    });
  }

  it('derived: standard deviation pooled from four pairs', () => {
    const { pairs, s_pooled, rsd_pooled_pct } = file.pooled_from_pairs;
    expectClose(pooledSd(pairs).sd, s_pooled, PRINTED);
    expect(pooledSd(pairs).degreesOfFreedom).toBe(4);
    expectClose(100 * pooledRelativeSd(pairs).sd, rsd_pooled_pct, PRINTED);
  });
});
