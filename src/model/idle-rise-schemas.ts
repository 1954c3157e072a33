import { z } from 'zod';

/** Rows of the rise after a pause. Readings of two meters or scales are never joined. */

const maybe = z.number().nullable();
const spread = z.strictObject({ low: maybe, estimate: maybe, high: maybe });

export const idleRiseRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  meter: z.string().nullable(),
  scale: z.string().nullable().describe('nacl, 442 or a factor; null: not stated'),
  unit: z.enum(['ppm', 'mg/L']),
  what: z.enum(['pause', 'scenario']).describe('a tested pause, or the water of a scenario'),
  idle_s: maybe.describe('of a pause: its length'),
  scenario: z.string().nullable(),
  first_draw_tds: maybe.describe('reading of the first portion after the pause'),
  first_draw_L: maybe.describe('volume of that portion'),
  first_draw_of_feed: maybe.describe('the same as a share of the feed by the same meter'),
  running_tds: maybe,
  running_from: z
    .enum(['no-pause', 'last-reading'])
    .nullable()
    .describe('read without a pause, or the last reading after this one'),
  recover_L: maybe.describe('litres until nine tenths of the rise are gone; null: not reached'),
  drawn_L: maybe.describe('litres that were read'),
  trials: z.int().nullable(),
  feed_tds: maybe,
  covered_share: maybe.describe('of a scenario: share of its water within the tested pauses'),
  mean_tds: spread.describe(
    'mean of the covered water; low and high: of the nearest tested pauses',
  ),
  above_tds: maybe.describe('the chosen reading'),
  share_above: spread.describe('share of all water above it; what is not covered widens it'),
  drain_L_per_year: maybe.describe('drain of the same device, state and scenario'),
  findings: z.array(z.string()),
});

export type IdleRiseRow = z.infer<typeof idleRiseRow>;
