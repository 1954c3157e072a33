import type { TestPackageRow } from '../../model/index.ts';
import { type Cover, cheapestCover, mostAnswered } from './cheapest-cover.ts';
import { feedAt } from './feed-of-bench.ts';
import { canShow, feedNeeded } from './showable-reduction.ts';
import { type PlanInput, publishedTarget } from './test-plan.ts';
import type { TestQuestion } from './test-questions.ts';

/** How many samples a campaign takes. */
export interface CampaignSize {
  readonly devices: number;
  readonly events: number;
  /** Product samples of each device at each event. */
  readonly replicates: number;
}

export interface ChosenPackages {
  /** Chosen packages, then the questions that stay without an answer. */
  readonly rows: readonly TestPackageRow[];
  readonly cover: Cover;
  readonly samples: number;
}

/** Every event needs a feed of its own: feed and product of one event are compared. */
export function samplesOf({ devices, events, replicates }: CampaignSize): number {
  return events * (1 + devices * replicates);
}

/**
 * The cheapest lab packages that answer the questions of a plan on its feed; with a budget those that
 * answer most.
 *
 * A package answers a question where a product that is not detected would show the target: feed and
 * product are then results of one lab. All samples of the campaign are analysed for every package
 * chosen, so that the devices stay comparable.
 */
export function testPackages(
  input: PlanInput,
  size: CampaignSize,
  budget: number | null,
): ChosenPackages {
  const { questions } = input;
  const packages = input.prices?.packages ?? [];
  const samples = samplesOf(size);
  const sets = packages.map(({ price, tests }) => ({
    cost: price.amount * samples,
    answers: questions.flatMap(({ analyte, target }, at) => {
      const terms = tests.find((test) => test.analyte === analyte.key);
      const feed = input.feeds.get(analyte.key);
      if (terms === undefined || feed === undefined) return [];
      return canShow(input.planned, analyte, target, feedAt(feed, terms), terms) ? at : [];
    }),
  }));
  const cover =
    budget === null
      ? cheapestCover(sets, questions.length)
      : mostAnswered(sets, questions.length, budget);
  const chosen = cover.chosen.flatMap((at): TestPackageRow[] => {
    const item = packages[at];
    const set = sets[at];
    if (item === undefined || set === undefined) return [];
    return [
      {
        lab: item.lab,
        package: item.name,
        price: item.price.amount,
        currency: item.price.currency,
        samples,
        cost: set.cost,
        answers: set.answers.flatMap((index) => published(questions[index])),
        unanswered: null,
        feed_needed: null,
      },
    ];
  });
  const open = questions.flatMap((question, at) =>
    cover.answered.includes(at)
      ? []
      : unanswered(input, question, cover.unanswerable.includes(at), samples),
  );
  return { rows: [...chosen, ...open], cover, samples };
}

function published(question: TestQuestion | undefined): TestPackageRow['answers'] {
  if (question === undefined) return [];
  const { analyte, target, asked } = question;
  return [{ analyte: analyte.key, target: publishedTarget(target), asked: [...asked] }];
}

function unanswered(
  input: PlanInput,
  question: TestQuestion,
  isUnanswerable: boolean,
  samples: number,
): TestPackageRow {
  const { analyte, target } = question;
  const offers = (input.prices?.packages ?? []).flatMap(({ tests }) =>
    tests.filter((test) => test.analyte === analyte.key),
  );
  const needed = offers.flatMap(
    (terms) => feedNeeded(input.planned, analyte, target, terms).printed ?? [],
  );
  const why = !isUnanswerable
    ? 'over-budget'
    : offers.length === 0
      ? 'not-offered'
      : input.feeds.has(analyte.key)
        ? 'limit-too-high'
        : 'no-feed';
  return {
    lab: null,
    package: null,
    price: null,
    currency: null,
    samples,
    cost: null,
    answers: published(question),
    unanswered: why,
    feed_needed: why === 'over-budget' || needed.length === 0 ? null : Math.min(...needed),
  };
}
