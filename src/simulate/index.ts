// Takes: figures of a device, pours and a horizon, as numbers in litres and seconds.
// Gives: where the water went, the pours of a scenario, the drain of an isolated pour.
// Never reads a file, a clock or a unit; knows no bench, variant or lab result.
export type {
  DrainDevice,
  FlushRecord,
  FlushRule,
  FlushTrigger,
  Horizon,
  PourSeries,
  Pours,
  QuietHours,
  SimulatedDrain,
} from './drain-device.ts';
export { recovery, totalDrainRatio } from './drain-ratio.ts';
export {
  breakEvenPourL,
  type IsolatedPour,
  isolatedPourDrain,
  isolatedPourRatio,
  type PourLine,
} from './isolated-pour.ts';
export type { PourGroup, Spread } from './pour-group.ts';
export { type RandomStream, randomStream } from './random-stream.ts';
export { type ScenarioOptions, scenarioPours } from './scenario-pours.ts';
export { simulateDrain } from './simulate-drain.ts';
export { evenPours, randomPours, togetherPours } from './spread-pours.ts';
