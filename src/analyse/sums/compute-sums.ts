import type { Bench, SumRow } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { benjaminiHochberg } from '../../statistics/index.ts';
import { reductionBounds } from '../reduction-bounds.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import {
  type ReductionStatement,
  riseLevel,
  riseProbability,
  type StatementOptions,
  stateReduction,
} from '../reduction-statement.ts';
import { statementOptions } from '../reductions.ts';
import { type SumList, type SumMember, sumLists } from './sum-lists.ts';
import { type SumSide, sumSide } from './sum-sides.ts';

/** One sum of one device at one event, with the reductions of its members. */
export interface SumFact {
  readonly row: SumRow;
  readonly list: SumList;
  readonly feed: SumSide | null;
  readonly product: SumSide | null;
  /** Reductions of the members that were tested on a side, in the order of the list. */
  readonly members: readonly ReductionFact[];
}

/**
 * Sums of every device, variant and event over fixed member lists.
 *
 * Feed and product are always summed over the same members. A member without a result on a side
 * leaves the whole sum untested and says which. The sum over the members found in the feed stands
 * beside it. A sum of which fewer than two members were tested anywhere is left out.
 * @param facts reductions of the members, as `computeReductions` gives them
 */
export function computeSums(bench: Bench, facts: readonly ReductionFact[]): SumFact[] {
  const lists = sumLists(bench.analytes);
  const drafts = [...groupsOf(facts).values()].flatMap((group) =>
    lists.flatMap((list) => {
      const tested = list.members.filter(({ analyte }) => group.has(analyte.key));
      return tested.length < 2 ? [] : [draftOf(list, group)];
    }),
  );
  const options = statementOptions(bench);
  const areRises = risesOf(
    drafts.flatMap(({ whole, found }) => [whole, found]),
    options,
  );
  return drafts.map((draft, index) =>
    sumFact(draft, options, areRises[2 * index] ?? false, areRises[2 * index + 1] ?? false),
  );
}

type Group = ReadonlyMap<string, ReductionFact>;

function groupsOf(facts: readonly ReductionFact[]): Map<string, Group> {
  const groups = new Map<string, Map<string, ReductionFact>>();
  for (const fact of facts) {
    const { device, variant, event, kind, analyte } = fact.row;
    const key = [device, variant, event, kind].join('\t');
    const group = groups.get(key) ?? new Map<string, ReductionFact>();
    groups.set(key, group);
    group.set(analyte, fact);
  }
  return groups;
}

/** A sum before it is judged. */
interface Draft {
  readonly list: SumList;
  readonly members: readonly ReductionFact[];
  readonly whole: SumPair;
  readonly found: SumPair;
  readonly foundMembers: readonly SumMember[];
}

interface SumPair {
  readonly feed: SumSide | null;
  readonly product: SumSide | null;
  /** Why there is no figure; null where there is one. */
  readonly reason: string | null;
}

function draftOf(list: SumList, group: Group): Draft {
  const foundMembers = list.members.filter(({ analyte }) => isFound(group.get(analyte.key)));
  return {
    list,
    members: list.members.flatMap(({ analyte }) => group.get(analyte.key) ?? []),
    whole: pairOf(list.members, group),
    found:
      foundMembers.length === 0
        ? { feed: null, product: null, reason: 'no member was found in the feed' }
        : pairOf(foundMembers, group),
    foundMembers,
  };
}

/** Detected in the feed, whether or not it was quantified. */
function isFound(fact: ReductionFact | undefined): boolean {
  return fact?.feed !== null && fact?.feed !== undefined && fact.feed.state !== 'notDetected';
}

function pairOf(members: readonly SumMember[], group: Group): SumPair {
  const sideOf = (side: 'feed' | 'product') => {
    const there = members.flatMap((member) => {
      const known = group.get(member.analyte.key)?.[side] ?? null;
      return known === null ? [] : [{ member, side: known }];
    });
    const missing = members
      .map(({ analyte }) => analyte)
      .filter(({ key }) => (group.get(key)?.[side] ?? null) === null);
    return { sum: missing.length === 0 ? sumSide(there) : null, missing };
  };
  const feed = sideOf('feed');
  const product = sideOf('product');
  return {
    feed: feed.sum,
    product: product.sum,
    reason: missingText(feed.missing, product.missing, members.length),
  };
}

const MOST_NAMED = 4;

function missingText(
  feed: readonly Analyte[],
  product: readonly Analyte[],
  of: number,
): string | null {
  const areSame = feed.length === product.length && feed.every((one) => product.includes(one));
  const sides = areSame
    ? [{ missing: feed, where: '' }]
    : [
        { missing: feed, where: ' in the feed' },
        { missing: product, where: ' in the product' },
      ];
  const texts = sides.flatMap(({ missing, where }) => {
    if (missing.length === 0) return [];
    const named = missing.slice(0, MOST_NAMED).map(({ name }) => name);
    const more = missing.length > MOST_NAMED ? ` and ${missing.length - MOST_NAMED} more` : '';
    return `${missing.length} of ${of} members not tested${where}: ${named.join(', ')}${more}`;
  });
  return texts.length === 0 ? null : texts.join('; ');
}

/** Which pairs are rises, with false discoveries held over all the sums of the bench. */
function risesOf(pairs: readonly SumPair[], options: StatementOptions): boolean[] {
  const pValues = pairs.map(({ feed, product }) => riseProbability(feed, product, options));
  const tested = pValues.filter((p) => p !== null);
  const adjusted = benjaminiHochberg(tested);
  let next = 0;
  return pValues.map((p) => {
    if (p === null) return false;
    const held = adjusted[next] ?? 1;
    next += 1;
    return held <= riseLevel(options.confidence);
  });
}

function sumFact(
  { list, members, whole, found, foundMembers }: Draft,
  options: StatementOptions,
  isRise: boolean,
  isFoundRise: boolean,
): SumFact {
  const first = members[0]?.row;
  if (first === undefined) throw new RangeError(`${list.key}: no member was tested`);
  const { device, variant, event, kind } = first;
  const { limit } = list;
  const statement = stateReduction(whole.feed, whole.product, options, isRise);
  const foundStatement = stateReduction(found.feed, found.product, options, isFoundRise);
  return {
    row: {
      device,
      variant,
      event,
      kind,
      sum: list.key,
      name: list.name,
      rule: list.rule,
      unit: list.unit,
      basis: list.basis,
      outcome: statement.outcome,
      firm: statement.outcome !== 'untested' && members.every(({ row }) => row.firm),
      reason: whole.reason,
      members: list.members.map(({ analyte }) => analyte.key),
      ...published(whole, statement),
      nondetects_as_zero: countedAsZero(whole),
      found: {
        members: foundMembers.map(({ analyte }) => analyte.key),
        outcome: foundStatement.outcome,
        reason: found.reason,
        ...published(found, foundStatement),
      },
      limit,
      feed_verdict: limit === null ? null : limitVerdict(whole.feed, limit),
      product_verdict: limit === null ? null : limitVerdict(whole.product, limit),
    },
    list,
    feed: whole.feed,
    product: whole.product,
    members,
  };
}

function published(
  { feed, product }: SumPair,
  statement: ReductionStatement,
): Pick<SumRow, 'feed' | 'product' | 'reduction'> {
  const arithmetic =
    feed === null || product === null ? null : reductionBounds(feed.interval, product.interval);
  const atDetection =
    feed === null || product === null
      ? null
      : reductionBounds(feed.atDetectionLimit, product.atDetectionLimit);
  return {
    feed: publishedSide(feed),
    product: publishedSide(product),
    reduction: {
      low: finiteOrNull(arithmetic?.low ?? null),
      high: arithmetic?.high === 1 ? null : finiteOrNull(arithmetic?.high ?? null),
      estimate: statement.estimate,
      interval_low: statement.estimate === null ? statement.low : statement.intervalLow,
      interval_high: statement.estimate === null ? statement.high : statement.intervalHigh,
      confidence: statement.confidence,
      low_at_detection_limit: finiteOrNull(atDetection?.low ?? null),
    },
  };
}

function publishedSide(sum: SumSide | null): SumRow['feed'] {
  return {
    low: sum?.interval.low ?? null,
    high: finiteOrNull(sum?.interval.high ?? null),
    sample: sum === null ? null : sum.samples.join('+'),
  };
}

/**
 * The convention of compliance sums, for comparison only: what was not detected counts as zero.
 * A reduction made of it would turn "nothing detected" into complete removal, so none is given.
 */
function countedAsZero({ feed, product }: SumPair): SumRow['nondetects_as_zero'] {
  return { feed: feed?.interval.low ?? null, product: product?.interval.low ?? null };
}

function limitVerdict(sum: SumSide | null, limit: number): SumRow['feed_verdict'] {
  if (sum === null) return null;
  if (sum.interval.low > limit) return 'above';
  return sum.interval.high <= limit ? 'within' : 'cannot-say';
}

function finiteOrNull(value: number | null): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}
