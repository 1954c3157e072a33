// Takes: devices with their drain models and the draws of their figures. Gives: water use with inputs
// set to other values, drain against pours a day, break-evens with their ranges, regions of least drain.
// Never changes a measured figure; what it plays is said to be set, not measured.
export { type BreakEvenRange, breakEvenRange, LARGEST_POUR_L } from './break-even-range.ts';
export { type DailyDrain, dailyDrain } from './daily-pours.ts';
export { type Contender, type RegionGrid, regionSteps } from './drain-regions.ts';
export {
  type FlushFigure,
  type Sweep,
  type SweepInput,
  TANK_FIGURES,
  type TankFigure,
} from './sweep-inputs.ts';
export { type SweepPlan, sweepSteps } from './sweep-water-use.ts';
