import { z } from 'zod';
import { verdictSchema } from './level-schema.ts';
import { OUTCOMES } from './outcome-words.ts';

/** Rows of the bounds of product waters with another feed. */

const maybe = z.number().nullable();
const range = z.strictObject({ low: maybe, high: maybe });

/** Why no bound is given, in the order in which they are looked for. */
export const REFUSALS = [
  'not-tested',
  'other-state',
  'rise',
  'added-by-stage',
  'feed-too-low',
  'tested-feed-unclear',
  'feed-above-tested',
  'feed-below-tested',
  'ph-not-stated',
  'ph-not-tested',
  'ph-outside-tested',
  'tds-not-stated',
  'tds-not-tested',
  'tds-outside-tested',
  'throughput-not-logged',
  'throughput-outside-tested',
] as const;

/** What a bound rests on beyond the results themselves. */
export const OTHER_FEED_ASSUMPTIONS = [
  'passage-between',
  'monotone',
  'same-mix',
  'spiked-feed',
] as const;

/** The measures that can stand for the dissolved solids of a feed. */
export const SOLIDS = ['total-dissolved-solids', 'conductivity'] as const;

const refusal = z.enum(REFUSALS);

export const otherFeedRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  analyte: z.string(),
  unit: z.string().describe('canonical unit of feed and product'),
  feed: z
    .strictObject({
      low: maybe.describe('lower end of the other feed, widened by its uncertainty'),
      high: maybe.describe('upper end likewise; null without an upper bound'),
      estimate: maybe.describe('the figure where it was quantified'),
      reported_low: maybe.describe(
        'as reported, without uncertainty; what has to lie in the range',
      ),
      reported_high: maybe,
      uncertainty_from: z.enum(['stated', 'assumed']),
    })
    .describe('the other feed'),
  asked: z
    .strictObject({
      ph: maybe,
      tds: maybe.describe('in the unit of tested.tds'),
      throughput_L: maybe.describe('null: no volume was asked for'),
    })
    .describe('conditions of the other feed'),
  tested: z
    .strictObject({
      feed: range.describe('ends of the tested feeds; null where they are not known'),
      ph: range,
      tds: z.strictObject({
        measure: z.enum(SOLIDS).nullable(),
        unit: z.string().nullable(),
        low: maybe,
        high: maybe,
      }),
      throughput_L: range,
      events: z.array(
        z.strictObject({
          event: z.string(),
          kind: z.enum(['natural', 'spiked']),
          outcome: z.enum(OUTCOMES),
          used: z.boolean().describe('false: its passage has no upper bound, so it tested nothing'),
          feed_low: maybe,
          feed_high: maybe,
          passage_low: maybe,
          passage_high: maybe,
          ph: range,
          throughput_L: maybe,
        }),
      ),
    })
    .describe('what this device and state was tested at'),
  passage: range.describe('1 - reduction, from the lowest to the highest of all used events'),
  product: range.describe('feed times passage, end by end; null where refused'),
  outcome: z.enum(['bounded', 'refused']),
  reason: refusal.nullable().describe('the first reason that holds; null where bounded'),
  also: z.array(refusal).describe('further reasons'),
  assumptions: z
    .array(z.enum(OTHER_FEED_ASSUMPTIONS))
    .describe('what the bound rests on beyond the results'),
  firm: z.boolean().describe('false where it rests on assumed uncertainty'),
  reference_levels: z.array(verdictSchema),
  findings: z.array(z.string()),
});

export type OtherFeedRow = z.infer<typeof otherFeedRow>;
export type OtherFeedRefusal = (typeof REFUSALS)[number];
export type OtherFeedAssumption = (typeof OTHER_FEED_ASSUMPTIONS)[number];
