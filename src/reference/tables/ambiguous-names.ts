// biome-ignore-all format: one name per line
/**
 * Names that mean two things, names to take exactly as written, and names that only look like an
 * analyte.
 *
 * Source: met in public water-data exports, or known laboratory usage. 40 CFR 141.65 writes one
 *   level for chlorine whether measured as free or as total, so bare "chlorine" says neither.
 * Verified: the spellings of the fixture of tests/outside-checks/analytes.
 */

/**
 * Spelling (compared like an alias) and the keys it can mean. A second meaning that is no analyte of
 * the tables is named in `or`.
 */
export type AmbiguousRow = readonly [spellings: string, keys: string, or: string];

export const AMBIGUOUS_ROWS: readonly AmbiguousRow[] = [
  ['EC', 'conductivity e-coli', ''],
  ['S', 'sulfide sulfate', 'elemental sulfur'],
  ['P', 'total-phosphorus orthophosphate', ''],
  ['TON', 'odor nitrate-nitrite', ''],
  ['TC', 'total-coliform', 'total carbon'],
  ['FC', 'fecal-coliform chlorine-free', ''],
  ['TA', 'total-alkalinity phenolphthalein-alkalinity', ''],
  ['TH', 'total-hardness', 'thorium'],
  ['KH', 'bicarbonate total-alkalinity', 'carbonate hardness'],
  ['COD', 'dissolved-organic-carbon', 'chemical oxygen demand'],
  ['SU', 'ph', 'a surrogate'],
  ['SC', 'conductivity', 'scandium'],
  ['NA', 'sodium', 'not analysed'],
  ['CU', 'copper color-apparent', ''],
  ['CO', 'cobalt', 'carbon monoxide'],
  ['TCEP', 'tcep', 'tris(2-carboxyethyl)phosphine'],
  ['chlorine | chlorine (as Cl2) | chlorine residual | residual chlorine', 'chlorine-free chlorine-total', ''],
  ['chloramine', 'chloramines monochloramine', ''],
  ['haloacetic acids | HAA | HAAs | total HAA', 'haa5 haa9', ''],
  ['sum of PFAS | PFAS sum | PFAS', 'pfas-sum-eu20 pfas-sum-canada25 pfas-sum-epa29 pfas-total', ''],
  ['microcystin', 'microcystin-lr microcystins-total', ''],
  ['uranium-238 | U-238', 'uranium uranium-activity', ''],
  ['combined uranium', 'uranium uranium-activity', ''],
  ['phosphate-phosphorus', 'orthophosphate total-phosphorus', ''],
  ['organic carbon', 'total-organic-carbon dissolved-organic-carbon', ''],
  ['coliform | coliforms', 'total-coliform fecal-coliform', ''],
];

/**
 * Read in exactly this spelling, before case and punctuation are dropped; with two keys it is asked
 * about. PFOS_A is the acid in one exporter's code list, where PFOSA is the sulfonamide.
 */
export type ExactRow = readonly [spelling: string, keys: string];

export const EXACT_ROWS: readonly ExactRow[] = [
  ['Na', 'sodium'],
  ['Cu', 'copper'],
  ['Co', 'cobalt'],
  ['PFOS_A', 'pfos'],
  ['PFOS-A', 'pfos fosa'],
  ['PFOS A', 'pfos fosa'],
  ['ClO2-', 'chlorite'],
  ['ClO2 -', 'chlorite'],
  ['ClO2(-)', 'chlorite'],
  ['ClO2^-', 'chlorite'],
];

/**
 * Single letters that are read as a symbol only in capitals; a small letter is more often a mark.
 */
export const CAPITAL_SYMBOLS: ReadonlySet<string> = new Set(['b', 'f', 'i', 'k', 'u', 'v', 'w']);

/** Marks of "nothing here" that lose their punctuation to look like a symbol. */
export const NO_NAME = /^(?:n\/a|n\.a\.?|#n\/a|none|-+)$/i;

/**
 * Not the analyte whose name they hold, even where the CAS number beside them says so: isotope-labelled
 * standards, surrogates and spikes, a part of the substance, or its complement.
 */
export const NOT_THE_ANALYTE: readonly RegExp[] = [
  /(?:^|[^0-9A-Za-z])\[?13C\d*|^13C/i,
  /^(?:M\d|D\d+-)|-d\d+\b/i,
  /surrogate|percent recovery|\bspike[d]?\b|% ?rec/i,
  /^(?:L|Br)-PF/i,
  /\b(?:linear|branched)(?! and)\b.*\bPF|\bPF.*\b(?:linear|branched)\b(?! and)/i,
  /^ferrous iron$|^fe ?\(?(?:II\)?|2\+)$/i,
  /oxygen saturation|^UVT|transmittance/i,
  /top\b.*precursors|oxidi[sz]able precursors/i,
];
