import { z } from 'zod';
import { claimRow } from './claim-schemas.ts';
import { costCurveRow, costRow } from './cost-schemas.ts';
import { flowColumns } from './flow-schemas.ts';
import { idleRiseRow } from './idle-rise-schemas.ts';
import { type LevelVerdict, verdictSchema } from './level-schema.ts';
import { mineralRow } from './mineral-schemas.ts';
import { nextTestRow, testPackageRow, testPlanRow } from './next-test-schemas.ts';
import { otherFeedRow } from './other-feed-schemas.ts';
import { OUTCOMES } from './outcome-words.ts';
import { placeSchema } from './place-schema.ts';
import { sheetRow } from './sheet-schemas.ts';
import { spikeRow } from './spike-schemas.ts';
import { filterLifeRow, logReductionRow, sumRow } from './sum-schemas.ts';
import { toldApartGroupRow, toldApartRow } from './told-apart-schemas.ts';
import { drainRegionRow, sweepRow, waterInputRow } from './water-schemas.ts';

/**
 * The rows of every published output. A field that is removed or redefined raises the number behind
 * the slash. Numbers are finite doubles; null stands for unknown or undefined.
 */

const figure = z.number();
const maybe = figure.nullable();

const findingSchema = z.strictObject({
  level: z.enum(['error', 'warning', 'note']),
  code: z.string(),
  message: z.string(),
  remedy: z.string(),
  place: placeSchema,
});

/** One side of a reduction: all that is known of the feed or of the product. */
const sideSchema = z.strictObject({
  low: maybe.describe('lower bound; null when not tested'),
  high: maybe.describe('upper bound; null when not tested or without an upper bound'),
  estimate: maybe.describe('the figure where it was quantified'),
  n: z.int().describe('results that went in'),
  method: z.string().nullable().describe('how they were joined, and how each is bounded'),
  sample: z.string().nullable().describe('samples, joined by +'),
});

const UNCERTAINTY_SOURCES = ['stated', 'duplicates', 'assumed'] as const;

/** Standard uncertainties of feed and product, where they are single figures. */
const uncertaintySchema = z.strictObject({
  feed: maybe.describe('standard uncertainty of the estimate of the feed, canonical unit'),
  feed_from: z
    .enum(UNCERTAINTY_SOURCES)
    .nullable()
    .describe('stated by the lab, shown by duplicates of the bench, or assumed'),
  product: maybe,
  product_from: z.enum(UNCERTAINTY_SOURCES).nullable(),
});

const reductionRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  event: z.string(),
  kind: z.enum(['natural', 'spiked']),
  analyte: z.string(),
  outcome: z.enum(OUTCOMES),
  firm: z
    .boolean()
    .describe('rests on bounds or on stated or measured uncertainty; false: on assumed alone'),
  rise_p: maybe.describe(
    'p-value of the one-sided test that the product lies above the feed, adjusted for all pairs and claims of the bench',
  ),
  unit: z.string().describe('canonical unit of feed and product'),
  feed: sideSchema,
  product: sideSchema,
  uncertainty: uncertaintySchema,
  reduction: z.strictObject({
    low: maybe.describe(
      '1 - product high / feed low, a fraction, without any uncertainty; null when unbounded',
    ),
    high: maybe.describe('1 - product low / feed high; null when complete removal is possible'),
    estimate: maybe.describe('1 - product / feed where both were quantified'),
    interval_low: maybe.describe(
      'what is printed: lower end with the uncertainty of both sides; null when unbounded',
    ),
    interval_high: maybe.describe('upper end likewise; null when it reaches complete removal'),
    confidence: maybe.describe(
      'confidence of the printed interval; null when it carries none, as at a detection limit',
    ),
    low_at_detection_limit: maybe.describe(
      'lower bound at the detection limit, by plain arithmetic: about what was reported',
    ),
    bound_limit: z
      .enum(['reporting', 'detection', 'range'])
      .nullable()
      .describe('which limit sets the bound; null when no result is censored'),
  }),
  log_reduction: z.strictObject({ low: maybe, high: maybe }).nullable(),
  reference_levels: z.array(verdictSchema),
  findings: z.array(z.string()),
});

const spread = z.strictObject({ low: maybe, estimate: maybe, high: maybe });

/** Whether all, none or a part of a range keeps to a yardstick; the last also without a range. */
const YARDSTICK_VERDICTS = ['meets', 'misses', 'cannot-say'] as const;

const waterUseRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  scenario: z.string(),
  clean_L_per_day: spread,
  producing_drain_L_per_day: spread,
  flush_drain_L_per_day: spread,
  flushes_per_day: spread,
  total_drain_ratio: spread,
  recovery: spread,
  drain_L_per_year: spread,
  drain_ratio: maybe.describe('drain per clean volume while producing'),
  per_start_L: maybe.describe('drain per start of production'),
  tank: z
    .strictObject({
      made_L_per_day: figure.describe('clean water that went into the tank'),
      drain_per_made: maybe.describe('drain while filling per litre made'),
      drain_per_drawn: maybe.describe('the same drain per litre drawn, levels not made equal'),
      level_drain_L: figure.describe(
        'drain added over the whole scenario so that the tank ends as full as it began',
      ),
      shortfall_L_per_day: figure.describe('asked for and not there'),
      starts_per_day: figure.describe('how often it starts to fill'),
    })
    .nullable()
    .describe('the refills of a storage tank that tanks.csv describes'),
  yardsticks: z
    .strictObject({
      recovery_tank_bypassed: maybe.describe('product / inlet while producing, without the tank'),
      efficiency_in_use: maybe.describe('product the user gets / inlet over the scenario'),
      within_2_3: z
        .enum(YARDSTICK_VERDICTS)
        .nullable()
        .describe('at most 2.3 to drain per volume treated; cannot-say: the range holds it'),
      reaches_40_percent: z.enum(YARDSTICK_VERDICTS).nullable(),
    })
    .nullable()
    .describe(
      'beside published yardsticks, by the ranges; without a range cannot-say. No ratings. Reverse osmosis only',
    ),
  findings: z.array(z.string()),
});

const waterCurveRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  pour_mL: figure,
  total_drain_ratio: maybe,
  low: maybe.describe(
    'lower end of the total drain ratio; null where its uncertainty is not known',
  ),
  high: maybe,
  recovery: maybe,
  pours_per_day: maybe.describe(
    'pours spread evenly from 07:00 to 22:00; null: the pour stands alone',
  ),
});

const breakEvenRow = z.strictObject({
  device_a: z.string(),
  device_b: z.string(),
  variant_a: z.string(),
  variant_b: z.string(),
  pour_mL: maybe.describe(
    'pour size at which both drain the same; null when there is none. With a tank there may be two: a row each',
  ),
  low_mL: maybe.describe(
    'smallest pour size from which on, up to pour_mL, the two are not told apart; null when unknown',
  ),
  high_mL: maybe.describe('largest such pour size; null when unknown or without end'),
});

const pourRow = z.strictObject({
  device: z.string(),
  variant: z.string(),
  runs: z.int(),
  pours: z.int(),
  volume_L: figure,
  time_s: figure,
  flow_L_per_min: figure.describe('all volume over all time'),
  lowest_run_L_per_min: figure,
  highest_run_L_per_min: figure,
  fill_glass_250_mL_s: figure,
  fill_carafe_1_L_s: figure,
  fill_us_cup_s: figure,
  fill_us_gallon_s: figure,
  ...flowColumns,
});

const measureRow = z.strictObject({
  measure: z.string(),
  title: z.string(),
  unit: z.string(),
  direction: z.enum(['higher', 'lower', 'target', 'none']),
  device: z.string(),
  variant: z.string(),
  outcome: z.string().describe('measured, bounded, or why there is no figure'),
  low: maybe,
  estimate: maybe,
  high: maybe,
  shown: z.string().describe('as printed in tables'),
});

const traceRow = z.strictObject({
  step: z.int(),
  depth: z.int(),
  what: z.string(),
  value: maybe,
  unit: z.string().nullable(),
  formula: z.string().nullable(),
  place: placeSchema,
});

const panelRow = z.strictObject({
  device: z.string(),
  against: z.string(),
  test: z.enum(['triangle', 'duo-trio', 'paired']),
  attribute: z.string().nullable(),
  assessors: z.int(),
  correct: z.int(),
  chance: figure.describe('probability of a correct answer by guessing'),
  p_value: figure.describe('one-sided, exact'),
  p_value_two_sided: maybe.describe('of paired tests only'),
  correct_needed: z.int().nullable().describe('smallest significant count; null: too few answers'),
  verdict: z.enum(['told-apart', 'not-told-apart']),
  distinguishers: z
    .strictObject({ low: figure, estimate: figure, high: figure })
    .describe('share that tells the waters apart; each limit one-sided 95 %'),
  distinguishers_two_sided: z
    .strictObject({ low: figure, high: figure })
    .describe('both limits together at the confidence of the bench'),
  assessors_needed: z.int().nullable().describe('answers the planned power needs'),
  correct_needed_two_sided: z.int().nullable().describe('of paired tests only'),
  assessors_needed_two_sided: z.int().nullable().describe('of paired tests only'),
});

const lookupRow = z.strictObject({
  analyte: z.string(),
  name: z.string(),
  cas: z.string().nullable(),
  group: z.string(),
  unit: z.string(),
  basis: z.string().nullable(),
  bases: z.array(z.strictObject({ basis: z.string(), g_per_mol: maybe })),
  aliases: z.array(z.string()),
  members: z.array(z.string()),
  note: z.string().nullable(),
  levels: z.array(
    z.strictObject({
      jurisdiction: z.string(),
      kind: z.string(),
      low: maybe,
      value: maybe,
      unit: z.string(),
      basis: z.string().nullable(),
      edition: z.string().nullable(),
      note: z.string().nullable(),
      source: z.string(),
      verified: z.string(),
    }),
  ),
});

const notesRow = z.strictObject({
  id: z.string().describe('section and name of the figure'),
  value: maybe.describe('the figure in full; null where the text is quoted from the bench'),
  unit: z.string().nullable(),
  text: z.string().describe('as printed in the notes'),
});

export type FindingRow = z.infer<typeof findingSchema>;
export type ReductionRow = z.infer<typeof reductionRow>;
export type ReductionOutcome = ReductionRow['outcome'];
export type { LevelVerdict };
export type UncertaintySource = (typeof UNCERTAINTY_SOURCES)[number];
export type WaterUseRow = z.infer<typeof waterUseRow>;
export type Spread = z.infer<typeof spread>;
export type YardstickVerdict = (typeof YARDSTICK_VERDICTS)[number];
export type WaterCurveRow = z.infer<typeof waterCurveRow>;
export type BreakEvenRow = z.infer<typeof breakEvenRow>;
export type PourRow = z.infer<typeof pourRow>;
export type MeasureRow = z.infer<typeof measureRow>;
export type PanelRow = z.infer<typeof panelRow>;
export type TraceRow = z.infer<typeof traceRow>;
export type LookupRow = z.infer<typeof lookupRow>;
export type NotesRow = z.infer<typeof notesRow>;

/** Row schema of every published output, by schema name. */
const ROW_SCHEMAS = {
  'reductions/1': reductionRow,
  'sums/1': sumRow,
  'log-reductions/1': logReductionRow,
  'filter-life/1': filterLifeRow,
  'spikes/1': spikeRow,
  'claims/1': claimRow,
  'water-use/1': waterUseRow,
  'water-curve/1': waterCurveRow,
  'break-even/1': breakEvenRow,
  'water-inputs/1': waterInputRow,
  'sweep/1': sweepRow,
  'drain-regions/1': drainRegionRow,
  'pours/1': pourRow,
  'minerals/1': mineralRow,
  'costs/1': costRow,
  'cost-over-time/1': costCurveRow,
  'idle-rise/1': idleRiseRow,
  'compare/1': measureRow,
  'told-apart/1': toldApartRow,
  'told-apart-groups/1': toldApartGroupRow,
  'panel/1': panelRow,
  'other-feed/1': otherFeedRow,
  'sheets/1': sheetRow,
  'next-tests/1': nextTestRow,
  'test-plan/1': testPlanRow,
  'test-packages/1': testPackageRow,
  'trace/1': traceRow,
  'lookup/1': lookupRow,
  'notes/1': notesRow,
  'findings/1': findingSchema,
} as const;

export type SchemaName = keyof typeof ROW_SCHEMAS;

/** Every one of them, for the generated documents too. @public */
export const SCHEMA_NAMES = Object.keys(ROW_SCHEMAS) as SchemaName[];

/**
 * The leaves of a row in schema order, each as its path of keys: `['feed', 'low']`. A list is one
 * leaf, whatever it holds.
 */
export function rowLeaves(name: SchemaName): string[][] {
  return leavesOf(ROW_SCHEMAS[name]);
}

function leavesOf(schema: unknown): string[][] {
  const inner = schema instanceof z.ZodNullable ? schema.unwrap() : schema;
  if (!(inner instanceof z.ZodObject)) return [[]];
  return Object.entries(inner.shape).flatMap(([key, value]) =>
    leavesOf(value).map((path) => [key, ...path]),
  );
}

/** The envelope every JSON output comes in. */
export function envelopeSchema(name: SchemaName) {
  return z.strictObject({
    tool: z.strictObject({ name: z.literal('pourbench'), version: z.string() }),
    schema: z.literal(name),
    bench: z
      .strictObject({
        title: z.string().nullable(),
        edition: z.string().nullable(),
        fingerprint: z.string(),
      })
      .nullable(),
    inputs: z.array(
      z.strictObject({ path: z.string(), sha256: z.string(), rows: z.int().nullable() }),
    ),
    settings: z.record(z.string(), z.unknown()),
    rows: z.array(ROW_SCHEMAS[name]),
    findings: z.array(findingSchema),
  });
}
