// Takes: a bench. Gives: reductions, drain fits, water use and flow, each with the rows it rests on.
// Never reads or writes a file, never words or rounds a figure.
// Imports the folders to its left except read/ and normalise/.
export type { DeviceDrain } from './device-drain.ts';
export {
  breakEvens,
  CURVE_POURS_ML,
  curveRatio,
  type DrainCurve,
  drainCurves,
  hasCurve,
  largestPourL,
} from './drain-curve.ts';
export type { DrainFit, DrainRun } from './drain-fit.ts';
export * from './drain-uncertainty/index.ts';
export type { FlushVolume } from './flush-volumes.ts';
export { type PourFlow, type PourRun, pourFlows } from './pour-flow.ts';
export { qualityFindings } from './quality/index.ts';
export type { MeasuredVolume } from './quantity-volume.ts';
export { recordedOverlaps } from './recorded-overlaps.ts';
export {
  logReductionBounds,
  outcomeOf,
  type ReductionBounds,
  reductionBounds,
  type SideState,
} from './reduction-bounds.ts';
export type { ReductionFact } from './reduction-fact.ts';
export type { Side } from './reduction-side.ts';
export {
  type ReductionStatement,
  riseLevel,
  riseProbability,
  type StatementOptions,
  stateReduction,
  type UncertainSide,
  widenedSide,
} from './reduction-statement.ts';
export {
  computeReductions,
  type Reductions,
  statementOptions,
} from './reductions.ts';
export {
  type CensoredSummary,
  type ReplicatePair,
  type ReplicatePairs,
  replicatePairs,
} from './replicates/index.ts';
export * from './sweeps/index.ts';
export {
  combineUncertainties,
  standardUncertainty,
  type Uncertainty,
} from './uncertainty/index.ts';
export { scenarioNames, type WaterScenario } from './water-scenarios.ts';
export { computeWaterUse, type WaterUse, type WaterUseFact } from './water-use.ts';
