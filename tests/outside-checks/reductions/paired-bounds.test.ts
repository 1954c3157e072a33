import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reductionBounds, replicatePairs, type UncertainSide } from '../../../src/analyse/index.ts';
import { meanSide } from '../../../src/compare/reduction-summary.ts';

interface Range {
  lo: number;
  hi: number;
}

interface Case {
  id: string;
  note: string;
  pairs: { before: Range; after: Range }[];
  expected: {
    pair_R_lower_pct: (number | '-inf')[];
    pair_R_upper_pct: number[];
    ratio_of_means_R_lower_pct: number;
    ratio_of_means_R_upper_pct: number;
    worst_pair_lower_pct: number | '-inf';
    geometric_R_pct?: number;
  };
}

const { cases } = JSON.parse(
  readFileSync(new URL('../statistics/paired-cases.json', import.meta.url), 'utf8'),
) as { cases: Case[] };

function side({ lo, hi }: Range): UncertainSide {
  const interval = { low: lo, high: hi };
  return {
    interval,
    readings: interval,
    state: lo === hi ? 'quantified' : lo === 0 ? 'notDetected' : 'between',
    estimate: lo === hi ? lo : null,
    uncertainty: {
      relative: 0.1,
      additive: 0,
      counting: 0,
      from: 'stated',
      degreesOfFreedom: Number.POSITIVE_INFINITY,
    },
    isDecisionBound: false,
  };
}

const percent = (fraction: number): number => 100 * fraction;

/** Tolerance 1e-6 relative: derived figures, printed to ten digits. */
function expectPercent(actual: number, expected: number | '-inf' | undefined): void {
  if (expected === '-inf') expect(actual).toBe(Number.NEGATIVE_INFINITY);
  else {
    const wanted = expected ?? Number.NaN;
    expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(wanted)));
  }
}

describe('replicate trials, derived apart from this project (seven cases, no publication)', () => {
  for (const { id, note, pairs, expected } of cases) {
    it(`bounds of every pair and of the ratio of means: ${id} (${note})`, () => {
      const bounds = pairs.map(({ before, after }) =>
        reductionBounds(side(before).interval, side(after).interval),
      );
      for (const [at, { low, high }] of bounds.entries()) {
        expectPercent(percent(low), expected.pair_R_lower_pct[at]);
        expectPercent(percent(high), expected.pair_R_upper_pct[at]);
      }
      expectPercent(
        percent(Math.min(...bounds.map(({ low }) => low))),
        expected.worst_pair_lower_pct,
      );
      const feed = meanSide(pairs.map(({ before }) => side(before)));
      const product = meanSide(pairs.map(({ after }) => side(after)));
      expect(feed).not.toBeNull();
      if (feed === null || product === null) return;
      const ofMeans = reductionBounds(feed.interval, product.interval);
      expectPercent(percent(ofMeans.low), expected.ratio_of_means_R_lower_pct);
      expectPercent(percent(ofMeans.high), expected.ratio_of_means_R_upper_pct);
    });

    if (expected.geometric_R_pct === undefined) continue;
    it(`ratio of means and geometric reduction of figures: ${id} (${note})`, () => {
      const { ofMeans, geometric } = replicatePairs(
        pairs.map(({ before, after }) => ({ feed: side(before), product: side(after) })),
        0.95,
      );
      if (pairs.length < 3) {
        // Two values are shown as they are: no interval and no average of them.
        expect([ofMeans, geometric]).toEqual([null, null]);
        return;
      }
      expectPercent(percent(geometric?.estimate ?? Number.NaN), expected.geometric_R_pct);
      expectPercent(percent(ofMeans?.estimate ?? Number.NaN), expected.ratio_of_means_R_lower_pct);
    });
  }
});
