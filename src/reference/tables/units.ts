// biome-ignore-all format: one unit per line is easier to check against its source
/**
 * Units of measurement and the spellings that mean them without doubt.
 *
 * What: name, dimension, factor to the base unit of the dimension, spellings (the name is one).
 * Unit: base units are those of `dimensions.ts`; a factor is exact unless its line says rounded.
 * Source: definitions of NIST Special Publication 811 (2008 edition), Appendix B, and NIST
 *   Handbook 44, Appendix C, for volume, mass and pressure; 1 Ci = 3.7e10 Bq; a year of
 *   365.2425 days. Spellings were collected from public water-data exports and from usage.
 * Verified: factors recomputed from the definitions and held against the printed ones in
 *   tests/outside-checks/units, read in a transcription of SP 811, Appendix B.9.
 */
import type { Dimension } from '../dimensions.ts';

export interface UnitRowExtra {
  /** Added after the factor: base = value x factor + offset. */
  readonly offset?: string;
  /** The species or scale the unit itself names. */
  readonly basis?: string;
  readonly note?: string;
}

export type UnitRow = readonly [
  name: string,
  dimension: Dimension,
  factor: string,
  spellings: string,
  extra?: UnitRowExtra,
];

export const UNIT_ROWS: readonly UnitRow[] = [
  // Volume
  ['L', 'volume', '1', 'l | ltr | ltrs | litre | litres | liter | liters | dm3'],
  ['mL', 'volume', '0.001', 'ml | mls | cc | ccm | cm3 | millilitre | millilitres | milliliter | milliliters'],
  ['cL', 'volume', '0.01', 'cl | centilitre | centilitres | centiliter | centiliters'],
  ['dL', 'volume', '0.1', 'dl | decilitre | decilitres | deciliter | deciliters'],
  ['m3', 'volume', '1000', 'cubic metre | cubic metres | cubic meter | cubic meters | cbm'],
  ['in3', 'volume', '16.387064/1000', 'cu in | cubic inch | cubic inches'],
  ['ft3', 'volume', '28.316846592', 'cu ft | cubic foot | cubic feet'],
  ['CCF', 'volume', '2831.6846592', 'HCF', { note: '100 cubic feet, a billing unit' }],
  ['US legal cup', 'volume', '0.24', '', { note: 'nutrition labels, 21 CFR 101.9(b)(5), from memory' }],
  // Mass. A mass becomes a volume only through the density at the logged temperature.
  ['g', 'mass', '1', 'gram | grams | gramme | grammes'],
  ['mg', 'mass', '0.001', 'milligram | milligrams'],
  ['kg', 'mass', '1000', 'kgs | kilo | kilos | kilogram | kilograms'],
  ['lb', 'mass', '453.59237', 'lbs | lb. | lbs. | pound | pounds'],
  ['oz (mass)', 'mass', '28.349523125', 'oz avdp | oz av | ounce (mass) | ounces (mass)'],
  ['grain', 'mass', '64.79891/1000', 'grains'],
  // Time
  ['s', 'time', '1', 'sec | secs | sec. | second | seconds'],
  ['ms', 'time', '0.001', 'msec | millisecond | milliseconds'],
  ['min', 'time', '60', 'mins | min. | MIN | Min | minute | minutes'],
  ['h', 'time', '3600', 'hr | hrs | hr. | hour | hours'],
  ['d', 'time', '86400', 'day | days'],
  ['wk', 'time', '604800', 'wks | week | weeks'],
  ['mo', 'time', '2629746', 'mos | month | months', { note: 'a twelfth of a year of 365.2425 days' }],
  ['yr', 'time', '31556952', 'yrs | yr. | year | years', { note: 'a year of 365.2425 days' }],
  // Flow. Gallons per time stand with the words that depend on the country.
  ['L/min', 'flow', '1', 'lpm | LPM | l/min | L/MIN | L per min | L per minute | litres per minute | litre per minute | liters per minute | liter per minute'],
  ['L/s', 'flow', '60', 'l/s | lps | litres per second | liters per second'],
  ['mL/s', 'flow', '60/1000', 'ml/s | mL/sec | mL per s | millilitres per second | milliliters per second'],
  ['mL/min', 'flow', '0.001', 'ml/min | mL per min | millilitres per minute | milliliters per minute'],
  ['L/h', 'flow', '1/60', 'l/h | L/hr | l/hr | lph | litres per hour | liters per hour'],
  ['m3/h', 'flow', '1000/60', 'm3/hr | cubic metres per hour | cubic meters per hour'],
  ['L/day', 'flow', '1/1440', 'L/d | l/d | l/day | lpd | LPD | litres per day | liters per day'],
  // Temperature. Degrees Fahrenheit and kelvin have an offset.
  ['degC', 'temperature', '1', '°C | deg C | deg. C | ℃ | Celsius | degree Celsius | degrees Celsius | degrees C | deg Celsius'],
  ['degF', 'temperature', '5/9', '°F | deg F | deg. F | ℉ | Fahrenheit | degree Fahrenheit | degrees Fahrenheit | degrees F', { offset: '-160/9' }],
  ['kelvin', 'temperature', '1', 'kelvins', { offset: '-273.15' }],
  // Pressure. A psi is a pound-force (4.4482216152605 N) on a square inch (0.00064516 m2).
  ['psi', 'pressure', '4.4482216152605/0.00064516/1000', 'lb/in2 | lbf/in2 | lb/sq in | lbs/in2 | pounds per square inch'],
  ['psig', 'pressure', '4.4482216152605/0.00064516/1000', 'psi gauge | psi (gauge)', { note: 'gauge pressure' }],
  ['kPa', 'pressure', '1', 'kilopascal | kilopascals'],
  ['Pa', 'pressure', '0.001', 'pascal | pascals'],
  ['MPa', 'pressure', '1000', 'megapascal | megapascals'],
  ['bar', 'pressure', '100', 'bars'],
  ['mbar', 'pressure', '0.1', 'millibar | millibars | hPa'],
  ['kgf/cm2', 'pressure', '98.0665', 'kg/cm2'],
  ['atm', 'pressure', '101.325', 'atmosphere | atmospheres'],
  ['Torr', 'pressure', '101.325/760', 'torr'],
  ['mmHg', 'pressure', '133.322387415/1000', 'mm/Hg | mm Hg'],
  ['inHg', 'pressure', '25.4*133.322387415/1000', 'in Hg'],
  ['mH2O', 'pressure', '9.80665', 'mWS | m H2O'],
  ['ftH2O', 'pressure', '0.3048*9.80665', 'ft H2O'],
  // Power and energy
  ['W', 'power', '1', 'watt | watts'],
  ['kW', 'power', '1000', 'kilowatt | kilowatts'],
  ['mW', 'power', '0.001', 'milliwatt | milliwatts'],
  ['Wh/day', 'power', '3600/86400', 'Wh/d | watt-hours per day'],
  ['kWh/day', 'power', '3600000/86400', 'kWh/d | kilowatt-hours per day'],
  ['kWh/yr', 'power', '3600000/31556952', 'kWh/year | kWh/a | kilowatt-hours per year'],
  ['J', 'energy', '1', 'joule | joules'],
  ['kJ', 'energy', '1000', 'kilojoule | kilojoules'],
  ['MJ', 'energy', '1000000', 'megajoule | megajoules'],
  ['Wh', 'energy', '3600', 'watt-hour | watt-hours | watt hours'],
  ['kWh', 'energy', '3600000', 'kilowatt-hour | kilowatt-hours | kilowatt hours'],
  // Mass concentration. Mg/L is a milligram written carelessly, never a megagram.
  ['g/L', 'mass-concentration', '1000', 'g/l | kg/m3 | mg/mL | mg/ml | grams per liter | grams per litre'],
  ['mg/L', 'mass-concentration', '1', 'mg/l | MG/L | Mg/L | Mg/l | mg/ltr | mg/liter | mg/litre | mg per L | mg per litre | mg per liter | milligrams/L | milligrams per liter | milligrams per litre | milligram per liter | milligram per litre | mg.L-1 | mg L-1 | mg l-1 | mg·L-1 | mg/dm3 | MILIGRAMOS POR LITRO | mgl | mg\\L | g/m3 | gm/m3 | g m-3 | ug/mL | ug/ml | ppm (mg/L) | mg/L (ppm) | ppm or mg/L | parts per million | pt. per million'],
  ['ug/L', 'mass-concentration', '0.001', 'ug/l | UG/L | Ug/L | ug/ltr | ug/liter | ug/litre | microgram/L | micrograms/L | micrograms per liter | micrograms per litre | microgram per liter | microgram per litre | mcg/L | mcg/l | ug/dm3 | ug.L-1 | ug L-1 | ug l-1 | ug·L-1 | mg/m3 | ng/mL | ng/ml | ppb | PPB | ppb (ug/L) | ug/L (ppb) | parts per billion'],
  ['ng/L', 'mass-concentration', '1e-6', 'ng/l | NG/L | nanograms per liter | nanograms per litre | nanogram per liter | nanogram per litre | ng.L-1 | ng L-1 | ng l-1 | ng·L-1 | ng/dm3 | pg/mL | pg/ml | ppt (ng/L) | ng/L (ppt) | parts per trillion'],
  ['pg/L', 'mass-concentration', '1e-9', 'pg/l | PG/L | picograms per liter | picograms per litre | ppq | parts per quadrillion'],
  // Amount and charge
  ['mol/L', 'amount-concentration', '1000', 'mol/l'],
  ['mmol/L', 'amount-concentration', '1', 'mmol/l | mM | mol/m3 | millimoles per liter | millimoles per litre'],
  ['umol/L', 'amount-concentration', '0.001', 'umol/l | micromoles per liter | micromoles per litre'],
  ['nmol/L', 'amount-concentration', '1e-6', 'nmol/l | nanomoles per liter | nanomoles per litre'],
  ['eq/L', 'charge-concentration', '1000', 'eq/l'],
  ['meq/L', 'charge-concentration', '1', 'meq/l | mEq/L | mEq/l | mval/l | mval/L | milliequivalents per liter | milliequivalents per litre'],
  ['ueq/L', 'charge-concentration', '0.001', 'ueq/l | microequivalents per liter | microequivalents per litre'],
  // Hardness, in mg/L as CaCO3 (100.087 g/mol). The trade rounds the grain per US gallon to
  // 17.118; the definitions give 64.79891 mg / 3.785411784 L = 17.11806… mg/L.
  ['gpg', 'hardness', '17.118', 'GPG | grains/USgal | grains/US gal | grains per US gallon', { basis: 'as CaCO3', note: 'US grain per US gallon, the rounded factor of the trade' }],
  ['degClark', 'hardness', '64.79891/4.54609', '°Clark | °e | °eH | grains/imp gal | grains per imperial gallon | grains/UK gal', { basis: 'as CaCO3', note: 'grain per imperial gallon' }],
  ['degdH', 'hardness', '10*100.087/56.077', '°dH | dH | °d | ° dH | dGH | °KH', { basis: 'as CaCO3', note: '10 mg CaO per litre' }],
  ['degfH', 'hardness', '0.1*100.087', '°fH | °f | °TH', { basis: 'as CaCO3', note: '0.1 mmol per litre' }],
  ['mmol/L CaCO3', 'hardness', '100.087', 'mmol/l CaCO3 | mmol/l Ca+Mg | mmol/L Ca+Mg | mol/m3 (hardness) | mmol/L as CaCO3', { basis: 'as CaCO3' }],
  // Conductivity, at 25 C
  ['uS/cm', 'conductivity', '1', 'US/CM | uS/cm @25C | uS/cm @25°C | uS/cm (25°C) | uS/cm à 25°C | uS/cm at 25 C | microsiemens per centimeter | microsiemens per centimeter at 25 degrees Celsius | umho/cm | umhos/cm | micromhos/cm'],
  ['mS/cm', 'conductivity', '1000', 'mmho/cm | mmhos/cm | dS/m | millisiemens per centimeter'],
  ['mS/m', 'conductivity', '10', ''],
  ['S/m', 'conductivity', '10000', ''],
  // Optics
  ['NTU', 'turbidity-white', '1', 'ntu | N.T.U. | nephelometric turbidity units | FTU | UNT | uT | NTE/F | TE/F'],
  ['FNU', 'turbidity-infrared', '1', 'fnu | NFU | FAU | formazin nephelometric units', { note: 'infra-red light' }],
  ['Pt-Co', 'colour', '1', 'APHA | Hazen | °Hazen | mg/L Pt | mg/l Pt | mg/l Pt-Co | mg/L Pt-Co | mg Pt/l | mg Pt/L | PtCo units | Pt-Co units | uH'],
  ['CU', 'colour', '1', 'PCU | HU | ACU | color units | colour units'],
  ['TCU', 'colour', '1', 'true color units | true colour units'],
  ['TON', 'odour', '1', 'T.O.N. | threshold odor number | threshold odour number | dilution | Dilution number | Verdünnungsfaktor'],
  ['pH', 'ph', '1', 'std units | S.U. | s.u. | pH units | pH unit | PH UNITS | PH | standard units | phunits | unité pH'],
  ['1/cm', 'absorbance', '1', 'AU/cm | units/cm | cm-1 | /cm | abs/cm'],
  ['1/m', 'absorbance', '0.01', 'm-1 | per m | /m'],
  ['%T', 'transmittance', '1', 'UVT % | % T | % transmittance'],
  ['L/(mg m)', 'specific-absorbance', '1', 'L/mgDOC*m | L/mg-m'],
  ['mV', 'potential', '1', 'millivolt | millivolts'],
  // Microbiology: colonies, most probable numbers, plain counts and gene copies stay apart.
  ['MPN/100mL', 'most-probable-number', '1', 'MPN/100ml | MPN/100ML | mpn/100ml | mpn/100mL | NPP/100mL | NPP/100ml | NMP/100mL | NMP/100ml | most probable number per 100 milliliters'],
  ['MPN/mL', 'most-probable-number', '100', 'MPN/ml'],
  ['MPN/L', 'most-probable-number', '0.1', 'MPN/l'],
  ['MPN/100L', 'most-probable-number', '0.001', 'MPN/100l'],
  ['CFU/100mL', 'plate-count', '1', 'cfu/100mL | cfu/100ml | CFU/100ml | CFU/100ML | colonies/100mL | colonies/100ml | colonies per 100 milliliters | colony forming units per 100 milliliters | #col/100mL | UFC/100mL | UFC/100ml | KBE/100mL | KBE/100ml | kve/100ml | KVE/100ml'],
  ['CFU/mL', 'plate-count', '100', 'cfu/mL | cfu/ml | CFU/ml | KBE/mL | KBE/ml | UFC/mL | UFC/ml | No./1mL | No./1ml'],
  ['CFU/250mL', 'plate-count', '0.4', 'cfu/250mL | cfu/250ml | CFU/250ml | /250mL | /250ml'],
  ['CFU/L', 'plate-count', '0.1', 'cfu/L | cfu/l'],
  ['count/100mL', 'count', '1', 'count/100ml | #/100mL | #/100ml | No./100mL | No./100ml | n/100mL | n/100ml | org/100mL | org/100ml | per 100mL | per 100ml | /100mL | /100ml | Anzahl/100ml | cn/100mL | cn/100ml'],
  ['CCE/100mL', 'count', '1', 'CCE/100ml', { note: 'cell equivalents by polymerase chain reaction' }],
  ['count/mL', 'count', '100', 'count/ml | #/mL | #/ml'],
  ['count/100L', 'count', '0.001', '#/100L | #/100l'],
  ['oocysts/L', 'cyst-count', '1', 'oocysts/l'],
  ['cysts/L', 'cyst-count', '1', 'cysts/l'],
  ['oocysts/100L', 'cyst-count', '0.01', 'cysts/100L'],
  ['oocysts/10L', 'cyst-count', '0.1', 'cysts/10L'],
  ['PFU/100mL', 'plaque-count', '1', 'PFU/100ml | pfu/100mL | pfu/100ml'],
  ['PFU/mL', 'plaque-count', '100', 'PFU/ml | pfu/mL | pfu/ml'],
  ['PFU/L', 'plaque-count', '0.1', 'pfu/L | pfu/l'],
  ['copies/L', 'gene-copies', '1', 'gc/L | cp/L'],
  ['presence', 'presence', '1', 'P/A | P/A per 100mL | P/A/100mL | Presence/Absence | Present/Absent | presence or absence in sample | pres/abs', { note: 'present or absent, not a number' }],
  // Particles and fibres
  ['particles/mL', 'particle-count', '1000', 'particles/ml'],
  ['particles/L', 'particle-count', '1', 'particles/l'],
  ['MFL', 'fibre-count', '1', 'MFL >10um | million fibers per liter | million fibres per litre | MF/L'],
  // Radioactivity
  ['Bq/L', 'activity-concentration', '1', 'Bq/l | becquerels per liter | becquerels per litre'],
  ['mBq/L', 'activity-concentration', '0.001', 'mBq/l | Bq/m3'],
  ['pCi/L', 'activity-concentration', '0.037', 'pCi/l | PCI/L | picocuries per liter | picocuries per litre'],
  ['nCi/L', 'activity-concentration', '37', 'nCi/l'],
  ['uCi/mL', 'activity-concentration', '37000000', 'uCi/ml'],
  ['dpm/L', 'activity-concentration', '1/60', 'dpm/l | disintegrations per minute per liter'],
  ['T.U.', 'activity-concentration', '0.118', 'tritium units', { note: 'tritium only; rounded' }],
  // Ratios
  ['% recovery', 'recovery', '1', 'PERCENT | % Recovery', { note: 'recovery of a laboratory spike, not a concentration' }],
  ['% saturation', 'saturation', '1', '% sat | % saturatn'],
  ['log10', 'log-reduction', '1', 'log | LRV | log reduction'],
];

/** Units with a name of their own that is not read as a spelling, or only in a context. */
export const QUIET_UNIT_ROWS: readonly UnitRow[] = [
  ['1', 'ratio', '1', ''],
  ['mg/L CaCO3', 'hardness', '1', '', { basis: 'as CaCO3' }],
  ['%', 'ratio', '0.01', ''],
  ['CF', 'conductivity', '100', ''],
  ['PSU', 'salinity', '1', ''],
  ['g/kg', 'salinity', '1', ''],
  ['mSv/yr', 'dose-rate', '1', ''],
  ['mrem/yr', 'dose-rate', '0.01', ''],
  ['ppm', 'meter-tds', '1', ''],
  ['ppm (NaCl)', 'meter-tds', '1', '', { basis: 'NaCl scale' }],
  ['ppm (442)', 'meter-tds', '1', '', { basis: '442 scale' }],
  ['ppm (KCl)', 'meter-tds', '1', '', { basis: 'KCl scale' }],
  ['ppm (0.64)', 'meter-tds', '1', '', { basis: 'factor 0.64' }],
];
