import { z } from 'zod';

/** Rows of what to test next: before a campaign a plan and packages, during one the next samples. */

const figure = z.number();
const maybe = figure.nullable();
const word = z.string().nullable();

const money = {
  price: maybe.describe('of the package, a sample; null without a price list'),
  currency: word,
};

const target = z
  .strictObject({
    kind: z
      .enum(['reduction', 'level', 'any'])
      .describe('any: that there is a reduction at all, where nothing else is asked'),
    value: maybe.describe('a reduction as a fraction, or a level in the unit of the row'),
  })
  .describe('what is to be shown');

export const testPlanRow = z.strictObject({
  analyte: z.string(),
  unit: z.string().describe('canonical unit of limits, feeds and levels'),
  target,
  asked: z.array(z.string()).describe('devices whose claims ask for it, or --wanted'),
  lab: word.describe('null: the limits at which this bench was tested'),
  package: word,
  ...money,
  limit: figure.describe('reporting limit'),
  detection_limit: maybe,
  feed: z.strictObject({
    low: maybe.describe('null where the feed was not tested'),
    high: maybe,
    estimate: maybe,
    source: word.describe('event, or sample of the feed file'),
  }),
  largest_reduction: z
    .strictObject({
      plain: maybe.describe('1 - limit / feed, without any uncertainty'),
      printed: maybe.describe('the lower bound that would be printed'),
    })
    .describe('if the product is not detected; null where the feed can show none'),
  shows_target: z.boolean().describe('a product that is not detected would show it on this feed'),
  feed_needed: z.strictObject({
    plain: maybe.describe('limit / (1 - reduction), or the level'),
    printed: maybe.describe('smallest feed of three digits whose printed bound reaches the target'),
  }),
  spike: maybe.describe('to be added to the feed for that; 0: nothing; null: no feed suffices'),
  replicates: z.strictObject({
    pair: z.int().nullable().describe('product samples of each of two devices'),
    all_pairs: z.int().nullable().describe('the same, to tell all pairs at once'),
    pairs: z.int().describe('pairs of the devices planned for'),
    feed: maybe.describe('feed it is planned at: as it is, or as needed'),
    why_none: z
      .enum(['both-below-limit', 'stated-uncertainty', 'too-many', 'no-target', 'no-feed'])
      .nullable()
      .describe('why there is no number for a pair'),
  }),
});

export const testPackageRow = z.strictObject({
  lab: word.describe('null in the rows of questions that no package answers'),
  package: word,
  ...money,
  samples: z.int().describe('events x (1 feed + devices x replicates)'),
  cost: maybe,
  answers: z.array(z.strictObject({ analyte: z.string(), target, asked: z.array(z.string()) })),
  unanswered: z
    .enum(['not-offered', 'limit-too-high', 'over-budget', 'no-feed'])
    .nullable()
    .describe('null for a package that is chosen'),
  feed_needed: maybe.describe(
    'of a question with limit-too-high: smallest feed at which a package of the list answers it',
  ),
});

export const OPEN_KINDS = ['claim', 'rise', 'wanted', 'untestable', 'level'] as const;

const openVerdict = z.strictObject({
  kind: z.enum(OPEN_KINDS),
  device: z.string(),
  variant: z.string(),
  analyte: word,
  about: z
    .string()
    .describe('the claim word for word, the reduction wanted as a fraction, or what is open'),
  now: z.string().describe('the verdict as it stands'),
  because: word.describe('why it is open'),
  would_be: word.describe('the verdict if the figures repeat'),
});

export const TEST_ACTIONS = ['retest', 'retest-spiked', 'spike', 'none'] as const;

export const nextTestRow = z.strictObject({
  rank: z.int().nullable().describe('1 is bought first; null: nothing on offer settles these'),
  action: z
    .enum(TEST_ACTIONS)
    .describe('a new event on the natural feed, on the spiked feed as before, or on a new spike'),
  lab: word.describe('null without a price list: the lab and limits of the bench'),
  package: word,
  devices: z.array(z.string()),
  product_samples: z.array(z.int()).describe('of each device'),
  samples: z.int().describe('feed and products; a feed that a row above pays for is not counted'),
  spike_to: z.array(
    z.strictObject({
      analyte: z.string(),
      feed: figure.describe('level to reach'),
      unit: z.string(),
    }),
  ),
  ...money,
  cost: maybe,
  verdicts: z
    .array(openVerdict)
    .describe('those it settles; with action none those that nothing on offer settles'),
  per_money: maybe.describe('verdicts settled for one unit of money'),
  per_sample: maybe.describe('verdicts settled for one sample'),
  assumes: z.array(z.string()).describe('what the count takes for granted'),
  cost_so_far: maybe,
  settled_so_far: z.int(),
});

export type TestPlanRow = z.infer<typeof testPlanRow>;
export type TestPackageRow = z.infer<typeof testPackageRow>;
export type NextTestRow = z.infer<typeof nextTestRow>;
