import type { Analyte } from '../../reference/index.ts';
import { normalCdf, normalQuantile, twoSampleSize } from '../../statistics/index.ts';
import { standardUncertainty } from '../uncertainty/index.ts';
import { type LabTerms, plannedFigure } from './planned-figure.ts';
import type { PlannedBench } from './planned-pair.ts';

export interface MarginPlan {
  /**
   * Difference of two devices that should be told: points of the reduction as a fraction, or the
   * factor between what they let through.
   */
  readonly margin: { readonly kind: 'points' | 'ratio'; readonly value: number };
  readonly power: number;
}

export interface ReplicatesNeeded {
  /** Product samples of each device; null where `why` says that no number of them helps. */
  readonly samples: number | null;
  readonly why: 'both-below-limit' | 'stated-uncertainty' | 'too-many' | null;
}

/** More samples than any campaign takes of one device. */
const MOST = 200;

/**
 * Product samples of each of two devices, on one feed, that tell them apart by a margin.
 *
 * The better device leaves `passage` of the feed, the other `passage` and the margin. Results scatter as
 * the bench takes them to, at the content of the worse product, and the scatter is estimated from the
 * samples: two-sample t test, two-sided. A product that would not be detected counts with the reading
 * that speaks against a difference. Where the lab states its uncertainty, the tool does not let it
 * shrink with the number of samples, so one sample tells or none does.
 * @param feed content of the feed, canonical unit
 * @param passage share that the better device lets through
 * @param level two-sided; divide it by the number of pairs for a statement on all of them
 * Source: twoSampleSize; for one sample the normal test of a difference.
 * Checked by: src/analyse/next-tests/replicates-needed.test.ts (simulation)
 */
export function replicatesNeeded(
  planned: PlannedBench,
  analyte: Analyte,
  terms: LabTerms,
  setting: { readonly feed: number; readonly passage: number; readonly level: number },
  { margin, power }: MarginPlan,
): ReplicatesNeeded {
  const { feed, passage, level } = setting;
  const worse =
    margin.kind === 'points' ? (passage + margin.value) * feed : passage * margin.value * feed;
  const better = planned.sideOf(plannedFigure(passage * feed, terms), analyte);
  const other = planned.sideOf(plannedFigure(worse, terms), analyte);
  const difference = worse - Math.max(better.readings.high, passage * feed);
  if (other.estimate === null || !(difference > 0)) {
    return { samples: null, why: 'both-below-limit' };
  }
  const sd = standardUncertainty(other.uncertainty, worse);
  if (other.uncertainty.from === 'stated') {
    const shift = difference / (sd * Math.SQRT2);
    const found = normalCdf(shift - normalQuantile(1 - level / 2));
    return found >= power
      ? { samples: 1, why: null }
      : { samples: null, why: 'stated-uncertainty' };
  }
  if (sd === 0) return { samples: 2, why: null };
  const samples = twoSampleSize({ difference, sd, level }, power, MOST);
  return { samples, why: samples === null ? 'too-many' : null };
}
