import { describe, expect, it } from 'vitest';
import { fieller } from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';
import { readJson } from './read-fixture.ts';

interface Case {
  id: string;
  source: string;
  seen: string;
  inputs: { a: number; b: number; u_a: number; u_b: number; cov: number; multiplier: number };
  expected: { ratio: number; g: number; lo: number | null; hi: number | null };
  published: { g?: number; lo?: number; hi?: number };
  tol_abs: number;
  notes: string;
}

describe('Fieller intervals of a ratio', () => {
  for (const { id, source, seen, inputs, expected, published, tol_abs } of readJson<Case[]>(
    'fieller-cases.json',
  )) {
    const interval = fieller({
      numerator: inputs.a,
      denominator: inputs.b,
      uNumerator: inputs.u_a,
      uDenominator: inputs.u_b,
      covariance: inputs.cov,
      multiplier: inputs.multiplier,
    });

    it(`${source} (${seen}): ${id}`, () => {
      const closed = { relative: 1e-9, absolute: 1e-12, reason: 'closed form, 12 printed figures' };
      expectClose(interval.ratio, expected.ratio, closed);
      expectClose(interval.g, expected.g, closed);
      if (expected.lo === null || expected.hi === null) {
        expect(interval.low).toBeNull();
        expect(interval.high).toBeNull();
      } else {
        expectClose(interval.low, expected.lo, closed);
        expectClose(interval.high, expected.hi, closed);
      }
      const printed = { absolute: tol_abs, reason: 'printed digits, as stated with the case' };
      if (published.g !== undefined) expectClose(interval.g, published.g, printed);
      if (published.lo !== undefined) expectClose(interval.low, published.lo, printed);
      if (published.hi !== undefined) expectClose(interval.high, published.hi, printed);
    });
  }
});
