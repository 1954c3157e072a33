import { readFileSync } from 'node:fs';

/** A stored case: what goes in, what must come out, how near. */
export interface StoredCase<Inputs, Expected> {
  readonly id: string;
  readonly inputs: Inputs;
  readonly expected: Expected;
  readonly tolerance: { readonly rel?: number; readonly abs?: number };
  readonly source: string;
  readonly status: string;
  readonly note?: string;
}

/** The cases of a fixture in this folder. */
export function readCases<Inputs, Expected>(file: string): StoredCase<Inputs, Expected>[] {
  const text = readFileSync(new URL(file, import.meta.url), 'utf8');
  return (JSON.parse(text) as { cases: StoredCase<Inputs, Expected>[] }).cases;
}

/** True when a figure meets its stored tolerance; null must be met by null. */
export function isWithin(
  got: number | null,
  expected: number | null,
  tolerance: { readonly rel?: number; readonly abs?: number },
): boolean {
  if (got === null || expected === null) return got === expected;
  const off = Math.abs(got - expected);
  return off <= (tolerance.rel ?? 0) * Math.abs(expected) || off <= (tolerance.abs ?? 0);
}
