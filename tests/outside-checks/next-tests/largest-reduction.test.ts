import { describe, expect, it } from 'vitest';
import { plannedFigure } from '../../../src/analyse/next-tests/planned-figure.ts';
import { plannedBench } from '../../../src/analyse/next-tests/planned-pair.ts';
import {
  feedNeeded,
  largestReduction,
} from '../../../src/analyse/next-tests/showable-reduction.ts';
import { readBench } from '../../../src/commands/read-bench.ts';
import type { Analyte } from '../../../src/reference/index.ts';
import { withBench } from '../../benches/write-bench.ts';

const bench = withBench({}, readBench);
const lead = bench.analytes.byKey('lead') as Analyte;
/** A lab without any scatter; its detection limit lies far below what it reports. */
const planned = plannedBench(bench);
const TERMS = { limit: 1, detectionLimit: 0.01, uncertainty: 0 };

const largest = (feed: number) =>
  largestReduction(planned, lead, plannedFigure(feed, TERMS), TERMS).printed ?? Number.NaN;
const needed = (fraction: number) =>
  feedNeeded(planned, lead, { kind: 'reduction', fraction }, TERMS);

describe('40 CFR 141.719 (US EPA, 2006), largest log removal of a challenge whose filtrate is at its limit', () => {
  // Exact arithmetic; 12 digits are those of a double after one division and one logarithm.
  it.each([
    ['bag and cartridge filters: feed 1e4 limits, 4.0 log', 1e4, 4],
    ['membranes: feed 3.16e6 limits, 6.5 log (from memory)', 3.16e6, Math.log10(3.16e6)],
  ])('%s', (_title, multiple, log) => {
    expect(-Math.log10(1 - largest(multiple))).toBeCloseTo(log, 9);
  });

  it('printed with one decimal, 3.16e6 limits are 6.5 log', () => {
    expect((-Math.log10(1 - largest(3.16e6))).toFixed(1)).toBe('6.5');
  });
});

describe('derived, no source: feed needed without any uncertainty, L / (1 - R)', () => {
  it.each([
    ['100 limits for 99 %', 0.99, 100],
    ['1000 limits for 99.9 %', 0.999, 1000],
    ['10000 limits for 4 log', 1 - 1e-4, 1e4],
    ['2 limits for 50 %', 0.5, 2],
  ])('%s', (_title, fraction, limits) => {
    // The printed feed has three digits; both bounds are exact but for the rounding of 1 - R.
    expect(needed(fraction).plain).toBeCloseTo(limits, 6);
    expect(needed(fraction).printed).toBe(limits);
    expect(largest(limits)).toBeCloseTo(fraction, 12);
  });
});
