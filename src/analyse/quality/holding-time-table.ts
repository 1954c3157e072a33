import type { Analyte } from '../../reference/index.ts';

/**
 * How far the rule was read: `seen`, in a copy of it; `laboratories`, in tables that drinking-water
 * laboratories publish; `memory`, not read.
 */
export type RuleReading = 'seen' | 'laboratories' | 'memory';

/** How long a sample may stand before its analysis, and how warm it may arrive. */
export interface HoldingTime {
  readonly hours: number;
  readonly words: string;
  /** Warmest temperature on receipt, °C; null where none is asked for. */
  readonly warmestC: number | null;
  /** Regulation or method that says so. */
  readonly rule: string;
  readonly verified: RuleReading;
}

const HOUR = 1;
const DAY = 24;
const MONTH = 30.44 * DAY;

const T136 = '40 CFR 136.3 table II';
const T141 = '40 CFR 141.23';

/**
 * Maximum holding times and temperatures of transport.
 *
 * The rules for drinking water (40 CFR 141 and the methods it names) come first, table II of
 * 40 CFR 136.3 where they have none; of two times the shorter. Chlorine and pH are due within 15
 * minutes; so is what else escapes or reacts at once.
 * Source: 40 CFR 136.3 table II in a state copy (Florida DEP-SOP-001/01, table FS1000-4, 2014) and in a
 *   copy of its 1995 edition; the table of 40 CFR 141.23(k)(2) in a copy of its 2003 edition; 40 CFR
 *   141.852(a)(3). Each entry says how far it was read.
 * Checked by: tests/outside-checks/holding-times/
 */
const BY_KEY: ReadonlyMap<string, HoldingTime> = new Map([
  ...each(0.25 * HOUR, '15 minutes', null, T136, 'seen', ['chlorine-total', 'chlorine-free', 'ph']),
  ...each(0.25 * HOUR, '15 minutes', null, T136, 'memory', [
    'chloramines',
    'monochloramine',
    'chlorine-dioxide',
    'ozone',
    'dissolved-oxygen',
  ]),
  ...each(30 * HOUR, '30 hours', 10, '40 CFR 141.852', 'seen', [
    'total-coliform',
    'e-coli',
    'fecal-coliform',
  ]),
  ...each(8 * HOUR, '8 hours', 10, T136, 'seen', ['enterococci']),
  ...each(8 * HOUR, '8 hours', 10, '40 CFR 141.74', 'memory', [
    'heterotrophic-plate-count',
    'colony-count-22c',
  ]),
  ...each(96 * HOUR, '96 hours', 20, 'USEPA 1623', 'memory', ['cryptosporidium', 'giardia']),
  ...each(48 * HOUR, '48 hours', 6, T141, 'seen', ['nitrate', 'nitrite', 'asbestos']),
  ...each(48 * HOUR, '48 hours', 6, T136, 'laboratories', ['orthophosphate']),
  ...each(48 * HOUR, '48 hours', 6, T136, 'seen', [
    'turbidity',
    'color-apparent',
    'color-true',
    'surfactants-mbas',
  ]),
  ...each(7 * DAY, '7 days', 6, T136, 'seen', [
    'total-dissolved-solids',
    'total-suspended-solids',
    'total-solids',
    'sulfide',
    'hydrogen-sulfide',
  ]),
  ...each(14 * DAY, '14 days', 6, T136, 'seen', [
    'total-alkalinity',
    'phenolphthalein-alkalinity',
    'bicarbonate',
    'carbonate',
    'hydroxide',
  ]),
  ...each(14 * DAY, '14 days', 6, T141, 'seen', ['cyanide-free', 'cyanide-total']),
  ...each(14 * DAY, '14 days', 6, 'USEPA 300.1', 'laboratories', ['chlorite']),
  ...each(28 * DAY, '28 days', null, 'USEPA 300.1', 'laboratories', ['bromate', 'chlorate']),
  ...each(28 * DAY, '28 days', null, 'USEPA 314.0', 'laboratories', ['perchlorate']),
  ...each(28 * DAY, '28 days', 6, T141, 'seen', ['nitrate-nitrite']),
  ...each(28 * DAY, '28 days', 6, T136, 'seen', [
    'ammonia',
    'total-kjeldahl-nitrogen',
    'total-phosphorus',
    'sulfate',
    'silica',
    'conductivity',
    'chromium-6',
  ]),
  ...each(28 * DAY, '28 days', 6, T136, 'memory', [
    'total-nitrogen',
    'total-organic-carbon',
    'dissolved-organic-carbon',
  ]),
  ...each(28 * DAY, '28 days', null, T136, 'seen', ['chloride', 'fluoride', 'bromide']),
  ...each(28 * DAY, '28 days', null, T141, 'seen', ['mercury']),
  ...each(6 * MONTH, '6 months', null, T141, 'seen', [
    'antimony',
    'arsenic',
    'barium',
    'beryllium',
    'cadmium',
    'chromium',
    'nickel',
    'selenium',
    'thallium',
  ]),
  ...each(6 * MONTH, '6 months', null, T136, 'seen', ['boron', 'total-hardness']),
  ...each(6 * MONTH, '6 months', null, T136, 'laboratories', [
    'calcium',
    'magnesium',
    'sodium',
    'potassium',
    'uranium',
  ]),
  ...each(4 * DAY, '4 days', null, 'practice of radon methods', 'memory', ['radon']),
  ...each(7 * DAY, '7 days', 6, 'USEPA 548.1 and 549.2', 'memory', [
    'endothall',
    'diquat',
    'paraquat',
  ]),
]);

const BY_GROUP: ReadonlyMap<string, HoldingTime> = new Map([
  ...each(14 * DAY, '14 days', 6, 'USEPA 524.2', 'laboratories', ['voc', 'dbp-thm']),
  ...each(14 * DAY, '14 days', 6, 'USEPA 552.3', 'memory', ['dbp-haa']),
  ...each(14 * DAY, '14 days', 6, 'USEPA 500 series', 'memory', ['pesticides-svoc']),
  ...each(28 * DAY, '28 days', 10, 'USEPA 533', 'memory', ['pfas']),
  ...each(6 * MONTH, '6 months', null, T136, 'laboratories', ['metals']),
  ...each(6 * MONTH, '6 months', null, T136, 'memory', ['radiological']),
]);

/**
 * What the time of its group does not fit: species that change into each other, a nuclide that decays
 * in days, and substances no method of the group is for.
 */
const NOT_OF_GROUP = [
  'arsenic-iii',
  'arsenic-v',
  'chromium-3',
  'iodine-131',
  'acrylamide',
  'edetic-acid',
  'nitrilotriacetic-acid',
];

function each(
  hours: number,
  words: string,
  warmestC: number | null,
  rule: string,
  verified: RuleReading,
  keys: readonly string[],
): (readonly [string, HoldingTime])[] {
  const time = { hours, words, warmestC, rule, verified };
  return keys.map((key) => [key, time] as const);
}

/** Nitrate kept with sulfuric acid counts as nitrate plus nitrite, 28 days. */
const NITRATE_WITH_ACID = BY_KEY.get('nitrate-nitrite') ?? null;

/** PFAS kept with a Trizma buffer are those of another method. */
const PFAS_WITH_TRIZMA: HoldingTime = {
  hours: 14 * DAY,
  words: '14 days',
  warmestC: 10,
  rule: 'USEPA 537.1',
  verified: 'memory',
};

/**
 * The holding time of an analyte; null where none is known.
 *
 * @param preservative as written in bottles.csv
 */
export function holdingTime(analyte: Analyte, preservative: string | null): HoldingTime | null {
  const text = preservative ?? '';
  if (analyte.key === 'nitrate' && /sul(?:f|ph)uric|h2so4/i.test(text)) return NITRATE_WITH_ACID;
  if (analyte.group === 'pfas' && /trizma/i.test(text)) return PFAS_WITH_TRIZMA;
  if (NOT_OF_GROUP.includes(analyte.key)) return null;
  return BY_KEY.get(analyte.key) ?? BY_GROUP.get(analyte.group) ?? null;
}

/** True where the analyte has to be measured beside the tap. */
export function isDueAtOnce(time: HoldingTime): boolean {
  return time.hours < HOUR;
}
