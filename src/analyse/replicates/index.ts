// Takes: results or pairs that repeat one question. Gives: what they say together, with method and n,
// or the reason why only bounds are left. Never substitutes a figure for a non-detect.
// Imports the folders left of analyse/.
export { type CensoredSummary, summariseCensored } from './censored-summary.ts';
export { type ReplicatePair, type ReplicatePairs, replicatePairs } from './replicate-pairs.ts';
