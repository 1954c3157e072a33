import type { ReductionRow } from '../model/index.ts';
import type { Analyte } from '../reference/index.ts';
import type { Side } from './reduction-side.ts';

/** One reduction with the results it rests on. */
export interface ReductionFact {
  readonly row: ReductionRow;
  readonly analyte: Analyte;
  readonly feed: Side | null;
  readonly product: Side | null;
  /** `span` where feeds before and after bracket the product, so that it may have had either. */
  readonly feedJoin: 'mean' | 'span';
  /** How far the figures of the feed lie apart, canonical unit; 0 with fewer than two. */
  readonly feedRange: number;
  /** P-value of the test that the product lies above the feed, before any adjustment. */
  readonly riseTest: number | null;
  /** Void product samples of the group. */
  readonly voidSamples: readonly string[];
}
