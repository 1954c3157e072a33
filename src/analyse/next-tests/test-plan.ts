import type { LabPackage, PriceList, TestPlanRow } from '../../model/index.ts';
import { feedAt, type PlannedFeed } from './feed-of-bench.ts';
import type { LabTerms } from './planned-figure.ts';
import type { PlannedBench } from './planned-pair.ts';
import { type MarginPlan, replicatesNeeded } from './replicates-needed.ts';
import { canShow, feedNeeded, largestReduction, type Target } from './showable-reduction.ts';
import type { TestQuestion } from './test-questions.ts';

/** All a plan rests on. */
export interface PlanInput {
  readonly planned: PlannedBench;
  readonly questions: readonly TestQuestion[];
  readonly feeds: ReadonlyMap<string, PlannedFeed>;
  /** Limits at which the bench was tested, by analyte. */
  readonly ownLimits: ReadonlyMap<string, LabTerms>;
  readonly prices: PriceList | null;
  readonly devices: number;
  readonly margin: MarginPlan;
}

/** One lab at which an analyte can be measured. */
export interface Offer {
  /** Null: as the bench was tested. */
  readonly from: LabPackage | null;
  readonly terms: LabTerms;
}

/** The offers for an analyte: the limits of the bench first, then the packages of the price list. */
export function offersFor(
  { ownLimits, prices }: Pick<PlanInput, 'ownLimits' | 'prices'>,
  analyte: string,
): Offer[] {
  const own = ownLimits.get(analyte);
  return [
    ...(own === undefined ? [] : [{ from: null, terms: own }]),
    ...(prices?.packages ?? []).flatMap((from) =>
      from.tests.flatMap((test) => (test.analyte === analyte ? { from, terms: test } : [])),
    ),
  ];
}

/**
 * What can be shown before a sample is taken: one row for each question and each lab that measures
 * its analyte.
 */
export function testPlan(input: PlanInput): TestPlanRow[] {
  return input.questions.flatMap((question) =>
    offersFor(input, question.analyte.key).map((offer) => planRow(input, question, offer)),
  );
}

function planRow(input: PlanInput, question: TestQuestion, { from, terms }: Offer): TestPlanRow {
  const { planned, feeds } = input;
  const { analyte, target, asked } = question;
  const feed = feeds.get(analyte.key) ?? null;
  const side = feed === null ? null : planned.sideOf(feed.result, analyte);
  const needed = feedNeeded(planned, analyte, target, terms);
  const shows = feed !== null && canShow(planned, analyte, target, feedAt(feed, terms), terms);
  const low = side?.interval.low ?? null;
  return {
    analyte: analyte.key,
    unit: analyte.unit,
    target: publishedTarget(target),
    asked: [...asked],
    lab: from?.lab ?? null,
    package: from?.name ?? null,
    price: from?.price.amount ?? null,
    currency: from?.price.currency ?? null,
    limit: terms.limit,
    detection_limit: terms.detectionLimit,
    feed: {
      low,
      high: side === null || !Number.isFinite(side.interval.high) ? null : side.interval.high,
      estimate: side?.estimate ?? null,
      source: feed?.source ?? null,
    },
    largest_reduction:
      feed === null
        ? { plain: null, printed: null }
        : largestReduction(planned, analyte, feedAt(feed, terms), terms),
    shows_target: shows,
    feed_needed: needed,
    spike: shows
      ? 0
      : needed.printed === null || low === null
        ? null
        : Math.max(0, needed.printed - low),
    replicates: replicates(input, question, terms, shows ? low : needed.printed),
  };
}

/** The target as rows hold it. */
export function publishedTarget(target: Target): TestPlanRow['target'] {
  switch (target.kind) {
    case 'reduction':
      return { kind: 'reduction', value: target.fraction };
    case 'level':
      return { kind: 'level', value: target.value };
    case 'any':
      return { kind: 'any', value: null };
    default:
      return target satisfies never;
  }
}

function replicates(
  { planned, devices, margin }: PlanInput,
  { analyte, target }: TestQuestion,
  terms: LabTerms,
  feed: number | null,
): TestPlanRow['replicates'] {
  const pairs = (devices * (devices - 1)) / 2;
  const none = { pair: null, all_pairs: null, pairs, feed };
  if (target.kind === 'any') return { ...none, why_none: 'no-target' };
  if (feed === null || !(feed > 0)) return { ...none, why_none: 'no-feed' };
  const passage = target.kind === 'reduction' ? 1 - target.fraction : target.value / feed;
  const level = 1 - planned.options.confidence;
  const needed = (pairsAtOnce: number) =>
    replicatesNeeded(
      planned,
      analyte,
      terms,
      { feed, passage, level: level / pairsAtOnce },
      margin,
    );
  const pair = needed(1);
  return {
    pair: pair.samples,
    all_pairs: needed(Math.max(1, pairs)).samples,
    pairs,
    feed,
    why_none: pair.why,
  };
}
