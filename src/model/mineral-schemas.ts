import { z } from 'zod';

/** Rows of what a water keeps of its minerals, gains from a mineral stage and may corrode. */

const maybe = z.number().nullable();

const guidanceSchema = z.strictObject({
  role: z.string().describe('minimum, optimum range, maximum, or the words of a taste panel'),
  low: maybe,
  high: maybe,
  unit: z.string(),
  basis: z.string().nullable(),
  context: z.string(),
  source: z.string(),
  verified: z.string().describe('seen in a named copy, or from memory'),
  verdict: z
    .enum(['within', 'below', 'above', 'cannot-say'])
    .describe('the interval against the range; guidance is not a requirement'),
});

const otherUnitSchema = z.strictObject({
  unit: z.string(),
  basis: z.string().nullable(),
  low: maybe,
  estimate: maybe,
  high: maybe,
});

export const MINERAL_NOTES = [
  'very-low-ionic-strength',
  'metal-parts-downstream',
  'not-a-measure-of-rejection',
  'assumed-uncertainty',
  'counted-as-bicarbonate',
  'below-table-of-solids',
] as const;

export const mineralRow = z.strictObject({
  position: z.enum(['feed', 'stage', 'product']),
  device: z.string().nullable().describe('null: a feed that serves every device of its event'),
  variant: z.string().nullable(),
  event: z.string().nullable(),
  kind: z.enum(['natural', 'spiked']),
  sample: z.string().nullable().describe('samples, joined by +'),
  group: z
    .enum(['content', 'gain', 'reduction', 'rejection', 'index'])
    .describe('what the water holds, gains, loses, what the device rejects, and indices'),
  quantity: z.string(),
  name: z.string(),
  against: z
    .enum(['feed', 'stage', 'devices-without-mineral-stage'])
    .nullable()
    .describe('the water a gain, reduction or rejection is counted from'),
  unit: z.string().describe('a fraction for reductions and rejections'),
  basis: z.string().nullable(),
  low: maybe.describe('lower bound; null when unknown or unbounded'),
  estimate: maybe.describe('where every figure it rests on was quantified'),
  high: maybe.describe('upper bound; null when unknown or unbounded'),
  confidence: maybe.describe('of the bounds of gains, reductions and rejections'),
  class: z.string().nullable().describe('gained, lost or not-told; or the class of an index'),
  method: z.string().nullable(),
  reason: z.string().nullable().describe('why there is no figure, or no bound on one side'),
  other_units: z.array(otherUnitSchema),
  guidance: z.array(guidanceSchema),
  notes: z.array(z.enum(MINERAL_NOTES)),
});

export type MineralRow = z.infer<typeof mineralRow>;
export type MineralGuidanceVerdict = z.infer<typeof guidanceSchema>;
export type MineralNote = (typeof MINERAL_NOTES)[number];
