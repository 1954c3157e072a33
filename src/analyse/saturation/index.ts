// Takes: pH, temperature and ions of one water, as numbers. Gives: saturation and corrosion indices.
// Never looks at a bench, never judges whether a water is good.
// Imports nothing from other folders.
export { type AlkalinityParts, alkalinityParts } from './alkalinity-split.ts';
export {
  type CarbonateWater,
  calciteSaturationIndex,
  type PrecipitationPotential,
  precipitationPotential,
} from './calcite-saturation.ts';
export {
  aggressivenessIndex,
  chlorideSulfateRatio,
  langelier,
  larsonRatio,
  puckoriusIndex,
  ryznarIndex,
} from './corrosion-indices.ts';
