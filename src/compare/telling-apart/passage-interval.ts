import {
  type StatementOptions,
  standardUncertainty,
  type UncertainSide,
  widenedSide,
} from '../../analyse/index.ts';
import type { Interval } from '../../model/index.ts';
import { fieller, studentTQuantile } from '../../statistics/index.ts';

/** Two products of one feed, or of two waters within the span of one. */
export interface ComparedSides {
  readonly feed: UncertainSide;
  readonly productA: UncertainSide;
  readonly productB: UncertainSide;
  /** True where each product may have had another water between the ends of the feed. */
  readonly isSpan: boolean;
}

/** An interval of the comparison of two products; ends null where unbounded. */
export interface ComparedFigure {
  readonly low: number | null;
  readonly estimate: number | null;
  readonly high: number | null;
}

export interface ComparedPassages {
  /** Product of a less product of b, canonical unit: the feed does not enter. */
  readonly product: ComparedFigure;
  /** Passage of a less passage of b: a fraction of the feed, and minus the difference of reductions. */
  readonly difference: ComparedFigure;
  /** Passage of a over passage of b. */
  readonly ratio: ComparedFigure;
}

/**
 * How far two passages lie apart, at a two-sided level.
 *
 * On one feed both products are divided by the same figure, so its error cancels from the ratio and
 * only scales the difference. Two figures: the normal or Student interval of their difference, and
 * Fieller's for what is divided. A censored side: the limits of its true value, at the same factor,
 * corner against corner. Feeds before and after that span the products cancel from nothing.
 * @param level of this one interval, already raised for the number of comparisons
 */
export function comparedPassages(
  sides: ComparedSides,
  { correlation }: Pick<StatementOptions, 'correlation'>,
  level: number,
): ComparedPassages {
  const { feed, productA, productB } = sides;
  const multiplier = studentTQuantile(
    (1 + level) / 2,
    Math.min(...[feed, productA, productB].map((side) => side.uncertainty.degreesOfFreedom)),
  );
  const corners = cornersOf(sides, multiplier);
  const a = productA.estimate;
  const b = productB.estimate;
  if (a === null || b === null) return corners;
  const uA = standardUncertainty(productA.uncertainty, a);
  const uB = standardUncertainty(productB.uncertainty, b);
  const variance = uA * uA + uB * uB - 2 * correlation * uA * uB;
  const uDifference = Math.sqrt(Math.max(0, variance));
  const reach = multiplier * uDifference;
  const product = { low: a - b - reach, estimate: a - b, high: a - b + reach };
  if (sides.isSpan) return { ...corners, product };
  const uFeed = standardUncertainty(feed.uncertainty, feed.estimate ?? 0);
  return {
    product,
    difference:
      feed.estimate === null || !(feed.estimate > 0)
        ? overFeed(product, widenedSide(feed, multiplier))
        : quotient({
            numerator: a - b,
            denominator: feed.estimate,
            uNumerator: uDifference,
            uDenominator: uFeed,
            covariance: correlation * uFeed * (uA - uB),
            multiplier,
          }),
    ratio:
      b > 0
        ? quotient({
            numerator: a,
            denominator: b,
            uNumerator: uA,
            uDenominator: uB,
            covariance: correlation * uA * uB,
            multiplier,
          })
        : corners.ratio,
  };
}

function quotient(input: Parameters<typeof fieller>[0]): ComparedFigure {
  const { low, ratio, high } = fieller(input);
  return { low, estimate: ratio, high };
}

/** Corner against corner over the limits of the true values. */
function cornersOf(
  { feed, productA, productB, isSpan }: ComparedSides,
  multiplier: number,
): ComparedPassages {
  const a = widenedSide(productA, multiplier);
  const b = widenedSide(productB, multiplier);
  const water = widenedSide(feed, multiplier);
  const product = { low: a.low - b.high, high: a.high - b.low };
  const passage = (side: Interval): Interval => ({
    low: side.low / water.high,
    high: side.high / water.low,
  });
  const passageA = passage(a);
  const passageB = passage(b);
  const ratio = isSpan
    ? { low: passageA.low / passageB.high, high: passageA.high / passageB.low }
    : { low: a.low / b.high, high: a.high / b.low };
  return {
    product: figure(product.low, product.high),
    difference: isSpan
      ? figure(passageA.low - passageB.high, passageA.high - passageB.low)
      : overFeed(product, water),
    ratio: figure(ratio.low, ratio.high),
  };
}

/** A difference of products over a feed that is not known better than its limits. */
function overFeed(product: Interval, feed: Interval): ComparedFigure {
  const low = product.low / (product.low < 0 ? feed.low : feed.high);
  const high = product.high / (product.high > 0 ? feed.low : feed.high);
  return figure(low, high);
}

function figure(low: number, high: number): ComparedFigure {
  return { low: finiteOrNull(low), estimate: null, high: finiteOrNull(high) };
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
