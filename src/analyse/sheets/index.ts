// Takes: a bench and a seed. Gives: the lines of its sheets for the sampling day: samples in their
// order, bottles with deadlines, custody, and forms for the bench measurements.
// Never fills in a measurement, never draws chance without the seed.
export { analyseBy } from './analyse-by.ts';
export { bottleLines } from './bottle-kit.ts';
export { computeSheets } from './sheet-lines.ts';
