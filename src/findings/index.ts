// Takes: what a check saw. Gives: places, findings, the error type and the catalogue of codes.
// Never reads a file, never prints, never decides an exit code.
// Imports nothing from other folders.
export { BenchError } from './bench-error.ts';
export { closestWord, editDistance } from './closest-word.ts';
export type { FindingCode } from './codes.ts';
export { atLeast, type Finding, finding, hasErrors, type Level, sortFindings } from './finding.ts';
export { NOWHERE, type Place, place, placeText } from './place.ts';
