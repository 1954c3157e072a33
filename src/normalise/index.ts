// Takes: records of text with their places. Gives: a bench of typed rows and lab results, and every
// finding on the way. Never opens a file, never guesses a unit, a basis or a layout.
// Imports findings/, reference/ and model/ only.
export { accepted, buildBench, type RawBench } from './build-bench.ts';
export { readCostSettings } from './cost-settings.ts';
export { variantNames } from './cross-references.ts';
export type { LabSource } from './lab-files/lab-source.ts';
export { type FeedFileReading, feedSample, readFeedFile } from './lab-files/read-feed-file.ts';
export { readSidecar } from './lab-files/read-sidecar.ts';
export { type PriceListReading, readPriceList } from './price-list.ts';
export { readQuantity } from './quantity-text.ts';
export { readMoney } from './read-cell.ts';
export { readSettings } from './settings.ts';
