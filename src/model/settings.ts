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
  quality: z
    .strictObject({
      duplicate_rpd: z.number().gt(0).max(200).default(20),
      feed_rpd: z.number().gt(0).max(200).default(30),
      blank_factor: z.number().min(1).default(5),
      ion_balance: z.number().gt(0).max(100).default(5),
      drain_balance: z.number().gt(0).max(100).default(20),
      receipt_temperature: z.number().min(0).max(30).default(6),
      spike_recovery: z.number().gt(0).lt(100).default(20),
    })
    .prefault({})
    .describe(
      'criteria of quality control: relative percent difference of duplicates and of feeds, how ' +
        'many times the blank a result has to be, percent of the ion and drain balance, degrees ' +
        'Celsius on receipt, and percent that a measured dose may lie from the nominal one',
    ),
  cross_lab: z
    .boolean()
    .default(false)
    .describe('whether feed and product may come from different lab files'),
  equivalence_margin: share
    .default(0.05)
    .describe(
      'devices whose reductions differ by no more than this fraction count as equivalent: 0.05 is ' +
        'five points of percent',
    ),
  uncertainty: z
    .strictObject({
      repeatability_fraction: z.number().gt(0).lte(1).default(0.5),
      feed_product_correlation: z.number().min(0).lt(1).default(0),
    })
    .prefault({})
    .describe(
      'where neither the lab nor duplicates say how far results scatter: the share of the usual ' +
        'scatter between labs (Horwitz and Thompson) that is taken as the scatter within one lab; ' +
        'and the correlation of the errors of a feed and a product of one batch',
    ),
  instruments: z
    .strictObject({
      cylinder: z.enum(['A', 'B']).default('B'),
      vessel_tolerance: z.number().gt(0).lt(1).optional(),
      scale_division_g: z.number().gt(0).default(1),
      stopwatch_s: z.number().gt(0).default(0.12),
      gauge_kpa: z.number().gt(0).default(14),
      thermometer_degC: z.number().gt(0).default(1),
      tds_tolerance: z.number().gt(0).lt(1).default(0.02),
    })
    .prefault({})
    .describe(
      'what the bench was measured with: class of the graduated cylinders (ASTM E1272), or for ' +
        'unmarked jugs how far they may be off as a fraction; grams of one division of the scale; ' +
        'standard uncertainty of a hand-stopped time in seconds; how far a pressure gauge may be ' +
        'off in kPa, a thermometer in degC, and a TDS meter as a fraction of its reading',
    ),
  water_use: z
    .strictObject({
      draws: z.int().min(0).max(100000).default(1000),
      years: z.int().min(1).max(100000).default(100),
      pour_size_spread: z.number().min(0).lt(1).default(0.1),
      stated_flush_spread: z.number().min(0).lt(1).default(0.05),
      stated_tank_spread: z.number().min(0).lt(1).default(0.05),
      litres_per_person: z.number().gt(0).default(0.927),
      away: z
        .array(
          z.strictObject({
            from_day: z.int().min(1),
            days: z.int().min(1),
            scenario: z.string().min(1).optional(),
          }),
        )
        .default([]),
    })
    .prefault({})
    .describe(
      'draws of the uncertain figures and simulated years behind each range (0 draws: no range); ' +
        'assumed relative standard uncertainty of the pour size of a scenario and of a flush volume ' +
        'or the shell of a tank that is stated instead of measured; litres each of the people draws in a day; days away ' +
        '(day 1 is the Monday of power-on), of every generated scenario unless one is named',
    ),
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
  cost_horizon: z
    .string()
    .default('5 years')
    .describe('horizon of the cost of ownership, such as 5 years'),
  discount_rate: z
    .number()
    .min(0)
    .max(1)
    .default(0)
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
