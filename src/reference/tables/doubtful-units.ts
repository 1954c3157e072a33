// biome-ignore-all format: one spelling family per line is easier to check
/**
 * Unit spellings that mean more than one thing, or nothing that can be used here.
 *
 * What: spellings read only where the dimension wanted proves them; spellings that are never
 *   guessed, with what to write instead; spellings that are no unit of water at all.
 * Source: spellings met in public water-data exports and bench logs, and common usage.
 * Verified: every spelling of the fixture of tests/outside-checks/units is read there.
 */
import type { Dimension } from '../dimensions.ts';

/** Read as `unit` where the column wants `dimension`; asked about anywhere else. */
export type ContextRow = readonly [
  spellings: string,
  unit: string,
  dimension: Dimension,
  otherwise: string,
];

export const CONTEXT_ROWS: readonly ContextRow[] = [
  ['C', 'degC', 'temperature', 'write degC'],
  ['F', 'degF', 'temperature', 'write degF'],
  ['K', 'kelvin', 'temperature', 'write kelvin'],
  ["'", 'min', 'time', 'write min'],
  ['"', 's', 'time', 'write s'],
  ['a', 'yr', 'time', 'write yr'],
  ['uS', 'uS/cm', 'conductivity', 'write uS/cm'],
  ['mS', 'mS/cm', 'conductivity', 'write mS/cm or uS/cm; mS is also printed where uS is meant'],
  ['EC', 'mS/cm', 'conductivity', 'write mS/cm'],
  ['CF', 'CF', 'conductivity', 'write uS/cm; 1 CF is 100 uS/cm'],
  ['l/m | L/m', 'L/min', 'flow', 'write L/min for a flow, 1/m for an absorbance'],
  ['l/m | L/m', '1/m', 'absorbance', 'write L/min for a flow, 1/m for an absorbance'],
  ['TU', 'NTU', 'turbidity-white', 'write NTU or FNU'],
  ['SU | su', 'pH', 'ph', 'write pH units'],
  ['None | none | Unitless | unitless | units | - | n/a | (none) | ()', 'pH', 'ph', 'write the unit'],
  ['None | none | Unitless | unitless | units | - | n/a | (none) | () | dimensionless', '1', 'ratio', 'write the unit'],
  ['% | percent | pct', '%', 'ratio', 'say what the per cent are of; 1 % of mass is 10000 mg/L'],
  ['ug/cm3', 'mg/L', 'mass-concentration', 'write mg/L if a concentration is meant, uS/cm if a conductivity'],
  ['PSU | PSS', 'PSU', 'salinity', 'a salinity is not a concentration; write mg/L'],
  ['g/kg | parts per thousand | ‰ | ppth | 0/00 | per mil', 'g/kg', 'salinity', 'a mass fraction is not a concentration; write mg/L'],
  ['mSv/yr | mSv/a | mSv/year', 'mSv/yr', 'dose-rate', 'a dose is not a concentration; write Bq/L or pCi/L'],
  ['mrem/yr | mrem/year | mrem/a', 'mrem/yr', 'dose-rate', 'a dose is not a concentration; write Bq/L or pCi/L'],
  ['ppm | PPM', 'ppm', 'meter-tds', 'name the scale of the meter'],
  ['ppm (NaCl) | ppm NaCl | ppm (500) | ppm (0.5) | ppm 0.5', 'ppm (NaCl)', 'meter-tds', 'a reading of a meter: write ppm and name the scale in its own column'],
  ['ppm (442) | ppm 442 | ppm (700) | ppm (0.7) | ppm 0.7', 'ppm (442)', 'meter-tds', 'a reading of a meter: write ppm and name the scale in its own column'],
  ['ppm (KCl) | ppm KCl', 'ppm (KCl)', 'meter-tds', 'a reading of a meter: write ppm and name the scale in its own column'],
  ['ppm (640) | ppm (0.64) | ppm 0.64', 'ppm (0.64)', 'meter-tds', 'a reading of a meter: write ppm and name the scale in its own column'],
];

/** Never guessed: what it could mean, and what to write instead. */
export type AskedRow = readonly [spellings: string, meanings: string, remedy: string];

export const ASKED_ROWS: readonly AskedRow[] = [
  ['oz | ounce | ounces | oz.', 'an ounce of mass or a fluid ounce', 'write fl oz for a volume, oz (mass) for a mass'],
  ['ML | Ml', 'millilitre or megalitre', 'write mL or m3'],
  ['gr | gr.', 'gram or grain', 'write g or grain'],
  ['m', 'minute or month', 'write min or mo'],
  ['M', 'minute, month, or mole per litre', 'write min, mo or mol/L'],
  ['ppt | PPT', 'parts per trillion or parts per thousand', 'write ng/L or g/L'],
  ['mg/kg', 'mass per mass of a solid, or a dilute water taken at density 1', 'write mg/L if the sample is water'],
  ['wt % | wt% | % w/w', 'a mass fraction', 'write mg/L; 1 % of mass is about 10000 mg/L'],
  ['MPN', 'a most probable number without its volume', 'write MPN/100mL or the volume that applies'],
  ['CFU | cfu', 'a count of colonies without its volume', 'write CFU/100mL or the volume that applies'],
  ['mho/cm | mhos/cm', 'a conductivity whose figures do not fit its name in the exports that use it', 'write uS/cm'],
  ['uS/cm @20C | uS/cm @20°C | uS/cm (20°C) | uS/cm à 20°C | uS/cm at 20 C', 'a conductivity at 20 C', 'have it converted to 25 C with the stated coefficient of the meter, then write uS/cm'],
  ['NTRU', 'turbidity by a ratio meter', 'write NTU or FNU, as the report of the laboratory says'],
  ['JTU', 'turbidity by candle, which does not convert', 'write NTU or FNU, as the report of the laboratory says'],
  ['mg/L TDS (meter) | TDS ppm | ppm TDS', 'a reading of a meter without its scale', 'write ppm and name the scale in its own column'],
  ['°F (hardness column)', 'French degrees or degrees Fahrenheit', 'write degfH for hardness, degF for temperature'],
  ['bed volumes | BV', 'treated volume over medium volume', 'write the volume in L'],
  ['fills', 'fillings of a vessel of unknown size', 'write the volume in L'],
  ['pitchers', 'fillings of a vessel of unknown size', 'write the volume in L'],
  ['uses', 'a count, not a volume', 'write the volume in L'],
  ['strokes', 'a count of strokes, each of unknown volume', 'write the volume in L'],
  ['mm:ss | mm:ss.s | h:mm:ss', 'a way to write a time, not a unit', 'write the time as 0:04.2, or the unit in the header'],
  ['m (time)', 'minute or month', 'write min or mo'],
  ['day fraction', 'a way to write a time, not a unit', 'write the time in s or min'],
  ['Excel serial', 'a way to write a date, not a unit', 'write the date as 2026-03-14'],
  ['code | Text', 'no unit', 'write the unit'],
  ['-999999 | -9999 | -9 | -99 | 9999', 'a mark for a missing reading, not a unit', 'leave the cell blank where nothing was read'],
];

/** Known, and of no use for water: the message says why. */
export type RefusedRow = readonly [spellings: string, why: string, remedy: string];

export const REFUSED_ROWS: readonly RefusedRow[] = [
  ['UG/KG | ug/kg | NG/G | ng/g | NG/KG | ng/kg | ug/g | mg/g | MG/KG', 'measures a solid, not water', 'take rows of solid samples out of the file'],
  ['ug/m3 air | mg/m3 air | ppbv | ppmv', 'measures air, not water', 'take rows of air samples out of the file'],
];
