// Takes: numbers, intervals and counts. Gives: estimates with their limits, probabilities, quantiles.
// Never knows what was measured, and never decides whether a figure may be published.
// Imports only findings, for its one error type.

export { benjaminiHochberg } from './benjamini-hochberg.ts';
export {
  type BinomialCount,
  binomialLimits,
  binomialLowerTail,
  binomialUpperTail,
} from './binomial-tails.ts';
export { type BinomialTest, type BinomialTestInput, binomialTest } from './binomial-test.ts';
export type { CensoredResult } from './censored-results.ts';
export { chiSquareCdf, chiSquareQuantile } from './chi-square.ts';
export { compensatedSum } from './compensated-sum.ts';
export { largestSimilarCount, smallestSignificantCount } from './critical-counts.ts';
export {
  type DetectionLimit,
  type DetectionLimitInput,
  detectionLimit,
} from './detection-limit.ts';
export { type DifferenceTestInput, differenceTest } from './difference-test.ts';
export { erf, erfc, scaledErfc } from './error-function.ts';
export { type FiellerInput, type FiellerInterval, fieller } from './fieller.ts';
export { horwitzThompsonRelativeSd } from './horwitz-thompson.ts';
export { incompleteBeta } from './incomplete-beta.ts';
export { incompleteGammaLower, incompleteGammaUpper } from './incomplete-gamma.ts';
export { type KaplanMeier, kaplanMeier } from './kaplan-meier.ts';
export {
  type LeastSquaresInput,
  type LeastSquaresLine,
  leastSquaresLine,
} from './least-squares-line.ts';
export type { LogSummary } from './log-summary.ts';
export { type LognormalMle, lognormalMle } from './lognormal-mle.ts';
export { arithmeticMean, sampleCovariance, sampleSd } from './mean-and-sd.ts';
export { type MeanInterval, meanInterval } from './mean-interval.ts';
export {
  type MostProbableNumber,
  mostProbableNumber,
  type TubeSet,
} from './most-probable-number.ts';
export {
  normalCdf,
  normalLogProbability,
  normalQuantile,
  normalUpperTail,
} from './normal-distribution.ts';
export { type NormalMle, normalMle } from './normal-mle.ts';
export { ordinaryQuantile, sortedQuantile } from './ordinary-quantile.ts';
export { pairedRatio } from './paired-ratio.ts';
export { poissonLimits } from './poisson-limits.ts';
export { type PooledSd, pooledRelativeSd, pooledSd } from './pooled-sd.ts';
export { logRatioInterval, ratioUncertainty } from './ratio-uncertainty.ts';
export { relativePercentDifference } from './relative-percent-difference.ts';
export { type RobustRos, robustRos } from './robust-ros.ts';
export { sdConfidenceFactors } from './sd-confidence-factors.ts';
export { studentTCdf, studentTQuantile } from './student-t.ts';
export { type TwoSamplePlan, twoSamplePower, twoSampleSize } from './two-sample-power.ts';
export { type UncertaintyPart, welchSatterthwaite } from './welch-satterthwaite.ts';
