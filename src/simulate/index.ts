// Takes: figures of a device, pours and a horizon, as numbers in litres and seconds.
// Gives: where the water went, the pours of a scenario, the drain of an isolated pour, the refill of a
// storage tank, and the physics of a membrane that runs or rests.
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
  type FirstWater,
  firstWaterMean,
  litresToLevel,
  type RestingMembrane,
  restingPlateau,
  restingProduct,
  saltFlowLPerS,
} from './idle-rise.ts';
export {
  breakEvenPourL,
  type IsolatedPour,
  isolatedPourDrain,
  isolatedPourRatio,
  type PourLine,
} from './isolated-pour.ts';
export {
  type MembraneConditions,
  netDrivingPressureKPa,
  standardFlow,
  standardSaltPassage,
  type TemperatureFactor,
  temperatureFactor,
} from './membrane-flow.ts';
export {
  blendShare,
  concentrationFactor,
  drainConcentration,
  feedBrineFactor,
  idealOsmoticPressureAtm,
  osmoticPressureKPa,
} from './osmotic-pressure.ts';
export { type PlayedYears, type YearPlayer, yearPlayer } from './play-years.ts';
export type { DaysAway, PourGroup, Spread } from './pour-group.ts';
export { type RandomStream, randomStream } from './random-stream.ts';
export {
  type ScenarioOptions,
  type ScenarioYears,
  scenarioPours,
  scenarioYears,
} from './scenario-pours.ts';
export { simulateDrain } from './simulate-drain.ts';
export { evenPours, randomPours, togetherPours } from './spread-pours.ts';
export {
  isolatedTankRatio,
  type SimulatedTank,
  simulateTank,
  tankCycleRatio,
} from './tank-play.ts';
export {
  constantPressureRatio,
  refillTank,
  type StorageTank,
  type TankRefill,
  tankLevels,
  tankPressureKPa,
} from './tank-refill.ts';
