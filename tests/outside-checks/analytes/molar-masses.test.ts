// biome-ignore-all format: the tables of weights and formulas read better filled than one a line
import { describe, expect, it } from 'vitest';
import { analyteIndex, conversionTo, readUnit } from '../../../src/reference/index.ts';
import { analyteOf } from './read-fixture.ts';

/** Standard atomic weights, IUPAC 2021, abridged to five digits; from memory. */
const WEIGHTS: Readonly<Record<string, number>> = {
  H: 1.008, Li: 6.94, Be: 9.0122, B: 10.81, C: 12.011, N: 14.007, O: 15.999, F: 18.998,
  Na: 22.99, Mg: 24.305, Al: 26.982, Si: 28.085, P: 30.974, S: 32.06, Cl: 35.45, K: 39.098,
  Ca: 40.078, Ti: 47.867, V: 50.942, Cr: 51.996, Mn: 54.938, Fe: 55.845, Co: 58.933, Ni: 58.693,
  Cu: 63.546, Zn: 65.38, As: 74.922, Se: 78.971, Br: 79.904, Sr: 87.62, Mo: 95.95, Ag: 107.87,
  Cd: 112.41, Sn: 118.71, Sb: 121.76, I: 126.9, Ba: 137.33, W: 183.84, Hg: 200.59, Tl: 204.38,
  Pb: 207.2, U: 238.03,
};

/** What five digits and the natural spread of chlorine (35.446 to 35.457) leave open, g/mol. */
const OPEN: Readonly<Record<string, number>> = {
  Cl: 0.007, Ag: 0.005, Cd: 0.005, I: 0.05, Ba: 0.005, Hg: 0.005, U: 0.005,
};
const OTHERWISE = 0.0006;

function massOf(formula: string): { readonly mass: number; readonly open: number } {
  let mass = 0;
  let open = 0.006; // half a unit of the second decimal of the tables, and a rounding
  for (const [, element = '', count] of formula.matchAll(/([A-Z][a-z]?)(\d*)/g)) {
    const times = count === undefined || count === '' ? 1 : Number(count);
    mass += (WEIGHTS[element] ?? Number.NaN) * times;
    open += (OPEN[element] ?? OTHERWISE) * times;
  }
  return { mass, open };
}

const FORMULAS: Readonly<Record<string, string>> = {
  aluminum: 'Al', antimony: 'Sb', arsenic: 'As', barium: 'Ba', beryllium: 'Be', cadmium: 'Cd',
  chromium: 'Cr', cobalt: 'Co', copper: 'Cu', iron: 'Fe', lead: 'Pb', lithium: 'Li',
  manganese: 'Mn', mercury: 'Hg', molybdenum: 'Mo', nickel: 'Ni', selenium: 'Se', silver: 'Ag',
  strontium: 'Sr', thallium: 'Tl', tin: 'Sn', titanium: 'Ti', tungsten: 'W', vanadium: 'V',
  zinc: 'Zn', calcium: 'Ca', magnesium: 'Mg', sodium: 'Na', potassium: 'K', boron: 'B',
  uranium: 'U', chloride: 'Cl', sulfate: 'SO4', fluoride: 'F', bicarbonate: 'HCO3',
  carbonate: 'CO3', hydroxide: 'OH', silica: 'SiO2', bromide: 'Br', iodide: 'I',
  'carbon-dioxide': 'CO2', 'hydrogen-sulfide': 'H2S', 'cyanide-free': 'CN',
  'cyanogen-chloride': 'CNCl', perchlorate: 'ClO4', nitrate: 'NO3', nitrite: 'NO2',
  ammonia: 'NH3', orthophosphate: 'PO4', 'chlorine-free': 'Cl2', monochloramine: 'NH2Cl',
  'chlorine-dioxide': 'ClO2', ozone: 'O3', iodine: 'I2', 'cyanuric-acid': 'C3H3N3O3',
  chloroform: 'CHCl3', bromodichloromethane: 'CHBrCl2', dibromochloromethane: 'CHBr2Cl',
  bromoform: 'CHBr3', 'monochloroacetic-acid': 'C2H3ClO2', 'dichloroacetic-acid': 'C2H2Cl2O2',
  'trichloroacetic-acid': 'C2HCl3O2', 'monobromoacetic-acid': 'C2H3BrO2',
  'dibromoacetic-acid': 'C2H2Br2O2', 'bromochloroacetic-acid': 'C2H2BrClO2',
  'bromodichloroacetic-acid': 'C2HBrCl2O2', 'chlorodibromoacetic-acid': 'C2HBr2ClO2',
  'tribromoacetic-acid': 'C2HBr3O2', bromate: 'BrO3', chlorite: 'ClO2', chlorate: 'ClO3',
  'dissolved-oxygen': 'O2', pfba: 'C4HF7O2', pfpea: 'C5HF9O2', pfhxa: 'C6HF11O2',
  pfhpa: 'C7HF13O2', pfoa: 'C8HF15O2', pfna: 'C9HF17O2', pfda: 'C10HF19O2', pfunda: 'C11HF21O2',
  pfdoda: 'C12HF23O2', pftrda: 'C13HF25O2', pfteda: 'C14HF27O2', pfbs: 'C4HF9SO3',
  pfpes: 'C5HF11SO3', pfhxs: 'C6HF13SO3', pfhps: 'C7HF15SO3', pfos: 'C8HF17SO3',
  pfns: 'C9HF19SO3', pfds: 'C10HF21SO3', pfunds: 'C11HF23SO3', pfdods: 'C12HF25SO3',
  pftrds: 'C13HF27SO3', 'hfpo-da': 'C6HF11O3', adona: 'C7H2F12O4', '9cl-pf3ons': 'C8HClF16SO4',
  '11cl-pf3ouds': 'C10HClF20SO4', '4-2-fts': 'C6H5F9SO3', '6-2-fts': 'C8H5F13SO3',
  '8-2-fts': 'C10H5F17SO3', netfosaa: 'C12H8F17NO4S', nmefosaa: 'C11H6F17NO4S',
  fosa: 'C8H2F17NO2S', nfdha: 'C5HF9O4', pfeesa: 'C4HF9SO4', pfmpa: 'C4HF7O3',
  pfmba: 'C5HF9O3', 'trifluoroacetic-acid': 'C2HF3O2', 'arsenic-iii': 'As', 'arsenic-v': 'As',
  'chromium-3': 'Cr', 'chromium-6': 'Cr', sulfide: 'S', 'cyanide-total': 'CN',
  'total-phosphorus': 'P', 'chlorine-total': 'Cl2', chloramines: 'Cl2',
};

describe('IUPAC standard atomic weights (2021, abridged, from memory): molar masses', () => {
  for (const [key, formula] of Object.entries(FORMULAS)) {
    const { mass, open } = massOf(formula);
    // The tolerance is what the digits of the weights leave open, by number of atoms.
    it(`${key}, ${formula}: ${mass.toFixed(2)} g/mol within ${open.toFixed(3)}`, () => {
      const got = analyteOf(key).molarMass ?? Number.NaN;
      expect(Math.abs(got - mass)).toBeLessThanOrEqual(open);
    });
  }

  const isotopes: Readonly<Record<string, number>> = {
    'radium-226': 226, 'radium-228': 228, radon: 222, tritium: 3, 'strontium-90': 90,
    'cesium-137': 137, 'iodine-131': 131, 'lead-210': 210, 'polonium-210': 210,
  };
  for (const [key, massNumber] of Object.entries(isotopes)) {
    // The mass of a nuclide differs from its mass number by the mass defect, below 0.15 u.
    it(`mass number of the nuclide: ${key}, ${massNumber}`, () => {
      const got = analyteOf(key).molarMass ?? Number.NaN;
      expect(Math.abs(got - massNumber)).toBeLessThanOrEqual(0.15);
    });
  }

  it('leave out no analyte that has a molar mass', () => {
    const checked = new Set([...Object.keys(FORMULAS), ...Object.keys(isotopes)]);
    const left = analyteIndex([]).analytes.filter(
      ({ key, molarMass }) => molarMass !== null && !checked.has(key),
    );
    expect(left.map(({ key }) => key)).toEqual([]);
  });

  const bases = [
    ['calcium', 'as CaCO3', 'CaCO3'],
    ['boron', 'as H3BO3', 'H3BO3'],
    ['sulfate', 'as S', 'S'],
    ['silica', 'as Si', 'Si'],
    ['hydrogen-sulfide', 'as S', 'S'],
    ['total-hardness', 'as CaO', 'CaO'],
    ['nitrate', 'as N', 'N'],
    ['nitrite', 'as NO2', 'NO2'],
    ['ammonia', 'as NH4', 'NH4'],
    ['orthophosphate', 'as P', 'P'],
    ['monochloramine', 'as Cl2', 'Cl2'],
    ['total-organic-carbon', 'as C', 'C'],
  ] as const;
  for (const [key, basis, formula] of bases) {
    const { mass, open } = massOf(formula);
    it(`${key} ${basis}: ${mass.toFixed(2)} g/mol within ${open.toFixed(3)}`, () => {
      const grams = analyteOf(key).bases.find((known) => known.basis === basis)?.gPerMol;
      expect(Math.abs((grams ?? Number.NaN) - mass)).toBeLessThanOrEqual(open);
    });
  }
});

describe('factors between bases as printed in practice', () => {
  // Each factor is printed with three decimals: half a unit in the last one.
  const printed = [
    ['nitrate', 'mg/L as NO3', 4.427],
    ['nitrite', 'mg/L as NO2', 3.285],
    ['orthophosphate', 'mg/L as PO4', 3.066],
    ['ammonia', 'mg/L as NH3', 1.216],
    ['silica', 'mg/L as Si', 1 / 2.139],
    ['total-alkalinity', 'mg/L as HCO3', 1.219],
    ['calcium', 'mg/L as CaCO3', 2.497],
    ['magnesium', 'mg/L as CaCO3', 4.118],
  ] as const;
  for (const [key, unit, factor] of printed) {
    it(`common practice, no source: ${key}, one canonical mg/L is ${factor.toFixed(3)} ${unit}`, () => {
      const reading = readUnit(unit, {});
      if (reading.kind === 'problem') throw new Error(reading.message);
      const conversion = conversionTo(analyteOf(key), reading.unit, null);
      const got = conversion.kind === 'conversion' ? 1 / conversion.factor : Number.NaN;
      expect(Math.abs(got - factor)).toBeLessThanOrEqual(0.0005);
    });
  }
});
