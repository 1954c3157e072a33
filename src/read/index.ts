// Takes: a bench folder. Gives: its files as bytes, records and JSON values, each with its place.
// Never guesses a meaning: names, units and results are the business of normalise/.
// Imports findings/ and model/ only.
export { type BenchFile, fingerprintOf, listBenchFiles, readBenchFile } from './bench-files.ts';
export { type CsvOptions, forEachRecord, type OnRecord } from './csv-records.ts';
export { type DecodedText, decodeText, type Encoding } from './decode-text.ts';
export { type JsonReading, readJson } from './read-json.ts';
export { readTable, type TableReading } from './read-table.ts';
export { sniffDelimiter } from './sniff-delimiter.ts';
