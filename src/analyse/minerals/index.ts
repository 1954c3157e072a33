// Takes: a bench and its reductions. Gives: mineral content against guidance, gains of a mineral stage,
// rejection by ions it does not add, corrosion and scaling indices, as rows.
// Never calls guidance a requirement, never judges whether a water may be drunk.
export { addedByStage } from './added-by-stage.ts';
export { computeMinerals, type Minerals } from './compute-minerals.ts';
