import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { passageOf, productBounds } from '../../../src/analyse/other-feed/product-bounds.ts';
import { otherFeed } from '../../../src/commands/other-feed.ts';
import { readBench } from '../../../src/commands/read-bench.ts';
import { readFeed } from '../../../src/commands/read-feed.ts';
import type { OtherFeedRow } from '../../../src/model/index.ts';
import { normalCdf } from '../../../src/statistics/index.ts';
import { csv, withBench } from '../../benches/write-bench.ts';

interface FiellerCase {
  readonly id: string;
  readonly inputs: {
    readonly a: number;
    readonly b: number;
    readonly u_a: number;
    readonly u_b: number;
    readonly multiplier: number;
  };
  readonly expected: { readonly lo: number; readonly hi: number };
  readonly published: { readonly lo: number; readonly hi: number };
}

const read = (path: string): unknown =>
  JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8'));

const fieller = (read('../statistics/fieller-cases.json') as readonly FiellerCase[]).filter(
  ({ id }) => id.startsWith('two_means_n6'),
);

const HEADER = ['Sample ID', 'Analyte', 'Result', 'Uncertainty', 'Units'];

/** States that the printed uncertainty is a standard uncertainty. */
const SIDECAR = JSON.stringify({
  layout: 'long',
  delimiter: ',',
  decimal_mark: '.',
  header_row: 1,
  header: HEADER,
  columns: {
    lab_sample: 'Sample ID',
    analyte: 'Analyte',
    result: 'Result',
    uncertainty: 'Uncertainty',
    unit: 'Units',
  },
  coverage_factor: 1,
});

/** The row of lead with the same feed once more, known exactly, after a test of the case. */
function rowOf({ inputs }: FiellerCase): OtherFeedRow | undefined {
  const { a, b, u_a, u_b, multiplier } = inputs;
  const confidence = 2 * normalCdf(multiplier) - 1;
  const conditions = (sample: string) => [`${sample},pH,7,,pH units`, `${sample},TDS,300,0,mg/L`];
  return withBench(
    {
      'bench.json': JSON.stringify({ title: 'a published ratio', confidence }),
      'samples.csv': csv('sample,position,device,event', 'F,feed,,day', 'P,product,ro,day'),
      'lab/lab.csv': csv(
        HEADER.join(','),
        `F,Lead,${a},${u_a},ug/L`,
        `P,Lead,${b},${u_b},ug/L`,
        ...conditions('F'),
      ),
      'lab/lab.layout.json': SIDECAR,
      'feed/town.csv': csv(HEADER.join(','), `T,Lead,${a},0,ug/L`, ...conditions('T')),
      'feed/town.layout.json': SIDECAR,
    },
    (folder) => {
      const bench = readBench(folder);
      expect(bench.findings.filter(({ level }) => level === 'error')).toEqual([]);
      const feed = readFeed(bench, join(folder, 'feed/town.csv'));
      expect(feed.findings.filter(({ level }) => level === 'error')).toEqual([]);
      const rows = otherFeed(bench, feed).rows as OtherFeedRow[];
      return rows.find(({ device, analyte }) => device === 'ro' && analyte === 'lead');
    },
  );
}

describe('online quotient-of-means calculator, quoted in the open DC-Stats notebook: means 14 and 7, n = 6', () => {
  it('has three cases', () => {
    expect(fieller).toHaveLength(3);
  });

  it.each(fieller)('$id: passage 7/14 is the published interval of 14/7 turned over', (one) => {
    const row = rowOf(one);
    expect(row?.outcome).toBe('bounded');
    const { lo, hi } = one.published;
    // 0.006 is the tolerance of the fixture: half a unit of the last printed digit, and its rounding.
    expect(Math.abs(1 / (row?.passage.high ?? 0) - lo)).toBeLessThan(0.006);
    expect(Math.abs(1 / (row?.passage.low ?? 0) - hi)).toBeLessThan(0.006);
  });

  it.each(fieller)('$id: product of a feed of exactly 14 is 14 times that passage', (one) => {
    const row = rowOf(one);
    const { lo, hi } = one.published;
    // A product of 14/x moves by 14/x² × 0.006 when x moves by the tolerance above.
    expect(Math.abs((row?.product.high ?? 0) - 14 / lo)).toBeLessThan((14 / lo ** 2) * 0.0061);
    expect(Math.abs((row?.product.low ?? 0) - 14 / hi)).toBeLessThan((14 / hi ** 2) * 0.0061);
  });
});

interface BoundsCase {
  readonly id: string;
  readonly before: readonly (number | 'inf')[];
  readonly after: readonly (number | 'inf')[];
  readonly expected: { readonly R_lower_pct: number | '-inf'; readonly R_upper_pct: number };
}

const { cases } = read('../reductions/reduction_bounds.json') as { cases: readonly BoundsCase[] };
const numbers = (ends: readonly (number | 'inf')[]): number[] =>
  ends.filter((end) => end !== 'inf');

describe('interval arithmetic of reductions, derived apart from this project: the product at the tested feed', () => {
  const usable = cases.filter(({ before, expected }) => {
    return expected.R_lower_pct !== '-inf' && numbers(before).length === 2;
  });

  it('has bounded cases with finite feeds', () => {
    expect(usable.length).toBeGreaterThanOrEqual(8);
  });

  it.each(usable)('$id', ({ before, after, expected }) => {
    const [b1 = 0, b2 = 0] = numbers(before);
    const [a1 = 0, a2 = 0] = numbers(after);
    const passage = passageOf({
      interval_low: Number(expected.R_lower_pct) / 100,
      interval_high: expected.R_upper_pct / 100,
    });
    const product = productBounds({ low: b1, high: b2 }, passage);
    // By hand: the lowest feed passes at least a1/b2 of itself, the highest at most a2/b1. The file
    // prints reductions to 1e-9 per cent.
    expect(Math.abs(product.low - (b1 * a1) / b2)).toBeLessThan(1e-11 * b1 + 1e-12);
    expect(Math.abs(product.high - (b2 * a2) / b1)).toBeLessThan(1e-11 * b2 + 1e-12);
    if (b1 === b2) expect(product.high).toBeCloseTo(a2, 8);
  });
});

interface BalanceCase {
  readonly id: string;
  readonly inputs: { readonly Cf?: number; readonly Cp?: number };
  readonly expected: { readonly rejection?: number; readonly salt_passage?: number };
}

describe('mass balance of a membrane (STD-40, STD-41, derived): permeate is feed times salt passage', () => {
  const all = Object.values(read('../physics/standardisation.json') as object).flat();
  const balances = (all as BalanceCase[]).filter(({ id }) => id === 'STD-40' || id === 'STD-41');

  it.each(balances)('$id', ({ inputs: { Cf = 0, Cp = 0 }, expected: { rejection = 0 } }) => {
    const passage = passageOf({ interval_low: rejection, interval_high: rejection });
    const product = productBounds({ low: Cf, high: Cf }, passage);
    // The file states a relative tolerance of 1e-6.
    expect(Math.abs(product.low / Cp - 1)).toBeLessThan(1e-6);
    expect(Math.abs(product.high / Cp - 1)).toBeLessThan(1e-6);
  });

  it('has both cases', () => {
    expect(balances).toHaveLength(2);
  });
});
