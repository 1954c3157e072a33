import { type Finding, finding } from '../findings/index.ts';
import { type Bench, resultAt, resultPlace } from '../model/index.ts';
import type { ReductionFact } from './reduction-fact.ts';
import type { Side } from './reduction-side.ts';

/** How far the figures of a feed lie apart, canonical unit; 0 with fewer than two. */
export function feedRange(bench: Bench, feed: Side | null): number {
  const values = (feed?.results ?? []).flatMap((index) => {
    const result = resultAt(bench.results, index);
    return result.kind === 'quantified' ? result.value : [];
  });
  return rangeOf(values);
}

/**
 * Findings where the feed changed by more than the difference that is claimed between feed and
 * product: between the feed samples of one event, between the feeds before and after a product, or
 * between the events that one device is summed up over. One finding for an analyte, device and
 * variant.
 *
 * A claim is any outcome that says product and feed differ. Natural and spiked feeds are different
 * waters and are not compared.
 */
export function movedFeeds(bench: Bench, facts: readonly ReductionFact[]): Finding[] {
  const claims = new Map<string, ReductionFact[]>();
  for (const fact of facts) {
    const { device, variant, kind, analyte, outcome } = fact.row;
    if (!CLAIMED.has(outcome)) continue;
    const key = [device, variant, kind, analyte].join('\t');
    const own = claims.get(key) ?? [];
    claims.set(key, own);
    own.push(fact);
  }
  return [...claims.values()].flatMap((own) => movedFeed(bench, own));
}

const CLAIMED = new Set(['measured', 'between', 'at-least', 'rise']);

function movedFeed(bench: Bench, claims: readonly ReductionFact[]): Finding[] {
  const moved = claims.map((fact) => ({
    fact,
    range: fact.feedRange,
    where: `${fact.feedJoin === 'span' ? 'around' : 'within'} ${fact.row.event}`,
  }));
  const feeds = claims.flatMap(({ feed }) => feed?.estimate ?? []);
  const last = claims.at(-1);
  const between =
    claims.length > 1 && last !== undefined
      ? [{ fact: last, range: rangeOf(feeds), where: 'between the events' }]
      : [];
  const smallest = Math.min(...claims.map(claimedDifference));
  const worst = [...moved, ...between].find(({ range }) => range > smallest);
  if (worst === undefined) return [];
  const { analyte, row, feed } = worst.fact;
  return [
    finding(
      'feed-moved',
      `the ${analyte.name} of the feed of ${row.device} moved by ${figure(worst.range)} ${row.unit} ` +
        `${worst.where}; the smallest difference claimed is ${figure(smallest)} ${row.unit}`,
      'take feed and product within minutes, or more pairs; the pairs stand, their mean less so',
      resultPlace(bench.results, feed?.results[0] ?? 0),
    ),
  ];
}

function rangeOf(values: readonly number[]): number {
  return values.length < 2 ? 0 : Math.max(...values) - Math.min(...values);
}

/** How far feed and product lie apart at the least, canonical unit. */
function claimedDifference({ feed, product }: ReductionFact): number {
  if (feed === null || product === null) return Number.POSITIVE_INFINITY;
  return Math.max(gap(product, feed), gap(feed, product));
}

function gap(below: Side, above: Side): number {
  return Math.max(0, above.interval.low - below.interval.high);
}

/** Two digits say how large a movement is. */
function figure(value: number): string {
  return String(Number(value.toPrecision(2)));
}
