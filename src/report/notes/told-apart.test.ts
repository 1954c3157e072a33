import { describe, expect, it } from 'vitest';
import type { ReductionSummary } from '../../compare/index.ts';
import { boundsOf } from './told-apart.ts';

type Row = { firm: boolean; product: { estimate: number | null } };

function summary(
  outcome: ReductionSummary['outcome'],
  low: number | null,
  high: number | null,
  row: Row = { firm: true, product: { estimate: null } },
): ReductionSummary {
  return { outcome, low, high, facts: [{ row }] } as unknown as ReductionSummary;
}

describe('what a difference between devices may rest on', () => {
  it('a bound reaches to complete removal', () => {
    expect(boundsOf(summary('at-least', 0.9, null))).toEqual({ low: 0.9, high: 1 });
    expect(boundsOf(summary('between', 0.7, 0.9))).toEqual({ low: 0.7, high: 0.9 });
  });

  it('a lower end that is not known bounds nothing', () => {
    expect(boundsOf(summary('between', null, 0.9))?.low).toBe(Number.NEGATIVE_INFINITY);
  });

  it('never a measured figure without an interval', () => {
    expect(boundsOf(summary('measured', 0.9, 0.9))).toBeNull();
    expect(boundsOf(summary('measured', null, null))).toBeNull();
  });

  it('never an interval on assumed uncertainty', () => {
    const assumed = { firm: false, product: { estimate: 4 } };
    expect(boundsOf(summary('measured', 0.8, 0.9, assumed))).toBeNull();
    expect(boundsOf(summary('measured', 0.8, 0.9))).toEqual({ low: 0.8, high: 0.9 });
  });

  it('never bounds into which a single figure entered', () => {
    const mixed = { firm: true, product: { estimate: 12 } };
    expect(boundsOf(summary('between', 0.6, 0.7, mixed))).toBeNull();
  });

  it.each(['rise', 'not-shown', 'untestable', 'untested'] as const)('never %s', (outcome) => {
    expect(boundsOf(summary(outcome, 0.1, 0.2))).toBeNull();
  });
});
