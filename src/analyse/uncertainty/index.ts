// Takes: a bench. Gives: how far each result may scatter, where that is known from, and the limits
// of a true value behind a reading. Never decides what a reduction is.
// Imports the folders left of analyse/.
export { isCounted } from './assumed-uncertainty.ts';
export type { DuplicateScatter } from './duplicate-scatter.ts';
export { readingsOf } from './readings.ts';
export { plannedUncertainties, resultUncertainties } from './result-uncertainties.ts';
export { lowerLimit, upperLimit } from './true-value-limits.ts';
export { combineUncertainties, standardUncertainty, type Uncertainty } from './uncertainty.ts';
