import path from 'node:path';
import { type Finding, finding, place } from '../findings/index.ts';
import type { Bench, InputFile, PriceList } from '../model/index.ts';
import { readPriceList } from '../normalise/index.ts';
import { readBenchFile, readTable } from '../read/index.ts';

/** A price list of laboratories, as it was read. */
export interface PriceFile {
  readonly list: PriceList;
  readonly input: InputFile;
  /** Every problem of the file; look for errors before computing. */
  readonly findings: readonly Finding[];
}

/**
 * Reads a price list: a CSV with the columns lab, package, price, analyte, limit, and optionally
 * detection_limit and uncertainty. Lines that start with # are comments.
 *
 * @param bench names of analytes are those of the bench
 * @param file path of the file
 * @throws {BenchError} file-unreadable, file-binary, file-empty, quote-unclosed
 * @example readPrices(bench, 'samples/lab-prices.csv').list.packages
 */
export function readPrices(bench: Bench, file: string): PriceFile {
  // Outputs name the file alone, so that they do not depend on where the folders lie.
  const name = path.basename(file);
  const named = bench.inputs.some((input) => input.path === name) ? `prices/${name}` : name;
  const { bytes, sha256 } = readBenchFile('', file);
  const { table, findings } = readTable(bytes, named, true);
  const reading = readPriceList(table, bench.analytes, bench.settings.measures ?? null);
  return {
    list: reading.list,
    input: { path: named, sha256, rows: table.rows.length },
    findings: [...findings, ...reading.findings, ...otherCurrency(bench, reading.list)],
  };
}

function otherCurrency(bench: Bench, { path: file, currency }: PriceList): Finding[] {
  const own = bench.settings.currency;
  if (own === undefined || currency === null || currency === own) return [];
  return [
    finding(
      'currency-differs',
      `the price list is in ${currency} and the bench in ${own}`,
      'nothing is converted; compare costs within the price list only',
      place({ file }),
    ),
  ];
}
