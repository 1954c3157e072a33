// biome-ignore-all format: one word per block is easier to check against its source
/**
 * Words whose size depends on the country, and flows and bills that use the US gallon.
 *
 * What: the spellings of a word and its size in US, imperial and metric measures.
 * Unit: L for volumes, L/min for flows, mg/L as CaCO3 for grains per gallon; all exact except the
 *   rounded grain per gallon.
 * Source: NIST Special Publication 811 (2008), Appendix B, and Handbook 44, Appendix C: a US gallon
 *   is 231 cubic inches, an imperial gallon 4.54609 L; metric spoons and cups by common practice.
 *   An imperial cup, tablespoon and teaspoon have no one size, so they are asked about.
 * Verified: held against the printed factors in tests/outside-checks/units, read in a transcription
 *   of SP 811, Appendix B.9.
 */
import type { Dimension, Measures } from '../dimensions.ts';

export interface CountryRow {
  readonly dimension: Dimension;
  readonly spellings: string;
  readonly sizes: Readonly<Partial<Record<Measures, readonly [name: string, factor: string]>>>;
  /** Taken for granted unless the bench uses imperial measures: these words are US trade words. */
  readonly presumedUs?: true;
  readonly basis?: string;
}

export const COUNTRY_ROWS: readonly CountryRow[] = [
  {
    dimension: 'volume',
    spellings: 'gal | gal. | gals | gallon | gallons',
    sizes: { us: ['US gal', '3.785411784'], imperial: ['imp gal', '4.54609'] },
  },
  {
    dimension: 'volume',
    spellings: 'fl oz | fl. oz. | fl.oz. | fl. oz | fl oz. | floz | fluid ounce | fluid ounces',
    sizes: { us: ['US fl oz', '29.5735295625/1000'], imperial: ['imp fl oz', '28.4130625/1000'] },
  },
  {
    dimension: 'volume',
    spellings: 'cup | cups',
    sizes: { us: ['US cup', '236.5882365/1000'], metric: ['metric cup', '0.25'] },
  },
  {
    dimension: 'volume',
    spellings: 'pt | pts | pint | pints',
    sizes: { us: ['US pint', '473.176473/1000'], imperial: ['imp pint', '568.26125/1000'] },
  },
  {
    dimension: 'volume',
    spellings: 'qt | qts | quart | quarts',
    sizes: { us: ['US qt', '946.352946/1000'], imperial: ['imp qt', '1136.5225/1000'] },
  },
  {
    dimension: 'volume',
    spellings: 'tbsp | tbsp. | tbsps | Tbsp | tablespoon | tablespoons',
    sizes: { us: ['US tbsp', '14.78676478125/1000'], metric: ['metric tbsp', '0.015'] },
  },
  {
    dimension: 'volume',
    spellings: 'tsp | tsp. | tsps | teaspoon | teaspoons',
    sizes: { us: ['US tsp', '4.92892159375/1000'], metric: ['metric tsp', '0.005'] },
  },
  {
    dimension: 'volume',
    spellings: 'kgal | TGAL | thousand gallons',
    sizes: { us: ['US kgal', '3785.411784'], imperial: ['imp kgal', '4546.09'] },
    presumedUs: true,
  },
  {
    dimension: 'flow',
    spellings: 'gpm | GPM | gal/min | gallons/min | gal per min | gallons per minute | gallon per minute',
    sizes: { us: ['US gal/min', '3.785411784'], imperial: ['imp gal/min', '4.54609'] },
    presumedUs: true,
  },
  {
    dimension: 'flow',
    spellings: 'gph | GPH | gal/h | gal/hr | gallons/hour | gallons per hour',
    sizes: { us: ['US gal/h', '3.785411784/60'], imperial: ['imp gal/h', '4.54609/60'] },
    presumedUs: true,
  },
  {
    dimension: 'flow',
    spellings: 'gpd | GPD | gal/day | gal/d | gallons/day | gallons per day',
    sizes: { us: ['US gal/day', '3.785411784/1440'], imperial: ['imp gal/day', '4.54609/1440'] },
    presumedUs: true,
  },
  {
    dimension: 'flow',
    spellings: 'Mgd | MGD | million gallons per day',
    sizes: { us: ['US Mgal/day', '3785411.784/1440'], imperial: ['imp Mgal/day', '4546090/1440'] },
    presumedUs: true,
  },
  {
    dimension: 'hardness',
    spellings: 'grains/gal | gr/gal | grains per gallon | grain per gallon',
    sizes: { us: ['gpg', '17.118'], imperial: ['degClark', '64.79891/4.54609'] },
    presumedUs: true,
    basis: 'as CaCO3',
  },
];
