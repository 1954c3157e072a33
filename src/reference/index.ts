// Takes: spellings, names, CAS numbers and analyte keys; values with their units.
// Gives: units, analytes, conversions and reference levels from sourced tables, or why there is none.
// Never reads a file, never guesses a unit or a basis, never judges a water.

export type { Analyte, AnalyteBasis } from './analyte.ts';
export { type AnalyteIndex, type AnalyteReading, analyteIndex } from './analyte-index.ts';
export { type Conversion, conversionTo } from './basis.ts';
export type { ConversionProblem } from './basis-problems.ts';
export { type CasReading, readCas } from './cas.ts';
export {
  type CertificationChallenge,
  challengesOf,
  standardNamed,
  standardWithoutChallenge,
} from './certification.ts';
export { volumeFromMassL, waterDensityGPerMl } from './density.ts';
export { BASE_UNITS, type Dimension, type Measures } from './dimensions.ts';
export type { AnalyteProblem, ExtraAnalyte } from './extra-analytes.ts';
export {
  cylinderTolerance,
  scaleToleranceG,
  type VolumeTolerance,
} from './instrument-tolerance.ts';
export { JURISDICTIONS, levelsOf, type ReferenceLevel } from './levels.ts';
export { type AnalyteFacts, type BasisFactor, type Lookup, lookUp } from './lookup.ts';
export { type MineralsGuidance, mineralsGuidance } from './minerals-guidance.ts';
export {
  applyRatio,
  divideRatio,
  exactRatio,
  type Ratio,
  ratioText,
  ratioValue,
} from './ratio.ts';
export { readUnit, type UnitContext, type UnitReading, unitNamed } from './read-unit.ts';
export {
  applyLinear,
  type Converted,
  convert,
  toBase,
  type Unit,
} from './unit.ts';
export {
  efficiencyThresholds,
  type WaterEfficiencyFigure,
  waterEfficiencyFigures,
} from './water-efficiency.ts';
