import type { Analyte } from '../../reference/index.ts';

/** What a bottle may hold before the water goes in. */
export type Preservative =
  | 'nitric acid'
  | 'sulfuric acid'
  | 'hydrochloric acid'
  | 'phosphoric acid'
  | 'sodium hydroxide'
  | 'sodium thiosulfate'
  | 'ascorbic acid'
  | 'zinc acetate'
  | 'ammonium acetate'
  | 'ammonium chloride'
  | 'ethylenediamine'
  | 'Trizma buffer'
  | 'none';

const SPELLINGS: readonly (readonly [Preservative, RegExp])[] = [
  ['nitric acid', /nitric|hno3/i],
  ['sulfuric acid', /sul(?:f|ph)uric|h2so4/i],
  ['hydrochloric acid', /hydrochloric|\bhcl\b/i],
  ['phosphoric acid', /phosphoric|h3po4/i],
  ['sodium hydroxide', /hydroxide|naoh/i],
  ['sodium thiosulfate', /thiosul(?:f|ph)ate|na2s2o3/i],
  ['ascorbic acid', /ascorbic/i],
  ['zinc acetate', /zinc acetate/i],
  ['ammonium acetate', /ammonium acetate/i],
  ['ammonium chloride', /ammonium chloride|nh4cl/i],
  ['ethylenediamine', /ethylene ?diamine|\beda\b/i],
  ['Trizma buffer', /trizma/i],
  ['none', /\b(?:none|unpreserved|no preservative)\b/i],
];

/**
 * The preservatives a cell names; more than one where the sample went into several bottles.
 * @returns empty where nothing known is named
 * @example preservativesIn('kit: none, HNO3') // ['nitric acid', 'none']
 */
export function preservativesIn(text: string): Preservative[] {
  return SPELLINGS.flatMap(([name, spelling]) => (spelling.test(text) ? name : []));
}

const DECHLORINATED: readonly Preservative[] = ['sodium thiosulfate', 'ascorbic acid'];
const NUTRIENT_ACID: readonly Preservative[] = ['sulfuric acid'];
const CARBON_ACID: readonly Preservative[] = [
  'sulfuric acid',
  'hydrochloric acid',
  'phosphoric acid',
];
const ACIDS: readonly Preservative[] = [
  'nitric acid',
  'sulfuric acid',
  'hydrochloric acid',
  'phosphoric acid',
];

const WANTED: Readonly<Record<string, readonly Preservative[]>> = {
  ammonia: NUTRIENT_ACID,
  'nitrate-nitrite': NUTRIENT_ACID,
  'total-kjeldahl-nitrogen': NUTRIENT_ACID,
  'total-phosphorus': NUTRIENT_ACID,
  'total-organic-carbon': CARBON_ACID,
  'dissolved-organic-carbon': CARBON_ACID,
  'cyanide-free': ['sodium hydroxide'],
  'cyanide-total': ['sodium hydroxide'],
  sulfide: ['zinc acetate'],
  'hydrogen-sulfide': ['zinc acetate'],
  chlorite: ['ethylenediamine'],
  bromate: ['ethylenediamine'],
  chlorate: ['ethylenediamine'],
};

const WANTED_BY_GROUP: Readonly<Record<string, readonly Preservative[]>> = {
  microbiological: ['sodium thiosulfate'],
  voc: DECHLORINATED,
  'dbp-thm': DECHLORINATED,
  'dbp-haa': ['ammonium chloride'],
  pfas: ['ammonium acetate', 'Trizma buffer'],
};

/** Groups and analytes that are tested without a chlorine catcher as a rule. */
const NOT_WANTED = ['cryptosporidium', 'giardia', 'enteric-viruses', 'cysts'];

/**
 * Any one of these keeps the analyte; empty where none is asked for.
 *
 * Nitric acid is not among them: a laboratory may add it on receipt (40 CFR 141.23, footnote).
 * Source: 40 CFR 136.3 table II (ammonia, Kjeldahl nitrogen, phosphorus, cyanide, sulfide, bacteria:
 *   seen in copies); 40 CFR 141.23 (nitrate plus nitrite, seen in a copy); tables that laboratories
 *   publish (chlorite, bromate); the rest from memory of USEPA 524.2, 552.3, 533 and 537.1.
 */
export function wantedPreservatives(analyte: Analyte): readonly Preservative[] {
  if (NOT_WANTED.includes(analyte.key)) return [];
  return WANTED[analyte.key] ?? WANTED_BY_GROUP[analyte.group] ?? [];
}

const UNACIDIFIED = [
  'ph',
  'conductivity',
  'total-dissolved-solids',
  'total-alkalinity',
  'phenolphthalein-alkalinity',
  'bicarbonate',
  'carbonate',
  'hydroxide',
  'carbon-dioxide',
  'nitrite',
  'chromium-6',
  'cyanide-free',
  'cyanide-total',
  'sulfide',
  'hydrogen-sulfide',
  'chlorite',
];

const ADDED: Readonly<Partial<Record<Preservative, readonly string[]>>> = {
  'nitric acid': ['nitrate', 'nitrate-nitrite', 'total-nitrogen'],
  'sulfuric acid': ['sulfate'],
  'hydrochloric acid': ['chloride'],
  'phosphoric acid': ['orthophosphate', 'total-phosphorus'],
  'sodium hydroxide': [
    'sodium',
    'ph',
    'conductivity',
    'total-dissolved-solids',
    'total-alkalinity',
    'bicarbonate',
    'carbonate',
    'hydroxide',
  ],
  'sodium thiosulfate': ['chlorine-free', 'chlorine-total', 'chloramines', 'monochloramine'],
  'ascorbic acid': ['chlorine-free', 'chlorine-total', 'total-organic-carbon'],
  'zinc acetate': ['zinc', 'total-organic-carbon'],
  'ammonium acetate': ['ammonia', 'total-nitrogen', 'total-organic-carbon'],
  'ammonium chloride': ['ammonia', 'chloride', 'total-nitrogen'],
};

/** Whether a preservative destroys an analyte, or adds it. Chemistry, no table. */
export function isSpoiltBy(analyte: Analyte, preservative: Preservative): boolean {
  if (ADDED[preservative]?.includes(analyte.key) === true) return true;
  if (!ACIDS.includes(preservative)) return false;
  return analyte.group === 'microbiological' || UNACIDIFIED.includes(analyte.key);
}
