import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reductionBounds } from '../../../src/analyse/index.ts';
import { sumIntervals, sumLists } from '../../../src/analyse/sums/index.ts';
import { analyteIndex } from '../../../src/reference/index.ts';

type Pair = readonly [number, number];

interface SumCase {
  readonly id: string;
  readonly note: string;
  readonly before: readonly Pair[];
  readonly after: readonly Pair[];
  readonly expected: {
    readonly sum_before: Pair;
    readonly sum_after: Pair;
    readonly R_lower_pct: number | '-inf';
    readonly R_upper_pct: number;
    readonly R_if_nondetects_zero_pct: number | null;
  };
}

const { cases } = JSON.parse(
  readFileSync(new URL('sums-with-nondetects.json', import.meta.url), 'utf8'),
) as { cases: readonly SumCase[] };

/** The tolerance the file states; its percentages are printed to ten decimals. */
const FILE_TOLERANCE = 1e-9;

const interval = ([low, high]: Pair) => ({ low, high });

describe('sums of intervals, derived apart from this project (four cases, no publication)', () => {
  it('holds the four cases of the file', () => {
    expect(cases).toHaveLength(4);
  });

  it.each(cases)('$id: the sums of feed and product; $note', ({ before, after, expected }) => {
    for (const [members, sum] of [
      [before, expected.sum_before],
      [after, expected.sum_after],
    ] as const) {
      const { low, high } = sumIntervals(members.map(interval));
      expect(Math.abs(low - sum[0])).toBeLessThan(FILE_TOLERANCE);
      expect(Math.abs(high - sum[1])).toBeLessThan(FILE_TOLERANCE);
    }
  });

  it.each(cases)('$id: the bounds of the reduction', ({ before, after, expected }) => {
    const bounds = reductionBounds(
      sumIntervals(before.map(interval)),
      sumIntervals(after.map(interval)),
    );
    if (expected.R_lower_pct === '-inf') expect(bounds.low).toBe(Number.NEGATIVE_INFINITY);
    else expect(Math.abs(100 * bounds.low - expected.R_lower_pct)).toBeLessThan(FILE_TOLERANCE);
    expect(Math.abs(100 * bounds.high - expected.R_upper_pct)).toBeLessThan(FILE_TOLERANCE);
  });
});

describe('40 CFR 141 (from memory): compliance sums count non-detects as zero, another convention', () => {
  it.each(cases)('$id: the reduction it would give is not the lower bound', (item) => {
    const feed = sumIntervals(item.before.map(interval)).low;
    const product = sumIntervals(item.after.map(interval)).low;
    const asZero = item.expected.R_if_nondetects_zero_pct;
    if (asZero === null) {
      expect(feed).toBe(0);
      return;
    }
    expect(Math.abs(100 * (1 - product / feed) - asZero)).toBeLessThan(FILE_TOLERANCE);
    expect(asZero).toBeGreaterThan(Number(item.expected.R_lower_pct));
  });
});

describe('weights of sums', () => {
  const lists = new Map(sumLists(analyteIndex([])).map((list) => [list.key, list]));
  const weight = (sum: string, member: string): number =>
    lists.get(sum)?.members.find(({ analyte }) => analyte.key === member)?.weight ?? Number.NaN;

  it('Standard Methods 2340 B (from memory): hardness = 2.497 calcium + 4.118 magnesium', () => {
    // Half a unit of the last digit printed.
    expect(Math.abs(weight('total-hardness', 'calcium') - 2.497)).toBeLessThan(0.0005);
    expect(Math.abs(weight('total-hardness', 'magnesium') - 4.118)).toBeLessThan(0.0005);
  });

  it('WHO Guidelines, 4th edition, Table A3.3: guideline values of the four trihalomethanes', () => {
    // Printed in mg/L: 0.3, 0.06, 0.1, 0.1. Exact but for the last digit of a double.
    const printed = [
      ['chloroform', 0.3],
      ['bromodichloromethane', 0.06],
      ['dibromochloromethane', 0.1],
      ['bromoform', 0.1],
    ] as const;
    for (const [member, value] of printed) {
      const limit = 1 / weight('tthm-ratio', member) / 1000;
      expect(Math.abs(limit / value - 1)).toBeLessThan(1e-12);
    }
  });

  it('WHO Guidelines, 4th edition: 50 mg/L nitrate and 3 mg/L nitrite are 11 and 0.9 mg/L as N', () => {
    // Half a unit of the last digit printed.
    expect(Math.abs(1 / weight('nitrate-nitrite-ratio', 'nitrate') - 11)).toBeLessThan(0.5);
    expect(Math.abs(1 / weight('nitrate-nitrite-ratio', 'nitrite') - 0.9)).toBeLessThan(0.05);
  });

  it('40 CFR 141.61(c)(2): hazard index = HFPO-DA/10 + PFBS/2000 + PFNA/10 + PFHxS/10, in ng/L', () => {
    const printed = { 'hfpo-da': 10, pfbs: 2000, pfna: 10, pfhxs: 10 };
    for (const [member, value] of Object.entries(printed)) {
      // Exact: whole numbers.
      expect(weight('pfas-hazard-index', member)).toBe(1 / value);
    }
  });
});
