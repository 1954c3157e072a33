import { type Bench, type LogReductionRow, resultAt } from '../../model/index.ts';
import { normalQuantile, poissonLimits } from '../../statistics/index.ts';
import { logReductionBounds } from '../reduction-bounds.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import type { Side } from '../reduction-side.ts';
import { lowerLimit, upperLimit } from '../uncertainty/index.ts';

/** What is known of a number of organisms: limits of their true concentration. */
interface Counted {
  readonly low: number;
  readonly high: number;
  /** What was counted; null where that is not known. */
  readonly count: number | null;
  readonly method: string;
}

/** Units of colonies and plaques counted one by one; a most probable number is no count. */
const COUNTED_ONE_BY_ONE = /^(CFU|PFU|count|cysts|oocysts)\//;

/** Above this many on one plate or filter the sample was diluted, so the count is not known. */
const MOST_ON_A_PLATE = 80;

/**
 * log10 reductions of organisms, as reported and with the chance of counting.
 *
 * The reporting limit of a count is one organism in the volume examined. A count is then the result
 * over that limit, and its true mean lies within Poisson limits; none found is a count of 0 and has an
 * upper limit too. Where the count is not known (several results, no limit, a figure that is no
 * multiple of the limit, a most probable number) the limits come from the uncertainty of the result,
 * and the row says so.
 * @param facts reductions; those of organisms are used
 * Source: Garwood limits of a Poisson mean; the reading of the limit is common practice, no source.
 */
export function computeLogReductions(
  bench: Bench,
  facts: readonly ReductionFact[],
): LogReductionRow[] {
  return facts.flatMap((fact) => {
    const { row, feed, product } = fact;
    if (fact.analyte.group !== 'microbiological') return [];
    const bounds =
      feed === null || product === null
        ? { low: null, high: null }
        : logReductionBounds(feed.interval, product.interval);
    const { device, variant, event, kind, analyte, unit, outcome, firm } = row;
    return {
      device,
      variant,
      event,
      kind,
      analyte,
      unit,
      outcome,
      firm,
      ...bounds,
      ...statedInterval(row.reduction),
      counted: feed === null || product === null ? null : countedBounds(bench, unit, feed, product),
    };
  });
}

/** The interval of a reduction R as that of -log10(1 - R); R rises with it. */
function statedInterval({
  estimate,
  interval_low,
  interval_high,
  confidence,
}: ReductionFact['row']['reduction']): Pick<
  LogReductionRow,
  'estimate' | 'interval_low' | 'interval_high' | 'confidence'
> {
  const asLog = (fraction: number | null): number | null =>
    fraction === null || !(fraction < 1) ? null : -Math.log10(1 - fraction);
  return {
    estimate: asLog(estimate),
    interval_low: asLog(interval_low),
    interval_high: asLog(interval_high),
    confidence,
  };
}

function countedBounds(
  bench: Bench,
  unit: string,
  feed: Side,
  product: Side,
): LogReductionRow['counted'] {
  const { confidence } = bench.settings;
  const before = countOf(bench, unit, feed, confidence);
  const after = countOf(bench, unit, product, confidence);
  return {
    ...logReductionBounds(before, after),
    confidence,
    feed_count: before.count,
    product_count: after.count,
    feed_method: before.method,
    product_method: after.method,
  };
}

function countOf(bench: Bench, unit: string, side: Side, confidence: number): Counted {
  const notCounted = (why: string): Counted => uncounted(side, confidence, why);
  const [index, ...others] = side.results;
  if (index === undefined || others.length > 0) return notCounted('several results');
  const result = resultAt(bench.results, index);
  if (result.kind === 'mostProbable') {
    const { low, high } = result;
    return { low, high, count: null, method: `exact limits of the tubes: ${result.tubes} grew` };
  }
  const one = result.rl;
  if (one === null || !(one > 0)) return notCounted('no reporting limit, volume not known');
  if (result.kind !== 'notDetected' && result.kind !== 'quantified') {
    return notCounted('no count');
  }
  if (result.kind === 'quantified' && !COUNTED_ONE_BY_ONE.test(unit)) {
    return notCounted('a most probable number; volumes and tubes not known');
  }
  const ratio = result.kind === 'quantified' ? result.value / one : 0;
  const count = Math.round(ratio);
  if (Math.abs(ratio - count) > 1e-6 * Math.max(1, count)) {
    return notCounted('no whole count of the reporting limit');
  }
  if (count > MOST_ON_A_PLATE) return notCounted('diluted, count not known');
  const limits = poissonLimits(count, confidence);
  return {
    low: limits.low * one,
    high: limits.high * one,
    count,
    method: `Poisson limits of ${count} counted, one being the reporting limit`,
  };
}

/** Limits from the uncertainty of a side whose organisms were not counted one by one. */
function uncounted(side: Side, confidence: number, why: string): Counted {
  const multiplier = normalQuantile((1 + confidence) / 2);
  const { interval, readings, uncertainty } = side;
  return {
    low: Math.min(interval.low, lowerLimit(uncertainty, readings.low, multiplier)),
    high: Math.max(interval.high, upperLimit(uncertainty, readings.high, multiplier)),
    count: null,
    method: `${why}; limits from its uncertainty (${uncertainty.from})`,
  };
}
