// Takes: the reductions of a bench. Gives: which devices differ on an analyte, which are equivalent
// within a margin, and the groups not told apart. Never ranks one bound against another.
// Imports the folders left of compare/ and the summaries of reductions.
export type { Margin, PairVerdictWord } from './compare-pair.ts';
export { notToldApartGroups } from './group-letters.ts';
export {
  type AnalyteComparison,
  type JudgedPair,
  type TellingOptions,
  tellApart,
} from './tell-apart.ts';
export { toldApartGroupRows, toldApartRows } from './told-apart-rows.ts';
