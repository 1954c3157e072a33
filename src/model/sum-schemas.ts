import { z } from 'zod';
import { OUTCOMES } from './outcome-words.ts';

/** Rows of the sums, log10 reductions and filter life that are made from the reductions. */

const maybe = z.number().nullable();

const sumSide = z.strictObject({
  low: maybe.describe('sum of the lowest possible values; null when not tested'),
  high: maybe.describe('sum of the highest; null when not tested or without an upper bound'),
  sample: z.string().nullable().describe('samples, joined by +'),
});

const sumReduction = z.strictObject({
  low: maybe.describe('1 - product high / feed low, without any uncertainty; null when unbounded'),
  high: maybe.describe('1 - product low / feed high; null when complete removal is possible'),
  estimate: maybe.describe('where every member was quantified on both sides'),
  interval_low: maybe.describe('what is printed, with uncertainty, as in reductions/1'),
  interval_high: maybe.describe('likewise; null when it reaches complete removal'),
  confidence: maybe.describe('of what is printed; null when it carries none'),
  low_at_detection_limit: maybe.describe('lower bound by plain arithmetic at detection limits'),
});

const limitVerdict = z.enum(['within', 'above', 'cannot-say']).nullable();

export const sumRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  event: z.string(),
  kind: z.enum(['natural', 'spiked']),
  sum: z.string(),
  name: z.string(),
  rule: z.enum(['sum', 'ratio']).describe('amounts added, or each over its own level'),
  unit: z.string(),
  basis: z.string().nullable(),
  outcome: z.enum(OUTCOMES),
  firm: z.boolean().describe('false where a member rests on assumed uncertainty alone'),
  reason: z.string().nullable().describe('why the sum is untested'),
  members: z.array(z.string()).describe('the fixed list, the same on both sides'),
  feed: sumSide,
  product: sumSide,
  reduction: sumReduction,
  nondetects_as_zero: z
    .strictObject({ feed: maybe, product: maybe })
    .describe('another convention, that of compliance sums: what was not detected counts as zero'),
  found: z
    .strictObject({
      members: z.array(z.string()),
      outcome: z.enum(OUTCOMES),
      reason: z.string().nullable(),
      feed: sumSide,
      product: sumSide,
      reduction: sumReduction,
    })
    .describe('the same sum over the members found in the feed only'),
  limit: maybe.describe('highest value a sum of ratios may take; null for amounts'),
  feed_verdict: limitVerdict,
  product_verdict: limitVerdict,
});

export const logReductionRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  event: z.string(),
  kind: z.enum(['natural', 'spiked']),
  analyte: z.string(),
  unit: z.string(),
  outcome: z.enum(OUTCOMES),
  firm: z.boolean(),
  low: maybe.describe('lower bound of log10(feed/product) as reported; null when unbounded'),
  high: maybe.describe('upper bound; null when nothing was found in the product'),
  estimate: maybe.describe('where both sides are single figures'),
  interval_low: maybe.describe(
    'the printed reduction as a log10: lower end with the uncertainty of both sides; null when unbounded',
  ),
  interval_high: maybe.describe('upper end likewise; null when it reaches complete removal'),
  confidence: maybe.describe('of the interval; null when it carries none'),
  counted: z
    .strictObject({
      low: maybe,
      high: maybe,
      confidence: z.number(),
      feed_count: z.int().nullable().describe('organisms counted; null where not known'),
      product_count: z.int().nullable(),
      feed_method: z.string(),
      product_method: z.string(),
    })
    .nullable()
    .describe('bounds that hold the chance of counting; null when not tested'),
});

const target = z.strictObject({
  comparator: z.enum(['at-least', 'at-most-level']),
  value: z.number().describe('a fraction, or a level in the unit of the row'),
  from: z.string().describe('the claim or the reference level it comes from'),
});

export const filterLifeRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  kind: z.enum(['natural', 'spiked']),
  analyte: z.string(),
  unit: z.string(),
  points: z.array(
    z.strictObject({
      event: z.string(),
      throughput_L: z.number(),
      outcome: z.enum(OUTCOMES),
      firm: z.boolean(),
      reduction_low: maybe,
      reduction_high: maybe,
      product_low: maybe,
      product_high: maybe,
      target: z.enum(['met', 'missed', 'cannot-say']).nullable(),
      sample: z.string().nullable(),
    }),
  ),
  without_throughput: z.array(z.string()).describe('events left out: no throughput was logged'),
  target: target.nullable(),
  last_met_L: maybe.describe('highest throughput up to which nothing shows the target missed'),
  first_missed_L: maybe.describe('lowest throughput at which the target is shown to be missed'),
  life: z.enum([
    'met-throughout',
    'ends-between',
    'missed-throughout',
    'not-in-order',
    'cannot-say',
  ]),
  release_L: maybe.describe(
    'first throughput with more in the product than in the feed, after an earlier reduction',
  ),
  release_firm: z.boolean().nullable(),
  rated: z.array(
    z.strictObject({
      from: z.string(),
      capacity_L: z.number(),
      tested_share: maybe.describe('highest throughput tested over the rated capacity'),
      missed_before: z.boolean().describe('the target was shown to be missed at or before it'),
    }),
  ),
});

export type SumRow = z.infer<typeof sumRow>;
export type LogReductionRow = z.infer<typeof logReductionRow>;
export type FilterLifeRow = z.infer<typeof filterLifeRow>;
