// Takes: concentrations of the major ions of one water, in mg/L. Gives: sums of equivalents, the ion
// balance, calculated dissolved solids, hardness and conductivity.
// Never looks at a bench, never fills in an ion that was not measured.
export { calculatedDissolvedSolids } from './calculated-dissolved-solids.ts';
export {
  conductivityAt25,
  estimatedConductivity,
  ionicStrength,
  linearConductivityAt25,
  temperatureFactor,
} from './conductivity.ts';
export { calculatedHardness } from './hardness.ts';
export {
  type BalanceLimit,
  balanceLimit,
  type IonBalance,
  ionBalance,
} from './ion-balance.ts';
export {
  ION_EQUIVALENTS,
  IONS,
  type Ion,
  type IonConcentrations,
  milliequivalents,
} from './ions.ts';
export { type MajorIons, majorIons } from './major-ions.ts';
