// Takes: reductions with the volume treated at each. Gives: how far a target was met along that volume,
// what was given back, and how both stand to the rated capacity.
// Never fills in a volume, never reads a curve between two volumes.
export { computeFilterLife } from './compute-filter-life.ts';
