/**
 * What a unit measures. Units of two dimensions never convert into each other, even where the
 * numbers look alike: light scattered at 860 nm is not light scattered from a white lamp, a most
 * probable number is not a count of colonies, and a mass of uranium is not its activity.
 *
 * Each dimension has one base unit; `Unit.toBase` leads to it.
 */
export const BASE_UNITS = {
  volume: 'L',
  mass: 'g',
  time: 's',
  flow: 'L/min',
  temperature: 'degC',
  pressure: 'kPa',
  power: 'W',
  energy: 'J',
  'mass-concentration': 'mg/L',
  'amount-concentration': 'mmol/L',
  'charge-concentration': 'meq/L',
  /** mg/L as CaCO3 */
  hardness: 'mg/L CaCO3',
  /** What a conductivity pen shows as dissolved solids, on a stated scale. */
  'meter-tds': 'ppm',
  conductivity: 'uS/cm',
  'turbidity-white': 'NTU',
  'turbidity-infrared': 'FNU',
  colour: 'Pt-Co',
  odour: 'TON',
  ph: 'pH',
  'most-probable-number': 'MPN/100mL',
  'plate-count': 'CFU/100mL',
  count: 'count/100mL',
  'cyst-count': 'oocysts/L',
  'plaque-count': 'PFU/100mL',
  'gene-copies': 'copies/L',
  presence: 'presence',
  'particle-count': 'particles/L',
  'fibre-count': 'MFL',
  'activity-concentration': 'Bq/L',
  'dose-rate': 'mSv/yr',
  absorbance: '1/cm',
  'specific-absorbance': 'L/(mg m)',
  transmittance: '%T',
  potential: 'mV',
  salinity: 'PSU',
  ratio: '1',
  recovery: '% recovery',
  saturation: '% saturation',
  'log-reduction': 'log10',
} as const;

export type Dimension = keyof typeof BASE_UNITS;

/** Whose cups, pints and gallons a bench uses. */
export type Measures = 'us' | 'imperial' | 'metric';

/**
 * Ways to measure one thing that do not convert: colonies, most probable numbers and plain counts;
 * white and infra-red light. A bench may choose in which of them an analyte is kept.
 */
const SIBLINGS: readonly ReadonlySet<Dimension>[] = [
  new Set<Dimension>(['most-probable-number', 'plate-count', 'count', 'plaque-count']),
  new Set<Dimension>(['turbidity-white', 'turbidity-infrared']),
];

/** True where two dimensions measure one thing in ways that do not convert. */
export function areSiblings(a: Dimension, b: Dimension): boolean {
  return a !== b && SIBLINGS.some((dimensions) => dimensions.has(a) && dimensions.has(b));
}
