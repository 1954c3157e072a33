import type { Analyte } from '../../reference/index.ts';
import { type HoldingTime, holdingTime, type RuleReading } from '../quality/index.ts';

/** One bottle of the kit and what it is for. */
interface KitBottle {
  readonly bottle: string;
  readonly preservative: string;
  readonly container: string;
  /** How far the rule for preservative and container was read. */
  readonly verified: RuleReading;
  readonly takes: (analyte: Analyte) => boolean;
}

const BESIDE_TAP = [
  'chlorine-free',
  'chlorine-total',
  'chloramines',
  'monochloramine',
  'chlorine-dioxide',
  'ozone',
  'ph',
  'dissolved-oxygen',
];
const WITH_SULFURIC_ACID = [
  'ammonia',
  'nitrate-nitrite',
  'total-kjeldahl-nitrogen',
  'total-nitrogen',
  'total-phosphorus',
];
/** Measured where the water is, or computed from other results: nothing goes into a bottle. */
const NO_BOTTLE = ['temperature', 'orp', 'langelier-index', 'ccpp', 'corrosivity'];
const WITH_NITRIC_ACID = ['boron', 'calcium', 'magnesium', 'sodium', 'potassium', 'total-hardness'];
const WITH_AMINE = ['chlorite', 'bromate', 'chlorate'];
/** Species that acid would turn into each other. */
const NO_ACID = ['arsenic-iii', 'arsenic-v', 'chromium-3', 'tritium', 'iodine-131'];
const WITH_HYDROXIDE = ['cyanide-free', 'cyanide-total'];

const keyed =
  (keys: readonly string[]) =>
  ({ key }: Analyte): boolean =>
    keys.includes(key);
const grouped =
  (...groups: readonly string[]) =>
  ({ group }: Analyte): boolean =>
    groups.includes(group);

/**
 * The bottles of a sampling kit. An analyte goes into the first that takes it.
 *
 * Source: 40 CFR 136.3 table II, seen in copies (bacteria, nutrients, cyanide, chromium(VI), sulfide,
 * boron, hardness, salts) and 40 CFR 141.23 (metals, nitrate plus nitrite); tables that laboratories
 * publish (volatile organics, chlorite and bromate); haloacetic acids (USEPA 552.3), PFAS (USEPA 533),
 * radionuclides, organic carbon and radon from memory.
 * The lab's own kit and method go before this list.
 * Checked by: tests/outside-checks/holding-times/
 */
export const KIT: readonly KitBottle[] = [
  {
    bottle: 'beside the tap',
    preservative: 'none',
    container: 'any clean vessel',
    verified: 'seen',
    takes: keyed(BESIDE_TAP),
  },
  {
    bottle: 'bacteria, sterile',
    preservative: 'sodium thiosulfate',
    container: 'sterile plastic or glass',
    verified: 'seen',
    takes: grouped('microbiological'),
  },
  {
    bottle: 'organic carbon',
    preservative: 'hydrochloric, sulfuric or phosphoric acid to pH below 2',
    container: 'plastic or glass',
    verified: 'memory',
    takes: keyed(['total-organic-carbon', 'dissolved-organic-carbon']),
  },
  {
    bottle: 'nutrients',
    preservative: 'sulfuric acid to pH below 2',
    container: 'plastic or glass',
    verified: 'seen',
    takes: keyed(WITH_SULFURIC_ACID),
  },
  {
    bottle: 'cyanide',
    preservative: 'sodium hydroxide to pH above 10; chlorine caught first',
    container: 'plastic or glass',
    verified: 'seen',
    takes: keyed(WITH_HYDROXIDE),
  },
  {
    bottle: 'sulfide',
    preservative: 'zinc acetate and sodium hydroxide to pH above 9',
    container: 'plastic or glass',
    verified: 'seen',
    takes: keyed(['sulfide', 'hydrogen-sulfide']),
  },
  {
    // Hexavalent chromium would change in acid.
    bottle: 'chromium(VI)',
    preservative: 'buffer to pH 9.3 to 9.7',
    container: 'plastic or glass',
    verified: 'seen',
    takes: keyed(['chromium-6']),
  },
  {
    bottle: 'chlorite and bromate',
    preservative: 'ethylenediamine, 50 mg/L',
    container: 'plastic or glass',
    verified: 'laboratories',
    takes: keyed(WITH_AMINE),
  },
  {
    bottle: 'metals',
    preservative: 'nitric acid to pH below 2',
    container: 'plastic',
    verified: 'seen',
    takes: (analyte) =>
      !keyed(NO_ACID)(analyte) &&
      (keyed(WITH_NITRIC_ACID)(analyte) ||
        keyed(['uranium', 'mercury'])(analyte) ||
        analyte.group === 'metals'),
  },
  {
    bottle: 'radionuclides',
    preservative: 'nitric acid to pH below 2',
    container: 'plastic or glass',
    verified: 'memory',
    takes: (analyte) => analyte.group === 'radiological' && !keyed([...NO_ACID, 'radon'])(analyte),
  },
  {
    bottle: 'radon, no air',
    preservative: 'none',
    container: 'glass vial',
    verified: 'memory',
    takes: keyed(['radon']),
  },
  {
    bottle: 'volatile organics, no air',
    preservative: 'ascorbic acid or sodium thiosulfate, then hydrochloric acid to pH below 2',
    container: 'glass vials with septum',
    verified: 'laboratories',
    takes: grouped('voc'),
  },
  {
    bottle: 'trihalomethanes, no air',
    preservative: 'sodium thiosulfate or ascorbic acid',
    container: 'glass vials with septum',
    verified: 'memory',
    takes: grouped('dbp-thm'),
  },
  {
    bottle: 'haloacetic acids',
    preservative: 'ammonium chloride',
    container: 'amber glass',
    verified: 'memory',
    takes: grouped('dbp-haa'),
  },
  {
    bottle: 'PFAS',
    preservative: 'ammonium acetate',
    container: 'polypropylene',
    verified: 'memory',
    takes: grouped('pfas'),
  },
  {
    bottle: 'pesticides',
    preservative: 'as the method says',
    container: 'amber glass',
    verified: 'memory',
    takes: grouped('pesticides-svoc'),
  },
  {
    bottle: 'salts',
    preservative: 'none',
    container: 'plastic',
    verified: 'seen',
    takes: () => true,
  },
];

/** What goes where without a known holding time: kit and method are the lab's. */
const ASK_THE_LAB = {
  bottle: 'as the lab says',
  preservative: 'as the lab says',
  container: 'as the lab says',
  verified: 'memory',
} as const;

/** One bottle and one deadline, with the analytes that share both. */
export interface BottleLine extends Omit<KitBottle, 'takes'> {
  /** Null where no holding time is known. */
  readonly time: HoldingTime | null;
  readonly analytes: readonly Analyte[];
}

/**
 * Analytes by bottle and holding time, in the order of the kit, the shortest time first; last those
 * without a known holding time, to be asked about.
 *
 * What is measured in place or computed has no bottle.
 */
export function bottleLines(analytes: readonly Analyte[]): BottleLine[] {
  const bottled = analytes.filter((analyte) => !keyed(NO_BOTTLE)(analyte));
  const known = KIT.flatMap(({ takes: _, ...kit }) => {
    const times = new Map<string, { readonly time: HoldingTime; readonly analytes: Analyte[] }>();
    for (const analyte of bottled) {
      if (KIT.find(({ takes }) => takes(analyte))?.bottle !== kit.bottle) continue;
      const time = holdingTime(analyte, kit.preservative);
      if (time === null) continue;
      const key = `${time.words}\t${time.warmestC}\t${time.rule}\t${time.verified}`;
      const line = times.get(key) ?? { time, analytes: [] };
      times.set(key, line);
      line.analytes.push(analyte);
    }
    return [...times.values()]
      .sort((a, b) => a.time.hours - b.time.hours)
      .map((line) => ({ ...kit, ...line }));
  });
  const unknown = bottled.filter((analyte) => holdingTime(analyte, null) === null);
  return unknown.length === 0
    ? known
    : [...known, { ...ASK_THE_LAB, time: null, analytes: unknown }];
}
