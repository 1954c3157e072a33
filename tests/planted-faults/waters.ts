import {
  calculatedDissolvedSolids,
  calculatedHardness,
  estimatedConductivity,
} from '../../src/analyse/chemistry/index.ts';

/** What a laboratory finds in a water: value by the name it prints. Invented. */
export type Water = Readonly<Record<string, number>>;

export interface LabAnalyte {
  readonly name: string;
  readonly cas: string;
  readonly unit: string;
  readonly mdl: number | null;
  readonly rl: number | null;
}

const analyte = (
  name: string,
  cas: string,
  unit: string,
  mdl: number | null,
  rl: number | null,
): LabAnalyte => ({ name, cas, unit, mdl, rl });

/** The list of an invented laboratory, with limits low enough for every level. */
export const LAB_LIST: readonly LabAnalyte[] = [
  analyte('Calcium as Ca', '7440-70-2', 'mg/L', 0.05, 0.2),
  analyte('Magnesium as Mg', '7439-95-4', 'mg/L', 0.02, 0.1),
  analyte('Sodium', '7440-23-5', 'mg/L', 0.1, 0.5),
  analyte('Potassium', '7440-09-7', 'mg/L', 0.05, 0.2),
  analyte('Alkalinity, Total as CaCO3', '', 'mg/L as CaCO3', 1, 3),
  analyte('Chloride', '16887-00-6', 'mg/L', 0.1, 0.5),
  analyte('Sulfate as SO4', '14808-79-8', 'mg/L', 0.1, 0.5),
  analyte('Nitrate as N', '14797-55-8', 'mg/L as N', 0.01, 0.05),
  analyte('Fluoride', '16984-48-8', 'mg/L', 0.01, 0.02),
  analyte('Silica as SiO2', '7631-86-9', 'mg/L', 0.05, 0.2),
  analyte('Hardness, Total as CaCO3', '', 'mg/L as CaCO3', 0.2, 1),
  analyte('Total Dissolved Solids', '', 'mg/L', 5, 10),
  analyte('Specific Conductance', '', 'umhos/cm', 1, 2),
  analyte('pH', '', 'pH units', null, null),
  analyte('Turbidity', '', 'NTU', 0.05, 0.1),
  analyte('Arsenic, Total', '7440-38-2', 'ug/L', 0.1, 0.5),
  analyte('Barium', '7440-39-3', 'ug/L', 0.3, 1),
  analyte('Copper', '7440-50-8', 'ug/L', 0.3, 1),
  analyte('Lead', '7439-92-1', 'ug/L', 0.1, 0.5),
  analyte('Chlorine, Free', '7782-50-5', 'mg/L as Cl2', 0.02, 0.05),
  analyte('Chlorine, Total', '', 'mg/L as Cl2', 0.02, 0.05),
  analyte('Chloroform', '67-66-3', 'ug/L', 0.1, 0.4),
  analyte('Bromodichloromethane', '75-27-4', 'ug/L', 0.1, 0.4),
  analyte('Dibromochloromethane', '124-48-1', 'ug/L', 0.1, 0.4),
  analyte('Bromoform', '75-25-2', 'ug/L', 0.1, 0.4),
  analyte('Total Trihalomethanes', '', 'ug/L', 0.4, 1.6),
  analyte('Total Coliforms', '', 'MPN/100mL', null, 1),
  analyte('E. coli', '', 'MPN/100mL', null, 1),
];

/** Names that stand for salts: what a membrane holds back alike in these invented waters. */
export const SALTS = LAB_LIST.slice(0, 13).map(({ name }) => name);

/** Hardness, dissolved solids and conductivity as the ions of the water make them. */
export function withSums(water: Water): Water {
  const of = (name: string): number => water[name] ?? 0;
  const ions = {
    calcium: of('Calcium as Ca'),
    magnesium: of('Magnesium as Mg'),
    sodium: of('Sodium'),
    potassium: of('Potassium'),
    'total-alkalinity': of('Alkalinity, Total as CaCO3'),
    chloride: of('Chloride'),
    sulfate: of('Sulfate as SO4'),
    nitrate: of('Nitrate as N'),
    fluoride: of('Fluoride'),
  };
  return {
    ...water,
    'Hardness, Total as CaCO3': calculatedHardness(ions.calcium, ions.magnesium),
    'Total Dissolved Solids': 1.06 * calculatedDissolvedSolids(ions, of('Silica as SiO2')),
    'Specific Conductance': estimatedConductivity(ions),
  };
}

/** A moderately hard tap water whose ions balance. */
export const TAP: Water = withSums({
  'Calcium as Ca': 60,
  'Magnesium as Mg': 14,
  Sodium: 20.4,
  Potassium: 2.5,
  'Alkalinity, Total as CaCO3': 152,
  Chloride: 35,
  'Sulfate as SO4': 40,
  'Nitrate as N': 2.5,
  Fluoride: 0.6,
  'Silica as SiO2': 10,
  pH: 7.6,
  Turbidity: 0.3,
  'Arsenic, Total': 2.8,
  Barium: 64,
  Copper: 120,
  Lead: 4.6,
  'Chlorine, Free': 0.8,
  'Chlorine, Total': 0.96,
  Chloroform: 21,
  Bromodichloromethane: 9.4,
  Dibromochloromethane: 4.2,
  Bromoform: 0.9,
  'Total Trihalomethanes': 35.5,
  'Total Coliforms': 0,
  'E. coli': 0,
});

/** A soft water of less than 1 meq/L. */
export const SOFT: Water = withSums({
  ...TAP,
  'Calcium as Ca': 8.4,
  'Magnesium as Mg': 1.9,
  Sodium: 5.4,
  Potassium: 0.9,
  'Alkalinity, Total as CaCO3': 25,
  Chloride: 6.2,
  'Sulfate as SO4': 7.8,
  'Nitrate as N': 0.3,
  Fluoride: 0.1,
  'Silica as SiO2': 6,
  pH: 7.2,
});

/** The water with each named figure multiplied; names without a factor stay. */
export function through(water: Water, factors: Readonly<Record<string, number>>): Water {
  return Object.fromEntries(
    Object.entries(water).map(([name, value]) => [name, value * (factors[name] ?? 1)]),
  );
}

/** One factor for several names. */
export function share(names: readonly string[], factor: number): Record<string, number> {
  return Object.fromEntries(names.map((name) => [name, factor]));
}

const ORGANICS = [
  'Chloroform',
  'Bromodichloromethane',
  'Dibromochloromethane',
  'Bromoform',
  'Total Trihalomethanes',
];

/** What a carbon filter lets through. */
export const CARBON: Readonly<Record<string, number>> = {
  ...share(ORGANICS, 0.05),
  ...share(['Chlorine, Free', 'Chlorine, Total'], 0.01),
  Lead: 0.3,
  Copper: 0.7,
};

/** What a membrane lets through: one share of every salt, so that the ions still balance. */
export function membrane(passage: number): Record<string, number> {
  return {
    ...CARBON,
    ...share(SALTS, passage),
    ...share(['Arsenic, Total', 'Barium', 'Copper', 'Lead'], passage),
    pH: 0.85,
  };
}

/** The drain of a membrane at a drain ratio: what the feed brought and the product does not hold. */
export function drainOf(feed: Water, product: Water, ratio: number): Water {
  return Object.fromEntries(
    Object.entries(feed).map(([name, value]) => {
      const isKept = SALTS.includes(name) || name === 'Barium';
      return [name, isKept ? value + (value - (product[name] ?? 0)) / ratio : value];
    }),
  );
}

/** The same water measured again: every figure off by up to 1.2 %, the same for the same seed. */
export function measuredAgain(water: Water, seed: number): Water {
  return Object.fromEntries(
    Object.entries(water).map(([name, value], at) => {
      const wave = Math.sin((seed + 1) * 12.9898 + at * 78.233);
      return [name, name === 'pH' ? value : value * (1 + 0.012 * wave)];
    }),
  );
}
