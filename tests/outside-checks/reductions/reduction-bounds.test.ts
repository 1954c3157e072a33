import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  logReductionBounds,
  outcomeOf,
  reductionBounds,
  type SideState,
} from '../../../src/analyse/index.ts';

type End = number | 'inf';

interface BoundsCase {
  readonly id: string;
  readonly before: readonly [End, End];
  readonly after: readonly [End, End];
  readonly expected: {
    readonly R_lower_pct: number | '-inf';
    readonly R_upper_pct: number;
    readonly log10_reduction_lower: number | null;
    readonly log10_reduction_upper: number | null;
  };
  readonly verdict: string;
  readonly note: string;
}

const { cases } = JSON.parse(
  readFileSync(new URL('reduction_bounds.json', import.meta.url), 'utf8'),
) as { cases: readonly BoundsCase[] };

const numberOf = (end: End): number => (end === 'inf' ? Number.POSITIVE_INFINITY : end);
const interval = ([low, high]: readonly [End, End]) => ({
  low: numberOf(low),
  high: numberOf(high),
});

function side(ends: readonly [End, End]): SideState {
  const { low, high } = interval(ends);
  const state =
    low === high
      ? 'quantified'
      : high === Number.POSITIVE_INFINITY
        ? 'aboveRange'
        : low === 0
          ? 'notDetected'
          : 'between';
  return { interval: { low, high }, state };
}

describe('interval arithmetic of reductions, derived apart from this project (fifteen cases)', () => {
  it('holds the fifteen cases of the file', () => {
    expect(cases).toHaveLength(15);
  });

  it.each(cases)('$id: $note', ({ before, after, expected }) => {
    const bounds = reductionBounds(interval(before), interval(after));
    const low = expected.R_lower_pct === '-inf' ? Number.NEGATIVE_INFINITY : expected.R_lower_pct;
    // 1e-9 per cent is the tolerance the file states: its numbers are given to ten digits.
    if (Number.isFinite(low)) expect(Math.abs(bounds.low * 100 - low)).toBeLessThan(1e-9);
    else expect(bounds.low).toBe(low);
    expect(Math.abs(bounds.high * 100 - expected.R_upper_pct)).toBeLessThan(1e-9);
  });

  it.each(cases)('$id: log10 reduction', ({ before, after, expected }) => {
    const bounds = logReductionBounds(interval(before), interval(after));
    for (const [got, want] of [
      [bounds.low, expected.log10_reduction_lower],
      [bounds.high, expected.log10_reduction_upper],
    ] as const) {
      if (want === null || got === null) expect(got).toBe(want);
      // The file prints ten decimals or more: half a unit of the tenth.
      else expect(Math.abs(got - want)).toBeLessThan(5e-11);
    }
  });

  const outcomes: Readonly<Record<string, readonly string[]>> = {
    'point value': ['measured', 'not-shown'],
    'greater-than': ['at-least'],
    range: ['between'],
    undeterminable: ['untestable'],
    increase: ['rise'],
    'no reduction shown': ['untestable'],
    'greater-than 0 only': ['untestable'],
  };

  it.each(cases)('$id: $verdict', ({ before, after, verdict }) => {
    expect(outcomes[verdict]).toContain(outcomeOf(side(before), side(after)));
  });
});
