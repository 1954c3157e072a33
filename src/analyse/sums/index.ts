// Takes: the reductions of single analytes. Gives: sums over fixed member lists as intervals, sums
// of ratios, and log10 reductions with the statistics of counting.
// Never drops a member on one side, never lets anything stand in for a non-detect.
export { computeSums, type SumFact } from './compute-sums.ts';
export { computeLogReductions } from './log-reductions.ts';
export { type SumList, sumLists } from './sum-lists.ts';
export { sumIntervals } from './sum-sides.ts';
