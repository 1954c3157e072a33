// Takes: a bench. Gives: reductions, drain fits, water use and flow, each with the rows it rests on.
// Never reads or writes a file, never words or rounds a figure.
// Imports the folders to its left except read/ and normalise/.
export { type DeviceDrain, deviceDrains } from './device-drain.ts';
export type { DrainFit, DrainRun } from './drain-fit.ts';
export type { FlushVolume } from './flush-volumes.ts';
export { type PourFlow, type PourRun, pourFlows } from './pour-flow.ts';
export type { MeasuredVolume } from './quantity-volume.ts';
export { qualityFindings } from './quality/index.ts';
export {
  logReductionBounds,
  outcomeOf,
  type ReductionBounds,
  reductionBounds,
  type SideState,
} from './reduction-bounds.ts';
export type { Side } from './reduction-side.ts';
export {
  computeReductions,
  hasReduction,
  type ReductionFact,
  type Reductions,
} from './reductions.ts';
export type { WaterScenario } from './water-scenarios.ts';
export {
  breakEven,
  CURVE_POURS_ML,
  computeWaterUse,
  curveRatio,
  type DrainCurve,
  drainCurves,
  type WaterUse,
  type WaterUseFact,
} from './water-use.ts';
