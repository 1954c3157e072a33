import { expect } from 'vitest';

/** How far a number may lie from the expected one, and why so far. */
export interface Tolerance {
  readonly relative?: number;
  readonly absolute?: number;
  readonly reason: string;
}

/** Expects a number within the relative or the absolute tolerance, whichever is wider. */
export function expectClose(
  actual: number | null | undefined,
  expected: number,
  { relative = 0, absolute = 0, reason }: Tolerance,
): void {
  const allowed = Math.max(absolute, relative * Math.abs(expected));
  if (typeof actual !== 'number') {
    expect.fail(`expected ${expected}, got ${actual} (${reason})`);
  }
  if (actual === expected) return;
  const miss = Math.abs(actual - expected);
  if (!(miss <= allowed)) {
    expect.fail(
      `expected ${expected} within ${allowed} (${reason}), got ${actual}: off by ${miss}`,
    );
  }
  expect(miss).toBeLessThanOrEqual(allowed);
}
