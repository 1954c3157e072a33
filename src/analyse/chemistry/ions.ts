/**
 * Grams per mole of charge and the signed charge of the ions that carry the charge of a drinking
 * water, by analyte key.
 *
 * Concentrations are mg/L as the analyte tables keep them: nitrate, nitrite and ammonia as N,
 * total alkalinity as CaCO3 (it stands for bicarbonate, carbonate and hydroxide together, so those
 * are never added to it). Iron and manganese count as dissolved, divalent ions.
 * Source: molar masses from standard atomic weights; rounded to five figures.
 */
export const ION_EQUIVALENTS = {
  calcium: { gPerEq: 40.078 / 2, charge: 2 },
  magnesium: { gPerEq: 24.305 / 2, charge: 2 },
  sodium: { gPerEq: 22.99, charge: 1 },
  potassium: { gPerEq: 39.098, charge: 1 },
  strontium: { gPerEq: 87.62 / 2, charge: 2 },
  iron: { gPerEq: 55.845 / 2, charge: 2 },
  manganese: { gPerEq: 54.938 / 2, charge: 2 },
  ammonia: { gPerEq: 14.007, charge: 1 },
  'total-alkalinity': { gPerEq: 100.087 / 2, charge: -1 },
  chloride: { gPerEq: 35.453, charge: -1 },
  sulfate: { gPerEq: 96.06 / 2, charge: -2 },
  nitrate: { gPerEq: 14.007, charge: -1 },
  nitrite: { gPerEq: 14.007, charge: -1 },
  fluoride: { gPerEq: 18.998, charge: -1 },
  bromide: { gPerEq: 79.904, charge: -1 },
} as const;

export type Ion = keyof typeof ION_EQUIVALENTS;

/** Every ion of the table. */
export const IONS = Object.keys(ION_EQUIVALENTS) as readonly Ion[];

/** mg/L of each ion that was measured; an ion left out was not. */
export type IonConcentrations = Readonly<Partial<Record<Ion, number>>>;

/** meq/L of one ion. */
export function milliequivalents(ion: Ion, mgPerL: number): number {
  return mgPerL / ION_EQUIVALENTS[ion].gPerEq;
}
