import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { decideAtLeast } from '../../../src/analyse/claims/index.ts';

interface DecisionCase {
  readonly id: string;
  readonly R_lower_pct: number;
  readonly R_upper_pct: number;
  readonly claim_at_least_pct: number;
  readonly expected: 'met' | 'not met' | 'cannot tell';
}

const cases = JSON.parse(
  readFileSync(new URL('claim-decisions.json', import.meta.url), 'utf8'),
) as readonly DecisionCase[];

const WORDS = { met: 'meets', 'not met': 'misses', 'cannot tell': 'cannot-say' } as const;

describe('three answers to "at least T", derived apart from this project (six cases, no publication)', () => {
  it('holds the six cases of the file', () => {
    expect(cases).toHaveLength(6);
    expect(new Set(cases.map(({ expected }) => expected))).toEqual(new Set(Object.keys(WORDS)));
  });

  it.each(cases)(
    '$id: $R_lower_pct to $R_upper_pct % against at least $claim_at_least_pct % is $expected',
    ({ R_lower_pct, R_upper_pct, claim_at_least_pct, expected }) => {
      const decision = decideAtLeast(
        { low: R_lower_pct / 100, high: R_upper_pct / 100 },
        claim_at_least_pct / 100,
      );
      // A word, not a number: there is no tolerance.
      expect(decision).toBe(WORDS[expected]);
    },
  );
});
