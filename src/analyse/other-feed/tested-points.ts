import type { Bench, Interval } from '../../model/index.ts';
import { studentTQuantile } from '../../statistics/index.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import { standardUncertainty } from '../uncertainty/index.ts';
import type { EventConditions } from './event-conditions.ts';
import { passageOf } from './product-bounds.ts';
import type { TestedFeed } from './tested-range.ts';

/** One event that tested an analyte on a device: how much passed, and at which feed and conditions. */
export interface TestedPoint {
  readonly fact: ReductionFact;
  readonly feed: TestedFeed;
  readonly passage: Interval;
  readonly conditions: EventConditions;
  /** False where the passage has no upper bound: such an event tested nothing. */
  readonly isUsed: boolean;
}

/** The points of a device, state and analyte; events without feed or product are none. */
export function testedPoints(
  bench: Bench,
  facts: readonly ReductionFact[],
  conditionsOf: (fact: ReductionFact) => EventConditions,
): TestedPoint[] {
  return facts.flatMap((fact) => {
    const { feed, product, row } = fact;
    if (feed === null || product === null) return [];
    const passage = passageOf(row.reduction);
    const multiplier = studentTQuantile(
      (1 + bench.settings.confidence) / 2,
      feed.uncertainty.degreesOfFreedom,
    );
    const isFigure = feed.estimate !== null;
    return {
      fact,
      feed: {
        reported: feed.interval,
        isFigure,
        halfWidth: isFigure
          ? multiplier * standardUncertainty(feed.uncertainty, feed.interval.high)
          : 0,
      },
      passage,
      conditions: conditionsOf(fact),
      isUsed: Number.isFinite(passage.high),
    };
  });
}
