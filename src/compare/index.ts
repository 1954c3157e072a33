// Takes: what analyse/ found. Gives: one figure a device and measure, and the trace of a figure.
// Never computes a lab result or a volume anew, never words or rounds a figure.
// Imports the folders to its left except read/ and normalise/.
export type { Measure } from './measure.ts';
export { measuresOf } from './measures.ts';
export { type ReductionSummary, summariseReductions } from './reduction-summary.ts';
export {
  type AnalyteComparison,
  type JudgedPair,
  type Margin,
  type TellingOptions,
  tellApart,
  toldApartGroupRows,
  toldApartRows,
} from './telling-apart/index.ts';
export { traceReduction } from './trace-reduction.ts';
export { SCENARIO_FIGURES, traceDrainRatio, traceScenario } from './trace-water-use.ts';
