import { z } from 'zod';

/** Rows of the outputs that look behind water use: its inputs, sweeps of them, and regions. */

const figure = z.number();
const maybe = figure.nullable();

export const waterInputRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  scenario: z.string(),
  input: z
    .string()
    .describe(
      'drain-ratio, per-start, tank.<figure>, flush.<rule>.volume, pour-factor, or year for the rest',
    ),
  unit: z.string().nullable(),
  estimate: maybe,
  standard_uncertainty: maybe.describe('null where it is not known or has no number'),
  rests_on: z.enum([
    'runs',
    'flushes',
    'tank figures',
    'stated',
    'assumed',
    'random pours',
    'inputs acting together',
  ]),
  share: maybe.describe(
    'share in the variance of the total drain ratio; null without draws. That of drain-ratio ' +
      'includes per-start, which comes from the same fit',
  ),
});

export const sweepRow = z.strictObject({
  input: z.string().describe('the input that is swept'),
  value: figure,
  unit: z.string(),
  second_input: z.string().nullable().describe('a second input, every pair of values'),
  second_value: maybe,
  second_unit: z.string().nullable(),
  device: z.string(),
  variant: z.string(),
  scenario: z.string(),
  clean_L_per_day: figure,
  producing_drain_L_per_day: figure,
  flush_drain_L_per_day: figure,
  flushes_per_day: figure,
  total_drain_ratio: maybe,
  recovery: maybe,
  drain_L_per_year: figure,
});

export const drainRegionRow = z.strictObject({
  pour_mL: figure,
  pours_per_day: figure,
  device: z.string().describe('the device whose estimate drains least here'),
  variant: z.string(),
  total_drain_ratio: z.strictObject({ low: maybe, estimate: maybe, high: maybe }),
  told_apart: z
    .boolean()
    .nullable()
    .describe('drains less than every other at the confidence; null without draws'),
  not_told_apart_from: z
    .array(z.string())
    .describe('others that may drain as little: device, or device (variant)'),
});

export type WaterInputRow = z.infer<typeof waterInputRow>;
export type SweepRow = z.infer<typeof sweepRow>;
export type DrainRegionRow = z.infer<typeof drainRegionRow>;
