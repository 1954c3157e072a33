/**
 * How the basis of an analyte is treated where a report does not state it.
 *
 * What: analytes whose basis must be stated; analytes counted in equivalents; the charge behind
 *   hardness; elements that name a species.
 * Source: reporting habits of laboratories, common practice. The factor at stake is given.
 * Verified: the molar masses behind the factors in tests/outside-checks/analytes.
 */

/** Reported on two bases about equally often, so that neither may be assumed. */
export const BASIS_MUST_BE_STATED: ReadonlySet<string> = new Set([
  'nitrate', // as N or as NO3: 4.427
  'nitrite', // as N or as NO2: 3.285
  'ammonia', // as N, NH3 or NH4: up to 1.288
  'orthophosphate', // as P or as PO4: 3.066
  'total-phosphorus', // as P or as PO4: 3.066
  'silica', // as SiO2 or as Si: 2.139
  'monochloramine', // as Cl2, NH2Cl or N: up to 5.062
  'bicarbonate', // as HCO3 or as CaCO3: 1.219
  'carbonate', // as CO3 or as CaCO3: 1.668
  'hydroxide', // as OH or as CaCO3: 2.943
]);

/** Their grams per counted unit are grams per equivalent. */
export const COUNTED_IN_EQUIVALENTS: ReadonlySet<string> = new Set([
  'total-alkalinity',
  'phenolphthalein-alkalinity',
]);

/** Calcium and magnesium, which make up hardness, carry two charges each. */
export const HARDNESS_CHARGE = 2;

/** The element as which a species of it is reported. */
export const ELEMENT_OF: Readonly<Record<string, string>> = {
  'arsenic-iii': 'As',
  'arsenic-v': 'As',
  'chromium-3': 'Cr',
  'chromium-6': 'Cr',
};
