import type { IonConcentrations } from './ions.ts';

/** Bicarbonate loses carbon dioxide and water on drying: 1.2193 x 0.4917, rounded. */
const ALKALINITY_LEFT = 0.6;

/** Nitrogen counted as nitrate, molar masses 62.005 and 14.007. */
const NITRATE_PER_NITROGEN = 62.005 / 14.007;

/** Silica counted as metasilicate, molar masses 76.083 and 60.084. */
const METASILICATE_PER_SILICA = 76.083 / 60.084;

/**
 * Total dissolved solids as a residue dried at 180 °C would weigh them, from the ions, mg/L.
 *
 * The sum of the ions themselves is 20 to 55 % higher in bicarbonate waters.
 * @param ions mg/L; nitrate as N, alkalinity as CaCO3
 * @param silica mg/L as SiO2; 0 where it was not measured
 * Source: Standard Methods 1030 E (from memory): 0.6 alkalinity + Na + K + Ca + Mg + Cl + SO4 + SiO3
 * + NO3 + F; a regulatory report prints 0.61 and counts silica as SiO2.
 * Checked by: tests/outside-checks/quality-control/
 * @example calculatedDissolvedSolids({ 'total-alkalinity': 100, calcium: 40 }) // 100
 */
export function calculatedDissolvedSolids(ions: IonConcentrations, silica = 0): number {
  const of = (mgPerL: number | undefined): number => mgPerL ?? 0;
  return (
    ALKALINITY_LEFT * of(ions['total-alkalinity']) +
    of(ions.sodium) +
    of(ions.potassium) +
    of(ions.calcium) +
    of(ions.magnesium) +
    of(ions.chloride) +
    of(ions.sulfate) +
    NITRATE_PER_NITROGEN * of(ions.nitrate) +
    of(ions.fluoride) +
    METASILICATE_PER_SILICA * silica
  );
}
