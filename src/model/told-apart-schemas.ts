import { z } from 'zod';

/** Rows of which devices differ on which analyte, and of the groups not told apart. */

const maybe = z.number().nullable();

const side = z.strictObject({ low: maybe, estimate: maybe, high: maybe });

export const TOLD_APART_VERDICTS = [
  'differ',
  'equivalent',
  'not-told-apart',
  'not-comparable',
] as const;

export const toldApartRow = z.strictObject({
  analyte: z.string(),
  kind: z.enum(['natural', 'spiked']).describe('feeds that were compared; never mixed'),
  unit: z.string().describe('canonical unit of the products'),
  device_a: z.string(),
  variant_a: z.string(),
  device_b: z.string(),
  variant_b: z.string(),
  verdict: z.enum(TOLD_APART_VERDICTS),
  less_passes: z
    .enum(['a', 'b'])
    .nullable()
    .describe('the device that lets less through; null unless they differ'),
  firm: z.boolean().describe('false where an assumed uncertainty enters, or nothing was compared'),
  reason: z.string().nullable().describe('why no more can be said'),
  events: z.array(z.string()).describe('events with one feed for both'),
  product_a: side.describe('over the shared events; an interval of the lab limits where censored'),
  product_b: side,
  product_difference: side.describe('product of a less product of b; decides on `differ`'),
  passage_difference: side.describe(
    'product/feed of a less that of b: a fraction, and reduction of b less reduction of a',
  ),
  passage_ratio: side.describe('product/feed of a over that of b; the feed cancels'),
  confidence: z.number().describe('of all intervals of this analyte and kind together'),
  comparisons: z.int().describe('pairs of this analyte and kind that share a feed'),
  adjusted_confidence: maybe.describe('of this one interval; null where nothing was compared'),
  margin: z.strictObject({
    of: z.enum(['passage_difference', 'passage_ratio']),
    low: z.number(),
    high: z.number(),
  }),
  within_margin: z.boolean().describe('no difference beyond the margin is left open'),
});

export const toldApartGroupRow = z.strictObject({
  analyte: z.string(),
  kind: z.enum(['natural', 'spiked']),
  group: z.int().describe('number of the group within the analyte and kind, from 1'),
  groups: z.int().describe('groups of the analyte and kind; 1 where nobody was told apart'),
  members: z.array(z.strictObject({ device: z.string(), variant: z.string() })),
  not_comparable: z.int().describe('pairs of the group that could not be compared'),
  confidence: z.number(),
  comparisons: z.int(),
});

export type ToldApartRow = z.infer<typeof toldApartRow>;
export type ToldApartGroupRow = z.infer<typeof toldApartGroupRow>;
