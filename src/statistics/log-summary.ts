/**
 * What the two methods that lean on the lognormal shape say about censored results. Whether figures
 * describe a completed list or a fitted curve, and whether spreads divide by n or n - 1, is stated
 * by each method.
 */
export interface LogSummary {
  /** All results given. */
  readonly n: number;
  /** Results that are not a single number, those between two limits included. */
  readonly nonDetects: number;
  /** Mean and standard deviation of the natural logarithms. */
  readonly meanLog: number;
  readonly sdLog: number;
  /** Mean and standard deviation in the unit of the results. */
  readonly mean: number;
  readonly sd: number;
  readonly median: number;
  readonly quantile: (probability: number) => number;
}
