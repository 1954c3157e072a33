// Takes: a bench and its water use. Gives: standard errors of drain ratios, drain per start and flush
// volumes, ranges of all water use by Monte Carlo, and which input a range owes most to.
// Never changes an estimate, never gives a range where an input has no known uncertainty.

export type { DeviceDraws } from './device-draws.ts';
export { type BenchUncertainty, benchUncertainty } from './device-uncertainty.ts';
export { type DeviceYears, type DrawnUse, deviceYears } from './device-years.ts';
export { inputRows } from './input-shares.ts';
export { type LineDraws, lineDrainL, lineDraws } from './line-draws.ts';
export { type Instruments, volumeUncertainty } from './measured-uncertainty.ts';
export { ranged } from './ranged.ts';
export { pooledScatter, type Scatter } from './run-scatter.ts';
export {
  drawsOf,
  type SpreadFact,
  type SpreadOptions,
  type SpreadProgress,
  spreadSteps,
} from './spread-use.ts';
export { measuredTank } from './tank-draws.ts';
