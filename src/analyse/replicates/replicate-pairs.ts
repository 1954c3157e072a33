import {
  arithmeticMean,
  meanInterval,
  normalMle,
  pairedRatio,
  studentTQuantile,
} from '../../statistics/index.ts';
import { reductionBounds } from '../reduction-bounds.ts';
import type { UncertainSide } from '../reduction-statement.ts';
import { whereUsable } from './where-usable.ts';

export interface ReplicatePair {
  readonly feed: UncertainSide;
  readonly product: UncertainSide;
}

/** An interval of a reduction; null where it is unbounded below or reaches complete removal. */
export interface ReductionInterval {
  readonly estimate: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly method: string;
}

/** Several pairs of one question. Fractions. */
export interface ReplicatePairs {
  readonly n: number;
  /** Pairs of which a side is not a single figure. */
  readonly censored: number;
  /**
   * Reduction of the means with the interval of paired numbers; null with fewer than three pairs or
   * with a censored one.
   */
  readonly ofMeans: ReductionInterval | null;
  /**
   * The typical pair: the reduction of the geometric mean passage. At least as high as that of the
   * means, so never the headline.
   */
  readonly geometric: ReductionInterval | null;
}

/** Pairs of figures from which an interval of their scatter is given. */
const LEAST_PAIRS = 3;

/** Censored pairs need this many, and three figures among them. */
const LEAST_CENSORED_PAIRS = 8;

/**
 * What pairs of feed and product say together, from their own scatter.
 *
 * Three pairs of figures or more: Fieller's interval of the ratio of means with Student's t, and the
 * t interval of the mean logarithm of the passage. With censored pairs: from eight pairs with three
 * figures the likelihood of the logarithm of the passage, which takes bounds as bounds, with Student's
 * t on its standard error; fewer leave bounds only.
 * Source: derived in docs/methods.md; averaged log reductions overstate: P. J. Schmidt and others
 * (2020), Water Research, abstract.
 */
export function replicatePairs(
  pairs: readonly ReplicatePair[],
  confidence: number,
): ReplicatePairs {
  const figures = pairs.flatMap(({ feed, product }) =>
    feed.estimate === null || product.estimate === null
      ? []
      : { feed: feed.estimate, product: product.estimate },
  );
  const censored = pairs.length - figures.length;
  const counts = { n: pairs.length, censored };
  if (censored > 0)
    return { ...counts, ofMeans: null, geometric: likeliest(pairs, figures.length, confidence) };
  if (figures.length < LEAST_PAIRS) return { ...counts, ofMeans: null, geometric: null };
  return {
    ...counts,
    ofMeans: ofMeans(figures, confidence),
    geometric: geometric(figures, confidence),
  };
}

interface Figures {
  readonly feed: number;
  readonly product: number;
}

function ofMeans(figures: readonly Figures[], confidence: number): ReductionInterval | null {
  const products = figures.map(({ product }) => product);
  const feeds = figures.map(({ feed }) => feed);
  if (!(arithmeticMean(feeds) > 0)) return null;
  const passage = pairedRatio(products, feeds, confidence);
  return {
    estimate: 1 - passage.ratio,
    low: passage.high === null ? null : 1 - passage.high,
    high: passage.low === null || passage.low <= 0 ? null : 1 - passage.low,
    method: `ratio of means of ${figures.length} pairs, Fieller with Student's t`,
  };
}

function geometric(figures: readonly Figures[], confidence: number): ReductionInterval | null {
  const logs = figures.map(({ feed, product }) => Math.log(product / feed));
  if (!logs.every(Number.isFinite)) return null;
  const { mean, low, high } = meanInterval(logs, confidence);
  return {
    estimate: 1 - Math.exp(mean),
    low: 1 - Math.exp(high),
    high: 1 - Math.exp(low),
    method: `geometric mean passage of ${figures.length} pairs, Student's t of the logarithms`,
  };
}

function likeliest(
  pairs: readonly ReplicatePair[],
  figures: number,
  confidence: number,
): ReductionInterval | null {
  if (pairs.length < LEAST_CENSORED_PAIRS || figures < LEAST_PAIRS) return null;
  const logs = pairs.map(({ feed, product }) => {
    const bounds = reductionBounds(feed.interval, product.interval);
    return { low: Math.log(1 - bounds.high), high: Math.log(1 - bounds.low) };
  });
  const fit = logs.some(({ low, high }) => low === Infinity || high === -Infinity)
    ? null
    : whereUsable(() => normalMle(logs));
  if (fit === null || !fit.converged) return null;
  const reach = studentTQuantile((1 + confidence) / 2, pairs.length - 1) * fit.uMean;
  return {
    estimate: 1 - Math.exp(fit.mean),
    low: finiteOrNull(1 - Math.exp(fit.mean + reach)),
    high: 1 - Math.exp(fit.mean - reach),
    method: `geometric mean passage of ${pairs.length} pairs, ${pairs.length - figures} censored, by likelihood`,
  };
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
