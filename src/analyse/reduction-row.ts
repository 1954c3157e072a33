import { type Bench, type ReductionRow, resultAt } from '../model/index.ts';
import type { Analyte } from '../reference/index.ts';
import { levelVerdicts } from './level-verdict.ts';
import { logReductionBounds, reductionBounds } from './reduction-bounds.ts';
import type { ReductionPair } from './reduction-pairs.ts';
import type { Side } from './reduction-side.ts';
import type { ReductionStatement } from './reduction-statement.ts';
import { standardUncertainty } from './uncertainty/index.ts';

/** The published row of a pair and of what can be said about it. */
export function reductionRow(
  bench: Bench,
  { group, analyte, feed, product }: ReductionPair,
  statement: ReductionStatement,
  riseP: number | null,
): ReductionRow {
  const { device, variant, event, kind } = group;
  const levels =
    product === null
      ? []
      : levelVerdicts(analyte, product.interval, bench.settings.reference_levels ?? []);
  return {
    device,
    variant,
    event,
    kind,
    analyte: analyte.key,
    outcome: statement.outcome,
    firm: isFirm(feed, product),
    rise_p: riseP,
    unit: analyte.unit,
    feed: published(feed),
    product: published(product),
    uncertainty: {
      feed: uncertaintyAt(feed),
      feed_from: sourceOf(feed),
      product: uncertaintyAt(product),
      product_from: sourceOf(product),
    },
    reduction: reduction(bench, feed, product, statement),
    log_reduction: logReduction(analyte, feed, product),
    reference_levels: levels,
    findings: codesOf({ group, product, feed, levels, statement }),
  };
}

/** False for a missing pair, and where an assumed uncertainty carries the judgement of two figures. */
function isFirm(feed: Side | null, product: Side | null): boolean {
  if (feed === null || product === null) return false;
  if (feed.state !== 'quantified' || product.state !== 'quantified') return true;
  return feed.uncertainty.from !== 'assumed' && product.uncertainty.from !== 'assumed';
}

function codesOf(pair: {
  readonly group: ReductionPair['group'];
  readonly feed: Side | null;
  readonly product: Side | null;
  readonly levels: ReductionRow['reference_levels'];
  readonly statement: ReductionStatement;
}): string[] {
  const { group, feed, product, levels, statement } = pair;
  const codes: string[] = [];
  if (product !== null && feed === null) codes.push('feed-missing');
  if (product === null && group.voidProducts.length > 0) codes.push('sample-void');
  if (statement.outcome === 'rise') codes.push('rise-shown');
  if (product !== null && product.state !== 'quantified') {
    if (levels.some((level) => level.verdict === 'cannot-say')) codes.push('limit-above-level');
  }
  return codes;
}

function reduction(
  bench: Bench,
  feed: Side | null,
  product: Side | null,
  statement: ReductionStatement,
): ReductionRow['reduction'] {
  const { low, high, estimate, intervalLow, intervalHigh, confidence } = statement;
  // Of a pair without an estimate the widened bounds are what is printed.
  const stated = {
    estimate,
    interval_low: estimate === null ? low : intervalLow,
    interval_high: estimate === null ? high : intervalHigh,
    confidence,
  };
  if (feed === null || product === null) {
    return {
      low: null,
      high: null,
      ...stated,
      low_at_detection_limit: null,
      bound_limit: null,
    };
  }
  const bounds = reductionBounds(feed.interval, product.interval);
  const atDetection = reductionBounds(feed.atDetectionLimit, product.atDetectionLimit);
  return {
    low: finiteOrNull(bounds.low),
    high: bounds.high === 1 ? null : finiteOrNull(bounds.high),
    ...stated,
    low_at_detection_limit: finiteOrNull(atDetection.low),
    bound_limit: boundLimit(bench, feed, product),
  };
}

function boundLimit(
  bench: Bench,
  feed: Side,
  product: Side,
): ReductionRow['reduction']['bound_limit'] {
  if (feed.state === 'aboveRange' || product.state === 'aboveRange') return 'range';
  const hasNonDetect = [...feed.results, ...product.results].some((index) => {
    const { kind } = resultAt(bench.results, index);
    return kind === 'notDetected' || kind === 'notQuantified';
  });
  return hasNonDetect ? bench.settings.nondetect_bound : null;
}

function logReduction(
  analyte: Analyte,
  feed: Side | null,
  product: Side | null,
): ReductionRow['log_reduction'] {
  if (analyte.group !== 'microbiological' || feed === null || product === null) return null;
  return logReductionBounds(feed.interval, product.interval);
}

function published(side: Side | null): ReductionRow['feed'] {
  if (side === null) {
    return { low: null, high: null, estimate: null, n: 0, method: null, sample: null };
  }
  return {
    low: side.interval.low,
    high: finiteOrNull(side.interval.high),
    estimate: side.estimate,
    n: side.results.length,
    method: side.method,
    sample: side.samples.join('+'),
  };
}

function uncertaintyAt(side: Side | null): number | null {
  if (side === null || side.estimate === null) return null;
  return standardUncertainty(side.uncertainty, side.estimate);
}

function sourceOf(side: Side | null): ReductionRow['uncertainty']['feed_from'] {
  return side === null || side.estimate === null ? null : side.uncertainty.from;
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
