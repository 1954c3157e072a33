// biome-ignore-all format: one figure per line
/**
 * Published figures on how much water household devices spend and people drink.
 *
 * What: topic, metric, comparator, value, unit, conditions, jurisdiction or standard, source, how it
 *   was verified, note. A reject ratio r and an efficiency e belong together: e = 1/(1 + r).
 * Unit: as printed in each row.
 * Source: named in each row.
 * Verified: `from memory`, or `seen: …` with the copy that was read; most copies are trade press and
 *   not the page of the issuing body.
 */
export type WaterEfficiencyRow = readonly [
  topic: 'definition' | 'test condition' | 'threshold' | 'typical' | 'saving' | 'consumption',
  metric: string,
  comparator: '=' | '>=' | '<=',
  value: string,
  unit: string,
  conditions: string,
  standard: string,
  source: string,
  verified: string,
  note: string,
];

const MEMORY = 'from memory';
const SEEN_COLUMNS = 'seen: trade-journal columns (2008, 2017) by a certification-body author describing the NSF/ANSI 58 test';
const SEEN_COLUMN = 'seen: trade-journal column by a certification-body author';
const SEEN_EPA = 'seen: EPA-authored announcement and trade press';
const SEEN_FINAL = 'seen: plumbing trade-press report of the final specification';

export const WATER_EFFICIENCY_ROWS: readonly WaterEfficiencyRow[] = [
  ['definition', 'recovery rating', '=', '', '%', 'Product water / inlet water x 100 with no storage tank or with the tank bypassed', 'NSF/ANSI 58', 'NSF/ANSI 58', SEEN_COLUMNS, 'Membrane-level figure: always the higher of the two ratings'],
  ['definition', 'efficiency rating', '=', '', '%', 'Product water available to the user / inlet water x 100 under conditions like daily use, with storage tank and automatic shut-off', 'NSF/ANSI 58', 'NSF/ANSI 58', SEEN_COLUMNS, 'Tank back-pressure lowers it'],
  ['definition', 'daily production rate', '=', '', 'L/d', 'Product volume per day under conditions like daily use', 'NSF/ANSI 58', 'NSF/ANSI 58', SEEN_COLUMNS, ''],
  ['definition', 'reject ratio', '=', '', 'reject:product', '(inlet - product) / product = 100/efficiency% - 1', 'general', 'Arithmetic', MEMORY, 'Efficiency 20% = 4:1; 25% = 3:1; 30.3% = 2.3:1; 40% = 1.5:1; 50% = 1:1'],
  ['test condition', 'inlet pressure', '=', '50', 'psi', 'NSF/ANSI 58 reduction test (345 kPa)', 'NSF/ANSI 58', 'NSF/ANSI 58', SEEN_COLUMN, ''],
  ['test condition', 'duration', '=', '7', 'd', 'Mixed full and partial tank draws over the week', 'NSF/ANSI 58', 'NSF/ANSI 58', SEEN_COLUMN, ''],
  ['test condition', 'temperature', '=', '25', 'C', '77 F', 'NSF/ANSI 58', 'NSF/ANSI 58', MEMORY, ''],
  ['test condition', 'TDS challenge', '=', '750', 'mg/L', 'Sodium chloride in deionised water', 'NSF/ANSI 58', 'NSF/ANSI 58', MEMORY, ''],
  ['threshold', 'minimum efficiency', '>=', '40', '%', 'Complete system, plus membrane-life test', 'ASSE 1086', 'ASSE 1086-2020', MEMORY, 'That a minimum efficiency pass/fail exists: seen. The number was not seen'],
  ['threshold', 'maximum reject ratio', '<=', '2.3', 'reject:product', 'POU RO system, equals efficiency of at least 30.3%', 'US EPA WaterSense draft', 'WaterSense Draft Specification for POU RO Systems (announced late 2022)', SEEN_EPA, ''],
  ['threshold', 'maximum reject ratio', '<=', '2.3', 'reject:product', 'POU RO system, independently certified', 'US EPA WaterSense final', 'WaterSense Specification for POU RO Systems', SEEN_FINAL, 'Publication date not seen; an EPA page text of spring 2024 still speaks of a specification under development, so the final is later'],
  ['threshold', 'water saving versus typical', '>=', '50', '%', 'Labelled system versus typical system', 'US EPA WaterSense final', 'WaterSense Specification for POU RO Systems', SEEN_FINAL, ''],
  ['typical', 'reject ratio of a typical system', '=', '5', 'reject:product', '5 gal or more down the drain per gal treated; equals 16.7% efficiency', 'US EPA WaterSense', 'WaterSense announcements 2022 and final-specification report', SEEN_EPA, ''],
  ['typical', 'efficiency of a typical system', '<=', '20', '%', 'Typical residential RO', 'US EPA WaterSense', 'WaterSense Notice of Intent, January 2022', 'seen: trade-press report of the notice of intent', 'Differs from the 5:1 statement (16.7%) and from 3:1 (25%)'],
  ['typical', 'reject ratio of a traditional system', '>=', '3', 'reject:product', 'At least 3 gal to drain per gal treated; 25% efficiency', 'ASSE', 'ASSE articles 2019-2022', 'seen: two ASSE articles', ''],
  ['typical', 'best available reject ratio', '=', '1', 'reject:product', 'Some current household systems', 'trade press', 'IAPMO/ASSE trade article', 'seen: trade article', ''],
  ['saving', 'annual water saving, draft', '=', '3200', 'gal/yr', 'Per household, labelled versus typical; 48,000 gal over product life', 'US EPA WaterSense draft', 'WaterSense draft announcement', 'seen: EPA-authored announcement', 'A sister article says nearly 3,000 gal/yr and about 50,000 gal lifetime'],
  ['saving', 'annual water saving, final', '=', '3100', 'gal/yr', 'Per household, labelled versus typical', 'US EPA WaterSense final', 'WaterSense final specification', SEEN_FINAL, ''],
  ['consumption', 'mean tap-water ingestion per person', '=', '0.927', 'L/person/d', 'US public supply, all ages, direct plus indirect', 'US EPA', 'Estimated Per Capita Water Ingestion in the United States, EPA-822-R-00-008 (2000)', 'seen: EPA frequent-questions page', ''],
  ['consumption', 'design ingestion, adult 70 kg', '=', '2', 'L/person/d', 'Approximately the 90th percentile of adult intake from public supplies; excludes discarded cooking water', 'US EPA', 'EPA drinking-water risk assessments (older)', 'seen: EPA frequent-questions pages', ''],
  ['consumption', 'design ingestion, adult 80 kg', '=', '2.4', 'L/person/d', 'Default in newer human-health criteria', 'US EPA', 'EPA 2015 human-health criteria update', MEMORY, ''],
  ['consumption', 'design ingestion, adult 60 kg', '=', '2', 'L/person/d', 'Lifetime guideline values', 'WHO', 'WHO GDWQ 4th ed.', 'seen: cyanotoxin guidance site stating 2 L per person per day for lifetime values (body mass from memory)', ''],
  ['consumption', 'basic domestic minimum', '=', '7.5', 'L/person/d', 'Drinking, food preparation and personal hygiene', 'WHO literature', 'Hunter, MacDonald, Carter, Water supply and health, PLoS Med (2010)', 'seen: abstract on an environment portal', ''],
  ['consumption', 'survival drinking range low', '=', '2', 'L/person/d', 'Temperate climate minimum', 'WHO-based teaching text', 'Open University course text', 'seen: open course page', ''],
  ['consumption', 'survival drinking range high', '=', '4.5', 'L/person/d', 'Hot climate, manual work', 'WHO-based teaching text', 'Open University course text', 'seen: open course page', ''],
  ['consumption', 'drinking and food, emergency', '=', '3', 'L/person/d', '2.5 to 3 for drinking and food', 'Sphere', 'Sphere Handbook / WHO technical notes on emergencies', MEMORY, ''],
  ['consumption', 'basic cooking, emergency low', '=', '3', 'L/person/d', '3 to 6 depending on food type and norms', 'Sphere', 'Sphere Handbook / WHO technical notes on emergencies', MEMORY, ''],
  ['consumption', 'basic cooking, emergency high', '=', '6', 'L/person/d', '3 to 6 depending on food type and norms', 'Sphere', 'Sphere Handbook / WHO technical notes on emergencies', MEMORY, ''],
  ['consumption', 'drinking, basic requirement', '=', '5', 'L/person/d', 'Basic water requirement for drinking', 'Gleick', 'Gleick, Basic water requirements for human activities (1996)', 'seen: teaching page repeating the 5 L figure', ''],
  ['consumption', 'food preparation, basic requirement', '=', '10', 'L/person/d', 'Basic water requirement for food preparation', 'Gleick', 'Gleick, Basic water requirements for human activities (1996)', MEMORY, ''],
];
