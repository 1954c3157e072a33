// biome-ignore-all format: one figure per line
/**
 * Published guidance on what drinking water may keep of its minerals. None of it is a requirement on a
 * filtration device: national recommendations, authors' proposals, desalination targets and taste
 * panels stand side by side, each named. The WHO Guidelines set no minimum for calcium, magnesium or
 * dissolved solids.
 *
 * What: analyte, role (minimum, optimum range, maximum, or the words of a taste panel), lower and upper
 *   value, unit, basis, context, source, how it was verified, note. Values keep the digits of the source.
 * Unit and basis: those of the source, as printed in each row.
 * Source: named in each row.
 * Verified: `seen: …` names the copy in which the value was read; `from memory` was not read in a source.
 */
export type MineralsGuidanceRow = readonly [
  analyte: string,
  role: string,
  low: string,
  high: string,
  unit: string,
  basis: string,
  context: string,
  source: string,
  verified: string,
  note: string,
];

const KOZISEK_2005 = 'Kozisek F., Health risks from drinking demineralised water, ch. 12 in WHO Nutrients in Drinking Water (2005)';
const WHO_1980 = 'WHO working-group report on desalinated water (Sidorenko and Rakhmanin, 1980), as cited by Kozisek 2005';
const LAHAV_2007 = 'Lahav O., Birnhack L., Quality criteria for desalinated water following post-treatment, Desalination 207 (2007) 286-303; adopted for Israel';
const ROSBORG = 'Rosborg I., Kozisek F. (eds), Drinking Water Minerals and Mineral Balance, Springer (2nd ed. 2019/2020), chapter abstracts';
const KOZISEK_2020 = 'Kozisek F., Regulations for calcium, magnesium or hardness in drinking water in the EU member states, Regul. Toxicol. Pharmacol. 112 (2020) 104589';
const CZECH = 'Czech Decree 252/2004';
const WHO_SOLIDS = 'WHO, Total dissolved solids in drinking-water, background document (1996)';
const CANADA_HARDNESS = 'Guidelines for Canadian Drinking Water Quality: Hardness';
const MEMORY = 'from memory';
const SEEN_ABSTRACT = 'seen: journal abstract on an institutional repository';
const SEEN_CHAPTERS = 'seen: publisher and university abstracts of two chapters';
const SEEN_REVIEW = 'seen: transcription of the 2020 review, results and country table';
const SEEN_SOLIDS = 'seen: reprint of the palatability text of the WHO TDS background document (1996)';
const SEEN_CANADA = 'seen: Government of Canada open-data abstract';

export const MINERALS_GUIDANCE_ROWS: readonly MineralsGuidanceRow[] = [
  ['magnesium', 'minimum', '10', '', 'mg/L', 'as Mg', 'Demineralised water with minerals added back', KOZISEK_2005, 'seen: expert question-and-answer page quoting the WHO 2004 draft (10 mg/L Mg); the chapter text itself was only readable in its first pages', ''],
  ['calcium', 'minimum', '20', '', 'mg/L', 'as Ca', 'Demineralised water with minerals added back', KOZISEK_2005, 'seen: expert question-and-answer page quoting the WHO 2004 draft (20 mg/L Ca); the chapter text itself was only readable in its first pages', ''],
  ['magnesium', 'optimum range', '20', '30', 'mg/L', 'as Mg', 'Demineralised water with minerals added back', KOZISEK_2005, MEMORY, ''],
  ['calcium', 'optimum range', '40', '80', 'mg/L', 'as Ca', 'Given as about 50 (40-80)', KOZISEK_2005, MEMORY, ''],
  ['total-hardness', 'optimum range', '2', '4', 'mmol/L', 'mmol/L', 'Sum of Ca and Mg; 200 to 400 mg/L as CaCO3', KOZISEK_2005, MEMORY, ''],
  ['total-dissolved-solids', 'minimum', '100', '', 'mg/L', '', 'Desalinated drinking water', WHO_1980, MEMORY, ''],
  ['total-dissolved-solids', 'optimum range', '200', '400', 'mg/L', '', 'Chloride-sulfate type water', WHO_1980, MEMORY, ''],
  ['total-dissolved-solids', 'optimum range', '250', '500', 'mg/L', '', 'Bicarbonate type water', WHO_1980, MEMORY, ''],
  ['calcium', 'minimum', '30', '', 'mg/L', 'as Ca', 'Desalinated drinking water', WHO_1980, MEMORY, ''],
  ['bicarbonate', 'minimum', '30', '', 'mg/L', 'as HCO3', 'Desalinated drinking water', WHO_1980, MEMORY, ''],
  ['total-alkalinity', 'maximum', '', '6.5', 'meq/L', 'meq/L', 'Desalinated drinking water', WHO_1980, MEMORY, ''],
  ['sodium', 'maximum', '', '200', 'mg/L', '', 'Desalinated drinking water', WHO_1980, MEMORY, ''],
  ['total-alkalinity', 'minimum', '80', '', 'mg/L', 'as CaCO3', 'Desalinated water after post-treatment', LAHAV_2007, SEEN_ABSTRACT, ''],
  ['calcium', 'optimum range', '80', '120', 'mg/L', 'as CaCO3', 'Desalinated water after post-treatment; equals 32 to 48 mg/L as Ca', LAHAV_2007, SEEN_ABSTRACT, ''],
  ['ccpp', 'optimum range', '3', '10', 'mg/L', 'as CaCO3', 'Desalinated water after post-treatment', LAHAV_2007, SEEN_ABSTRACT, ''],
  ['ph', 'maximum', '', '8.5', 'pH', '', 'Desalinated water after post-treatment', LAHAV_2007, SEEN_ABSTRACT, ''],
  ['calcium', 'optimum range', '30', '80', 'mg/L', 'as Ca', 'Suggested range for drinking water, also after RO remineralisation', ROSBORG, SEEN_CHAPTERS, 'Ca to Mg mass ratio 2 to 3'],
  ['magnesium', 'optimum range', '10', '50', 'mg/L', 'as Mg', 'Suggested range for drinking water, also after RO remineralisation', ROSBORG, SEEN_CHAPTERS, ''],
  ['bicarbonate', 'optimum range', '100', '300', 'mg/L', 'as HCO3', 'Suggested range for drinking water, also after RO remineralisation', ROSBORG, SEEN_CHAPTERS, ''],
  ['sulfate', 'optimum range', '25', '100', 'mg/L', 'as SO4', 'Suggested range for drinking water, also after RO remineralisation', ROSBORG, SEEN_CHAPTERS, ''],
  ['total-hardness', 'minimum', '1.4', '', 'mmol/L', 'mmol/L', 'Do not soften below this (8 German degrees)', ROSBORG, SEEN_CHAPTERS, ''],
  ['calcium', 'optimum range', '40', '80', 'mg/L', 'as Ca', 'Czech Republic recommended range', KOZISEK_2020, SEEN_REVIEW, ''],
  ['magnesium', 'optimum range', '20', '30', 'mg/L', 'as Mg', 'Czech Republic recommended range', KOZISEK_2020, SEEN_REVIEW, ''],
  ['calcium', 'minimum', '30', '', 'mg/L', 'as Ca', 'Czech Republic, where treatment lowers calcium', CZECH, MEMORY, ''],
  ['magnesium', 'minimum', '10', '', 'mg/L', 'as Mg', 'Czech Republic, where treatment lowers magnesium', CZECH, MEMORY, ''],
  ['total-hardness', 'optimum range', '2', '3.5', 'mmol/L', 'mmol/L', 'Czech Republic recommended range', CZECH, MEMORY, ''],
  ['calcium', 'minimum', '30', '', 'mg/L', 'as Ca', 'Slovakia, recommended and not to be undercut by treatment', KOZISEK_2020, SEEN_REVIEW, ''],
  ['magnesium', 'optimum range', '10', '30', 'mg/L', 'as Mg', 'Slovakia recommended; 10 not to be undercut by treatment', KOZISEK_2020, SEEN_REVIEW, ''],
  ['magnesium', 'maximum', '', '125', 'mg/L', 'as Mg', 'Slovakia mandatory', KOZISEK_2020, SEEN_REVIEW, ''],
  ['total-hardness', 'optimum range', '1.1', '5.0', 'mmol/L', 'mmol/L', 'Slovakia recommended', KOZISEK_2020, SEEN_REVIEW, ''],
  ['total-hardness', 'minimum', '0.9', '', 'mmol/L', 'mmol/L', 'Romania (5 German degrees), no upper limit', KOZISEK_2020, SEEN_REVIEW, ''],
  ['total-hardness', 'optimum range', '150', '500', 'mg/L', 'as CaCO3', 'Portugal recommended', KOZISEK_2020, SEEN_REVIEW, ''],
  ['calcium', 'maximum', '', '100', 'mg/L', 'as Ca', 'Portugal recommended', KOZISEK_2020, SEEN_REVIEW, ''],
  ['magnesium', 'maximum', '', '50', 'mg/L', 'as Mg', 'Portugal recommended', KOZISEK_2020, SEEN_REVIEW, ''],
  ['total-hardness', 'optimum range', '0.6', '6.25', 'mmol/L', 'mmol/L', 'Envelope of six EU states: minima 0.6-1.5, maxima 3.5-6.25', KOZISEK_2020, SEEN_REVIEW, ''],
  ['total-hardness', 'minimum', '1.5', '', 'mmol/L', 'mmol/L', 'France, softened water, rule in force until 2007', KOZISEK_2020, SEEN_REVIEW, ''],
  ['total-hardness', 'optimum range', '0.9', '5.4', 'mmol/L', 'mmol/L', 'Denmark, former advice for softening units', KOZISEK_2020, SEEN_REVIEW, ''],
  ['total-dissolved-solids', 'palatability excellent', '', '300', 'mg/L', '', 'Taste panels', WHO_SOLIDS, SEEN_SOLIDS, 'Very low TDS also reported as flat and insipid'],
  ['total-dissolved-solids', 'palatability good', '300', '600', 'mg/L', '', 'Taste panels', WHO_SOLIDS, SEEN_SOLIDS, ''],
  ['total-dissolved-solids', 'palatability fair', '600', '900', 'mg/L', '', 'Taste panels', WHO_SOLIDS, SEEN_SOLIDS, ''],
  ['total-dissolved-solids', 'palatability poor', '900', '1200', 'mg/L', '', 'Taste panels', WHO_SOLIDS, SEEN_SOLIDS, ''],
  ['total-dissolved-solids', 'palatability unacceptable', '1200', '', 'mg/L', '', 'Taste panels', WHO_SOLIDS, SEEN_SOLIDS, ''],
  ['total-dissolved-solids', 'optimum range', '30', '200', 'mg/L', '', 'Japan, evaporation residue for good-tasting water (1985 committee)', 'Japan tasty-water study group (1985)', 'seen: public project research note quoting the 1985 criterion', ''],
  ['total-hardness', 'optimum range', '80', '100', 'mg/L', 'as CaCO3', 'Generally acceptable', 'Guidelines for Canadian Drinking Water Quality (1987 table notes)', 'seen: reprint of the 1987 Canadian table notes', ''],
  ['total-hardness', 'poor above', '200', '', 'mg/L', 'as CaCO3', 'Considered poor but tolerated', CANADA_HARDNESS, SEEN_CANADA, ''],
  ['total-hardness', 'unacceptable above', '500', '', 'mg/L', 'as CaCO3', 'Unacceptable for most domestic uses', CANADA_HARDNESS, SEEN_CANADA, ''],
  ['langelier-index', 'optimum range', '-0.5', '0.5', '1', '', 'Water neither aggressive nor scale-forming', 'Spanish Royal Decree 3/2023 Annex I Part C', 'seen: consolidated text of the decree', ''],
  ['magnesium', 'minimum', '10', '', 'mg/L', 'as Mg', 'Position advanced by several expert groups for desalinated water (Israel debate, WHO 2009 symposium)', 'WHO, Calcium and magnesium in drinking-water: public health significance (2009)', MEMORY, 'WHO itself has not adopted minimum values in the Guidelines'],
];
