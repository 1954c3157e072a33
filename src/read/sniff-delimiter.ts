import { BenchError } from '../findings/index.ts';
import { type CsvOptions, forEachRecord } from './csv-records.ts';

const DELIMITERS = [',', ';', '\t', '|'] as const;

const HEAD = 65536;
const RECORDS = 200;

/**
 * The delimiter of a table: the one that splits the first records into the steadiest and largest
 * number of fields, with real quote handling.
 *
 * @returns `,` when no delimiter splits anything (a table of one column)
 */
export function sniffDelimiter(text: string, path: string, comments: boolean): string {
  const head = text.slice(0, HEAD);
  let best = ',';
  let bestScore = 0;
  for (const delimiter of DELIMITERS) {
    const score = steadiness(head, { path, delimiter, comments });
    if (score > bestScore) {
      best = delimiter;
      bestScore = score;
    }
  }
  return best;
}

/** Fields of the records that share the most frequent width, over all records. */
function steadiness(head: string, options: CsvOptions): number {
  const widths = new Map<number, number>();
  let records = 0;
  try {
    forEachRecord(head, options, (cells) => {
      records += 1;
      widths.set(cells.length, (widths.get(cells.length) ?? 0) + 1);
      return records < RECORDS;
    });
  } catch (error) {
    // The head may end inside a quoted cell; what was counted before still tells.
    if (!(error instanceof BenchError)) throw error;
  }
  let score = 0;
  for (const [width, count] of widths) {
    if (width > 1) score = Math.max(score, (count / records) * 1000 + width);
  }
  return score;
}
