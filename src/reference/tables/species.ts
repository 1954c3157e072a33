/**
 * Species a mass can be reported as, and the words that name them beside a unit.
 *
 * What: spelling behind a unit, and the species of the basis; `mg/L NO3-N` is mg/L as N.
 * Source: reporting habits of laboratories; chemical symbols.
 * Verified: the spellings of the fixture of tests/outside-checks/units.
 * Platinum is left out on purpose: mg/L Pt is the colour scale, not a mass of platinum.
 */
const SELF_NAMED =
  'N NO3 NO2 NH3 NH4 P PO4 CaCO3 HCO3 CO3 OH Cl2 ClO2 NH2Cl SO4 S H2S Si SiO2 C O2 H3BO3 CN CNCl ' +
  'CaO I2 LAS Al Sb As Ba Be B Cd Ca Cr Co Cu F Fe Pb Li Mg Mn Hg Mo Ni Se Ag Sr Tl Sn Ti W U V ' +
  'Zn Na K Cl Br I decachlorobiphenyl';

const NAMED: Readonly<Record<string, string>> = {
  'NO3-N': 'N',
  'NO2-N': 'N',
  'NOx-N': 'N',
  'NH3-N': 'N',
  'NH4-N': 'N',
  'PO4-P': 'P',
  'SO4-S': 'S',
  nitrogen: 'N',
  nitrate: 'NO3',
  nitrite: 'NO2',
  ammonia: 'NH3',
  ammonium: 'NH4',
  phosphorus: 'P',
  phosphate: 'PO4',
  'calcium carbonate': 'CaCO3',
  bicarbonate: 'HCO3',
  carbon: 'C',
  chlorine: 'Cl2',
  silica: 'SiO2',
  'silicon dioxide': 'SiO2',
  silicon: 'Si',
  sulfate: 'SO4',
  sulphate: 'SO4',
  sulfur: 'S',
  oxygen: 'O2',
};

export const SPECIES: ReadonlyMap<string, string> = new Map([
  ...SELF_NAMED.split(' ').map((name): [string, string] => [name, name]),
  ...Object.entries(NAMED),
]);
