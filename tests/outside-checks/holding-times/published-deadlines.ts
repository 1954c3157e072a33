import type { Preservative } from '../../../src/analyse/quality/preservatives.ts';

/** A line of a published table, as SOURCE.md says where it was read. */
export interface Deadline {
  readonly key: string;
  readonly time: string;
  readonly warmestC: number | null;
  readonly preservative: readonly Preservative[];
  readonly rule: string;
  readonly verified: 'seen' | 'laboratories' | 'memory';
}

const line =
  (rule: string, verified: Deadline['verified']) =>
  (
    time: string,
    warmestC: number | null,
    preservative: Deadline['preservative'],
    ...keys: readonly string[]
  ): Deadline[] =>
    keys.map((key) => ({ key, time, warmestC, preservative, rule, verified }));

const cfr136 = line('40 CFR 136.3 table II', 'seen');
const cfr136InLabs = line('40 CFR 136.3 table II', 'laboratories');
const cfr136ByHeart = line('40 CFR 136.3 table II', 'memory');
const cfr141 = line('40 CFR 141.23', 'seen');

export const DEADLINES: readonly Deadline[] = [
  ...cfr136('15 minutes', null, ['none'], 'ph', 'chlorine-total', 'chlorine-free'),
  ...cfr136ByHeart('15 minutes', null, ['none'], 'chloramines', 'monochloramine'),
  ...cfr136ByHeart('15 minutes', null, ['none'], 'chlorine-dioxide', 'ozone', 'dissolved-oxygen'),
  ...line('40 CFR 141.852', 'seen')(
    '30 hours',
    10,
    ['sodium thiosulfate'],
    'total-coliform',
    'e-coli',
    'fecal-coliform',
  ),
  ...cfr136('8 hours', 10, ['sodium thiosulfate'], 'enterococci'),
  ...line('40 CFR 141.74', 'memory')(
    '8 hours',
    10,
    ['sodium thiosulfate'],
    'heterotrophic-plate-count',
    'colony-count-22c',
  ),
  ...line('USEPA 1623', 'memory')('96 hours', 20, [], 'cryptosporidium', 'giardia'),
  ...cfr141('48 hours', 6, ['none'], 'nitrate', 'nitrite', 'asbestos'),
  ...cfr136InLabs('48 hours', 6, ['none'], 'orthophosphate'),
  ...cfr136('48 hours', 6, ['none'], 'turbidity', 'color-apparent', 'color-true'),
  ...cfr136('48 hours', 6, ['none'], 'surfactants-mbas'),
  ...cfr136('7 days', 6, ['none'], 'total-dissolved-solids', 'total-suspended-solids'),
  ...cfr136('7 days', 6, ['none'], 'total-solids'),
  ...cfr136('7 days', 6, ['zinc acetate', 'sodium hydroxide'], 'sulfide', 'hydrogen-sulfide'),
  ...cfr136('14 days', 6, ['none'], 'total-alkalinity', 'phenolphthalein-alkalinity'),
  ...cfr136('14 days', 6, ['none'], 'bicarbonate', 'carbonate', 'hydroxide'),
  ...cfr141('14 days', 6, ['sodium hydroxide'], 'cyanide-free', 'cyanide-total'),
  ...line('USEPA 300.1', 'laboratories')('14 days', 6, ['ethylenediamine'], 'chlorite'),
  ...line('USEPA 300.1', 'laboratories')(
    '28 days',
    null,
    ['ethylenediamine'],
    'bromate',
    'chlorate',
  ),
  ...line('USEPA 314.0', 'laboratories')('28 days', null, ['none'], 'perchlorate'),
  ...cfr141('28 days', 6, ['sulfuric acid'], 'nitrate-nitrite'),
  ...cfr136('28 days', 6, ['sulfuric acid'], 'ammonia', 'total-kjeldahl-nitrogen'),
  ...cfr136('28 days', 6, ['sulfuric acid'], 'total-phosphorus'),
  ...cfr136('28 days', 6, ['none'], 'sulfate', 'silica', 'conductivity'),
  // The table asks for a buffer to pH 9.3 to 9.7.
  ...cfr136('28 days', 6, [], 'chromium-6'),
  ...cfr136ByHeart('28 days', 6, ['sulfuric acid'], 'total-nitrogen'),
  ...cfr136ByHeart(
    '28 days',
    6,
    ['hydrochloric acid', 'sulfuric acid', 'phosphoric acid'],
    'total-organic-carbon',
    'dissolved-organic-carbon',
  ),
  ...cfr136('28 days', null, ['none'], 'chloride', 'fluoride', 'bromide'),
  ...cfr141('28 days', null, ['nitric acid'], 'mercury'),
  ...cfr141('6 months', null, ['nitric acid'], 'antimony', 'arsenic', 'barium', 'beryllium'),
  ...cfr141('6 months', null, ['nitric acid'], 'cadmium', 'chromium', 'nickel', 'selenium'),
  ...cfr141('6 months', null, ['nitric acid'], 'thallium'),
  ...cfr136('6 months', null, ['nitric acid'], 'boron', 'total-hardness'),
  ...cfr136InLabs('6 months', null, ['nitric acid'], 'calcium', 'magnesium', 'sodium'),
  ...cfr136InLabs('6 months', null, ['nitric acid'], 'potassium', 'uranium'),
  ...cfr136ByHeart('6 months', null, [], 'tritium'),
  ...line('practice of radon methods', 'memory')('4 days', null, ['none'], 'radon'),
  ...line('USEPA 548.1 and 549.2', 'memory')('7 days', 6, [], 'endothall', 'diquat', 'paraquat'),
];

/** Times of all analytes of a group that have no line of their own. */
export interface GroupDeadline extends Omit<Deadline, 'key' | 'warmestC'> {
  readonly group: string;
  /** Analytes the time does not fit: the lab has to say. */
  readonly without: readonly string[];
}

export const GROUP_DEADLINES: readonly GroupDeadline[] = [
  {
    group: 'voc',
    time: '14 days',
    preservative: ['hydrochloric acid', 'ascorbic acid'],
    rule: 'USEPA 524.2',
    verified: 'laboratories',
    without: [],
  },
  {
    group: 'dbp-thm',
    time: '14 days',
    preservative: ['sodium thiosulfate'],
    rule: 'USEPA 524.2',
    verified: 'laboratories',
    without: [],
  },
  {
    group: 'dbp-haa',
    time: '14 days',
    preservative: ['ammonium chloride'],
    rule: 'USEPA 552.3',
    verified: 'memory',
    without: [],
  },
  {
    group: 'pesticides-svoc',
    time: '14 days',
    preservative: [],
    rule: 'USEPA 500 series',
    verified: 'memory',
    without: ['acrylamide', 'edetic-acid', 'nitrilotriacetic-acid'],
  },
  {
    group: 'pfas',
    time: '28 days',
    preservative: ['ammonium acetate'],
    rule: 'USEPA 533',
    verified: 'memory',
    without: [],
  },
  {
    group: 'metals',
    time: '6 months',
    preservative: ['nitric acid'],
    rule: '40 CFR 136.3 table II',
    verified: 'laboratories',
    without: ['arsenic-iii', 'arsenic-v', 'chromium-3'],
  },
  {
    group: 'radiological',
    time: '6 months',
    preservative: ['nitric acid'],
    rule: '40 CFR 136.3 table II',
    verified: 'memory',
    without: ['iodine-131'],
  },
];
