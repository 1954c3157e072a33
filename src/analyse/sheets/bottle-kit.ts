import type { Analyte } from '../../reference/index.ts';
import { type HoldingTime, holdingTime } from '../quality/index.ts';

/** One bottle of the kit and what it is for. */
interface KitBottle {
  readonly bottle: string;
  readonly preservative: string;
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
  'total-organic-carbon',
];
const WITH_NITRIC_ACID = ['calcium', 'magnesium', 'sodium', 'potassium', 'total-hardness'];
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
 * Source: 40 CFR 136.3 table II, from memory: nitric acid to pH below 2 for metals, mercury,
 * hardness and radionuclides; sulfuric acid to pH below 2 for ammonia, nitrate plus nitrite, organic
 * nitrogen, phosphorus and carbon; sodium hydroxide for cyanide; 0.008 % sodium thiosulfate where
 * chlorine would go on reacting (bacteria, volatile organics); nothing for the other salts. Ammonium
 * chloride for haloacetic acids (USEPA 552.3) and ammonium acetate for PFAS (USEPA 533) from memory.
 * The lab's own kit and method go before this list.
 */
export const KIT: readonly KitBottle[] = [
  { bottle: 'beside the tap', preservative: 'none', takes: keyed(BESIDE_TAP) },
  {
    bottle: 'bacteria, sterile',
    preservative: 'sodium thiosulfate',
    takes: grouped('microbiological'),
  },
  {
    bottle: 'nutrients and carbon',
    preservative: 'sulfuric acid to pH below 2',
    takes: keyed(WITH_SULFURIC_ACID),
  },
  { bottle: 'cyanide', preservative: 'sodium hydroxide', takes: keyed(WITH_HYDROXIDE) },
  // Hexavalent chromium would change in acid.
  { bottle: 'chromium(VI)', preservative: "the method's buffer", takes: keyed(['chromium-6']) },
  {
    bottle: 'metals',
    preservative: 'nitric acid to pH below 2',
    takes: (analyte) =>
      keyed(WITH_NITRIC_ACID)(analyte) ||
      keyed(['uranium', 'mercury'])(analyte) ||
      (analyte.group === 'metals' && analyte.key !== 'boron'),
  },
  {
    bottle: 'radionuclides',
    preservative: 'nitric acid to pH below 2',
    takes: (analyte) => analyte.group === 'radiological' && analyte.key !== 'radon',
  },
  { bottle: 'radon, no air', preservative: 'none', takes: keyed(['radon']) },
  {
    bottle: 'volatile organics, no air',
    preservative: 'sodium thiosulfate or ascorbic acid',
    takes: grouped('voc', 'dbp-thm'),
  },
  { bottle: 'haloacetic acids', preservative: 'ammonium chloride', takes: grouped('dbp-haa') },
  { bottle: 'PFAS, polypropylene', preservative: 'ammonium acetate', takes: grouped('pfas') },
  { bottle: 'pesticides', preservative: 'as the method says', takes: grouped('pesticides-svoc') },
  { bottle: 'salts', preservative: 'none', takes: () => true },
];

/** One bottle and one deadline, with the analytes that share both. */
export interface BottleLine {
  readonly bottle: string;
  readonly preservative: string;
  readonly time: HoldingTime;
  readonly analytes: readonly Analyte[];
}

/**
 * Analytes by bottle and holding time, in the order of the kit, the shortest time first.
 * An analyte without a known holding time has no line.
 */
export function bottleLines(analytes: readonly Analyte[]): BottleLine[] {
  return KIT.flatMap(({ bottle, preservative }) => {
    const times = new Map<string, { readonly time: HoldingTime; readonly analytes: Analyte[] }>();
    for (const analyte of analytes) {
      if (KIT.find(({ takes }) => takes(analyte))?.bottle !== bottle) continue;
      const time = holdingTime(analyte, preservative);
      if (time === null) continue;
      const key = `${time.words}\t${time.warmestC}`;
      const line = times.get(key) ?? { time, analytes: [] };
      times.set(key, line);
      line.analytes.push(analyte);
    }
    return [...times.values()]
      .sort((a, b) => a.time.hours - b.time.hours)
      .map((line) => ({ bottle, preservative, ...line }));
  });
}
