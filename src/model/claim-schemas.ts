import { z } from 'zod';
import { OUTCOMES } from './outcome-words.ts';
import { placeSchema } from './place-schema.ts';

/** Rows of the claims: what was claimed, what was measured, and what the one says of the other. */

const maybe = z.number().nullable();
const range = z.strictObject({ low: maybe, high: maybe });

const condition = <S extends z.ZodType>(stated: S) =>
  z.strictObject({
    stated: stated.describe('what the claim or its standard states; null where neither does'),
    low: maybe.describe('lowest value of the events tested'),
    high: maybe,
    state: z
      .enum(['inside', 'outside', 'not-known', 'not-stated'])
      .describe('not-known: a condition is stated and nothing was logged'),
  });

const eventSchema = z.strictObject({
  event: z.string(),
  kind: z.enum(['natural', 'spiked']),
  outcome: z.enum(OUTCOMES),
  decision: z.enum(['meets', 'misses', 'cannot-say']),
  why: z.string(),
  firm: z.boolean(),
  inside: z.boolean().describe('throughput, feed and pressure lie inside the stated conditions'),
  retested: z
    .boolean()
    .describe('two or more valid samples of the event miss the claim, each alone'),
  throughput_L: maybe,
  feed: range,
  product: range,
  reduction: range.describe('fractions; null where unbounded'),
  p_value: maybe.describe('of the test that the claim is met; null where bounds decide'),
  samples: z.string().describe('feed and product samples'),
  results: z.array(z.string()).describe('file:line:column of every result used'),
});

const certificationSchema = z.strictObject({
  standard: z.string(),
  contaminant: z.string(),
  challenge: z.string().nullable(),
  max_product: z.string().nullable(),
  min_reduction: maybe,
  feed: range.describe('what the feeds of this bench held, in the unit of the row'),
  bench: z
    .enum(['challenged', 'below-challenge', 'could-not-test', 'cannot-say', 'not-tested'])
    .describe('what the feed of this bench could show of it'),
  why: z.string(),
  confidence: z.enum(['high', 'medium', 'low']),
  source: z.string(),
  verified: z.string(),
});

const efficiencySchema = z.strictObject({
  standard: z.string(),
  metric: z.string(),
  comparator: z.enum(['=', '>=', '<=']),
  threshold: maybe,
  unit: z.string(),
  scenario: z.string().nullable().describe('null where the bench has none'),
  measured: maybe.describe('estimate of this bench in the unit of the threshold'),
  bench: z
    .enum(['reached', 'not-reached', 'not-tested'])
    .describe('by the estimate; a scenario of a bench is no rating'),
  source: z.string(),
  verified: z.string(),
});

export const VERDICTS = ['supported', 'contradicted', 'open', 'untestable', 'untested'] as const;

export const claimRow = z.strictObject({
  device: z.string(),
  claim: z.string().describe('word for word'),
  analyte: z.string().nullable(),
  comparator: z.enum(['at-least', 'at-most-level', 'up-to']).nullable(),
  value: maybe.describe('a fraction of a reduction, or a level in unit'),
  unit: z.string().nullable().describe('null for a fraction'),
  evidence: z.enum(['certified', 'tested', 'stated']),
  standard: z.string().nullable(),
  verdict: z.enum(VERDICTS),
  firm: z.boolean().describe('rests on bounds or on stated or measured uncertainty'),
  apparent: z
    .boolean()
    .describe(
      'an open claim that is missed, though not firmly, not often enough or not at the false-discovery rate',
    ),
  reason: z.string(),
  interval: range.describe('what decides: of the reduction, or of the product level'),
  p_value: maybe.describe('that the claim is met in all but one event; adjusted over the bench'),
  conditions: z.strictObject({
    throughput_L: condition(maybe),
    feed: condition(maybe),
    pressure_kPa: condition(maybe),
  }),
  events: z.array(eventSchema),
  certification: z.array(certificationSchema),
  efficiency: z
    .array(efficiencySchema)
    .describe('thresholds of water use that the standard named sets, beside each scenario'),
  findings: z.array(z.string()),
  place: placeSchema,
});

export type ClaimRow = z.infer<typeof claimRow>;
export type ClaimVerdict = ClaimRow['verdict'];
export type ClaimEvent = z.infer<typeof eventSchema>;
export type ClaimEfficiency = z.infer<typeof efficiencySchema>;
export type ClaimCertification = z.infer<typeof certificationSchema>;
