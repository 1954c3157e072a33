// biome-ignore-all format: one number per line
/**
 * CAS numbers of related forms under which laboratories report an analyte of the tables.
 *
 * What: CAS number; keys it stands for when it comes without a name (several: the name decides); keys
 *   it may stand beside without contradicting the name; the form.
 * Source: related numbers named by public exports and parameter lists; "from memory" where a number
 *   was not looked up.
 * Verified: check digit of each in tests/outside-checks/analytes.
 */
export type RelatedCasRow = readonly [cas: string, alone: string, beside: string, form: string];

export const RELATED_CAS_ROWS: readonly RelatedCasRow[] = [
  ['14798-03-9', 'ammonia', '', 'ammonium ion'],
  ['7440-21-3', 'silica', '', 'silicon'],
  ['57-12-5', 'cyanide-free cyanide-total', '', 'cyanide ion, free or total'],
  ['7782-50-5', 'chlorine-free chlorine-total', 'chloramines', 'chlorine, free, total or combined'],
  ['7440-61-1', 'uranium uranium-activity', '', 'uranium, mass or activity'],
  ['7440-38-2', 'arsenic', 'arsenic-iii arsenic-v', 'the element'],
  ['7440-47-3', 'chromium', 'chromium-3 chromium-6', 'the element'],
  ['7723-14-0', 'total-phosphorus', 'orthophosphate', 'phosphorus'],
  ['14797-55-8', 'nitrate', 'nitrate-nitrite', 'nitrate ion'],
  ['14797-65-0', 'nitrite', 'nitrate-nitrite', 'nitrite ion'],
  ['18496-25-8', 'sulfide', 'hydrogen-sulfide', 'sulfide ion'],
  ['7783-06-4', 'hydrogen-sulfide', 'sulfide', 'hydrogen sulfide'],
  ['101043-37-2', 'microcystin-lr', 'microcystins-total', 'the commonest microcystin'],
  ['7727-37-9', '', 'nitrate nitrite nitrate-nitrite ammonia total-nitrogen total-kjeldahl-nitrogen', 'nitrogen, the basis, from memory'],
  ['7440-44-0', '', 'total-organic-carbon dissolved-organic-carbon', 'carbon, the basis, from memory'],
  ['471-34-1', '', 'total-hardness total-alkalinity calcium magnesium bicarbonate carbonate', 'calcium carbonate, the basis, from memory'],
  ['108-38-3', 'm-p-xylene', '', 'm-xylene'],
  ['106-42-3', 'm-p-xylene', '', 'p-xylene'],
  ['179601-23-1', 'm-p-xylene', '', 'm- and p-xylene mixture'],
  ['12789-03-6', 'chlordane', '', 'technical chlordane'],
  ['2764-72-9', 'diquat', '', 'diquat cation'],
  ['87392-12-9', 'metolachlor', '', 'S-metolachlor'],
  ['25154-52-3', 'nonylphenol', '', 'nonylphenol, linear mixture'],
  ['104-40-5', 'nonylphenol', '', '4-nonylphenol'],
  ['45048-62-2', 'pfba', '', 'anion, from memory'],
  ['45167-47-3', 'pfpea', '', 'anion, from memory'],
  ['92612-52-7', 'pfhxa', '', 'anion, from memory'],
  ['120885-29-2', 'pfhpa', '', 'anion, from memory'],
  ['45285-51-6', 'pfoa', '', 'anion'],
  ['3825-26-1', 'pfoa', '', 'ammonium salt, from memory'],
  ['72007-68-2', 'pfna', '', 'anion, from memory'],
  ['73829-36-4', 'pfda', '', 'anion, from memory'],
  ['45187-15-3', 'pfbs', '', 'anion'],
  ['59933-66-3', 'pfbs', '', 'a second number of one parameter list'],
  ['108427-53-8', 'pfhxs', '', 'anion'],
  ['45298-90-6', 'pfos', '', 'anion'],
  ['2795-39-3', 'pfos', '', 'potassium salt'],
  ['62037-80-3', 'hfpo-da', '', 'ammonium salt'],
  ['958445-44-8', 'adona', '', 'ammonium salt'],
];
