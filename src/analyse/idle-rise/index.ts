// Takes: TDS readings after pauses and the water use of a bench. Gives: the first water after each
// pause, the volume to recover, and the TDS of a scenario's water.
// Never goes beyond the pauses that were tested, never compares readings of two scales or meters.
export { computeIdleRise, type IdleRise } from './compute-idle-rise.ts';
export type { TdsThreshold } from './scenario-tds.ts';
