import type { BenchRow } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';

/** What a claim asks of a device: a reduction as a fraction, or a level in the canonical unit. */
export type ClaimTarget =
  | { readonly kind: 'reduction'; readonly fraction: number }
  | { readonly kind: 'level'; readonly value: number };

/** A row of claims.csv, read. */
export interface Claim {
  readonly row: BenchRow<'claims'>;
  /** Null where the claim names none, or none that is known. */
  readonly analyte: Analyte | null;
  /** Null where the claim names no figure that results can be compared with. */
  readonly target: ClaimTarget | null;
  /** The standard as the certification tables spell it; null where they do not hold it. */
  readonly standard: string | null;
}
