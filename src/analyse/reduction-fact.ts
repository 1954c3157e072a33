import type { ReductionRow } from '../model/index.ts';
import type { Analyte } from '../reference/index.ts';
import type { Side } from './reduction-side.ts';

/** One reduction with the results it rests on. */
export interface ReductionFact {
  readonly row: ReductionRow;
  readonly analyte: Analyte;
  readonly feed: Side | null;
  readonly product: Side | null;
  /** Void product samples of the group. */
  readonly voidSamples: readonly string[];
}
