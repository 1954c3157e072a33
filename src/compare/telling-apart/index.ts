// Takes: the reductions of a bench. Gives: which devices differ on an analyte, which are equivalent
// within a margin, and the groups not told apart. Never ranks one bound against another.
// Imports the folders left of compare/ and the summaries of reductions.
export type { DevicePair, PairVerdict } from './compare-pair.ts';
export { notToldApartGroups } from './group-letters.ts';
export { holm } from './holm.ts';
export { type AnalyteComparison, type TellingOptions, tellApart } from './tell-apart.ts';
