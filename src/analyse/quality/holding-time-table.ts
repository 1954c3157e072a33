import type { Analyte } from '../../reference/index.ts';

/** How long a sample may stand before its analysis, and how warm it may arrive. */
export interface HoldingTime {
  readonly hours: number;
  readonly words: string;
  /** Warmest temperature on receipt, °C; null where none is asked for. */
  readonly warmestC: number | null;
}

const HOUR = 1;
const DAY = 24;
const MONTH = 30.44 * DAY;

/**
 * Maximum holding times and temperatures of transport.
 *
 * Source: `136`: 40 CFR 136.3 table II, seen in a state copy (Florida DEP-SOP-001/01, table FS1000-4,
 * 2014) and, for residues, silica, conductance, sulfide and turbidity, in a copy of its 1995 edition.
 * `141`: 40 CFR 141.852(a)(3), seen: coliforms 30 hours, below 10 °C encouraged. The rest is from
 * memory: metals 6 months and mercury 28 days (136), volatile organics and trihalomethanes 14 days
 * (USEPA 524.2), haloacetic acids 14 days (552.3), chlorite 14 and bromate and chlorate 28 days
 * (300.1), PFAS 28 days and 10 °C (533), organic carbon, nitrate plus nitrite and bromide 28 days,
 * plate counts 8 hours (141.74), Cryptosporidium 96 hours (1623), radon 4 days, other radionuclides
 * 6 months, pesticides 14 days.
 * Chlorine and pH are due within 15 minutes; so is what else escapes or reacts at once.
 */
const BY_KEY: ReadonlyMap<string, HoldingTime> = new Map([
  ...each(0.25 * HOUR, '15 minutes', null, [
    'chlorine-free',
    'chlorine-total',
    'chloramines',
    'monochloramine',
    'chlorine-dioxide',
    'ozone',
    'ph',
    'dissolved-oxygen',
  ]),
  ...each(30 * HOUR, '30 hours', 10, ['total-coliform', 'e-coli', 'fecal-coliform']),
  ...each(8 * HOUR, '8 hours', 10, [
    'heterotrophic-plate-count',
    'colony-count-22c',
    'enterococci',
  ]),
  ...each(96 * HOUR, '96 hours', 20, ['cryptosporidium', 'giardia']),
  ...each(48 * HOUR, '48 hours', 6, [
    'nitrate',
    'nitrite',
    'orthophosphate',
    'turbidity',
    'color-apparent',
    'color-true',
    'surfactants-mbas',
  ]),
  ...each(7 * DAY, '7 days', 6, [
    'total-dissolved-solids',
    'total-suspended-solids',
    'total-solids',
    'sulfide',
  ]),
  ...each(14 * DAY, '14 days', 6, [
    'total-alkalinity',
    'bicarbonate',
    'carbonate',
    'hydroxide',
    'cyanide-free',
    'cyanide-total',
    'chlorite',
  ]),
  ...each(28 * DAY, '28 days', 6, [
    'ammonia',
    'nitrate-nitrite',
    'total-kjeldahl-nitrogen',
    'total-nitrogen',
    'total-phosphorus',
    'total-organic-carbon',
    'dissolved-organic-carbon',
    'sulfate',
    'silica',
    'conductivity',
    'chromium-6',
  ]),
  ...each(28 * DAY, '28 days', null, [
    'chloride',
    'fluoride',
    'bromide',
    'bromate',
    'chlorate',
    'mercury',
  ]),
  ...each(6 * MONTH, '6 months', null, [
    'calcium',
    'magnesium',
    'sodium',
    'potassium',
    'boron',
    'total-hardness',
    'uranium',
  ]),
  ...each(4 * DAY, '4 days', null, ['radon']),
]);

const BY_GROUP: ReadonlyMap<string, HoldingTime> = new Map([
  ...each(14 * DAY, '14 days', 6, ['voc', 'dbp-thm', 'dbp-haa', 'pesticides-svoc']),
  ...each(28 * DAY, '28 days', 10, ['pfas']),
  ...each(6 * MONTH, '6 months', null, ['metals', 'radiological']),
]);

function each(
  hours: number,
  words: string,
  warmestC: number | null,
  keys: readonly string[],
): (readonly [string, HoldingTime])[] {
  const time = { hours, words, warmestC };
  return keys.map((key) => [key, time] as const);
}

/** Nitrate kept with sulfuric acid counts as nitrate plus nitrite, 28 days. */
const NITRATE_WITH_ACID: HoldingTime = { hours: 28 * DAY, words: '28 days', warmestC: 6 };

/**
 * The holding time of an analyte; null where none is known.
 *
 * @param preservative as written in bottles.csv
 */
export function holdingTime(analyte: Analyte, preservative: string | null): HoldingTime | null {
  const isAcid = /sul(?:f|ph)uric|h2so4/i.test(preservative ?? '');
  if (analyte.key === 'nitrate' && isAcid) return NITRATE_WITH_ACID;
  return BY_KEY.get(analyte.key) ?? BY_GROUP.get(analyte.group) ?? null;
}

/** True where the analyte has to be measured beside the tap. */
export function isDueAtOnce(time: HoldingTime): boolean {
  return time.hours < HOUR;
}
