import { z } from 'zod';

/**
 * The settings of a bench: `bench.json`. Unknown keys are errors. Every default is written here and
 * nowhere else.
 */
const share = z.number().gt(0).lt(1);

export const benchSettingsSchema = z.strictObject({
  title: z.string().min(1).describe('title of the comparison'),
  edition: z.string().min(1).optional().describe('edition of this bench, such as 2026-07'),
  date: z.iso.date().optional().describe('day of the edition, ISO 8601'),
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/)
    .optional()
    .describe('currency of totals, ISO 4217'),
  measures: z
    .enum(['us', 'imperial', 'metric'])
    .optional()
    .describe(
      'how large a cup, a gallon or a fluid ounce is; without it such words are asked about',
    ),
  reference_levels: z
    .array(z.string().min(1))
    .optional()
    .describe('jurisdictions whose reference levels stand beside the results'),
  confidence: share.default(0.95).describe('confidence of intervals'),
  seed: z.int().min(0).max(4294967295).default(1).describe('seed of everything drawn at random'),
  nondetect_bound: z
    .enum(['reporting', 'detection'])
    .default('reporting')
    .describe('the limit that bounds a result that was not detected'),
  feed: z
    .strictObject({
      matching: z.enum(['event', 'bracketing']).default('bracketing'),
      window: z.string().default('24 h'),
    })
    .prefault({})
    .describe(
      'feed of a product: of the same event; with bracketing, else the feeds before and after it ' +
        'within the window',
    ),
  cross_lab: z
    .boolean()
    .default(false)
    .describe('whether feed and product may come from different lab files'),
  scenario_days: z.int().min(1).max(3660).default(365).describe('days a scenario is played for'),
  tariffs: z
    .strictObject({
      water: z.string().optional(),
      sewer: z.string().optional(),
      electricity: z.string().optional(),
      bottled_water: z.string().optional(),
    })
    .optional()
    .describe('prices per volume or energy, such as 2.20 USD/m3'),
  cost_horizon: z.string().optional().describe('horizon of the cost of ownership, such as 5 years'),
  discount_rate: z
    .number()
    .min(0)
    .max(1)
    .optional()
    .describe('discount rate per year, 0.03 is 3 %'),
  people: z.number().gt(0).optional().describe('people in the household'),
  display: z.enum(['si', 'us']).default('si').describe('units of tables and notes'),
  time_zone: z
    .string()
    .optional()
    .describe('IANA time zone; only converts lab times that carry offsets'),
  disclosure: z
    .string()
    .optional()
    .describe('how devices were acquired and what interests exist, in a sentence'),
  score: z.record(z.string(), z.unknown()).optional().describe('weights of a score'),
  accepted_findings: z
    .array(
      z.strictObject({
        code: z.string().min(1),
        file: z.string().optional(),
        line: z.int().min(1).optional(),
        reason: z.string().min(1),
      }),
    )
    .optional()
    .describe('warnings that were looked at and accepted, each with a reason'),
});

export type BenchSettings = z.infer<typeof benchSettingsSchema>;
