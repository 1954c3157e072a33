import { CsvError, type Options, parse } from 'csv-parse/sync';
import { BenchError, place } from '../findings/index.ts';

export interface CsvOptions {
  readonly path: string;
  readonly delimiter: string;
  /** Lines that start with # are comments. */
  readonly comments: boolean;
}

/**
 * Gives every record of a CSV text to `onRecord`, with the line at which the record starts.
 *
 * Blank lines are passed over. A quote inside an unquoted cell is a plain character, since bench
 * logs write `4'25"`. Nothing is kept per record, so a large file costs its text only.
 * @throws {BenchError} quote-unclosed, with the line at which the open record starts
 */
export function forEachRecord(
  text: string,
  options: CsvOptions,
  onRecord: (cells: readonly string[], line: number) => void,
): void {
  // One kind of line end: the parser would count CR LF inside quotes as two lines.
  const unix = text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text;
  let lastLine = 0;
  const settings: Options = {
    delimiter: options.delimiter,
    record_delimiter: '\n',
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: true,
    on_record: (cells: string[], context) => {
      lastLine = context.lines;
      onRecord(cells, context.lines - lineBreaksIn(cells));
      return null;
    },
  };
  try {
    parse(
      unix,
      options.comments ? { ...settings, comment: '#', comment_no_infix: true } : settings,
    );
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new BenchError(
      'quote-unclosed',
      `a quoted cell is opened in this record and never closed (${error.code})`,
      'close the quote, or double a quote that belongs to the text',
      place({ file: options.path, line: lastLine + 1 }),
      error,
    );
  }
}

function lineBreaksIn(cells: readonly string[]): number {
  let count = 0;
  for (const cell of cells) {
    for (let at = cell.indexOf('\n'); at !== -1; at = cell.indexOf('\n', at + 1)) count += 1;
  }
  return count;
}

const DELIMITERS = [',', ';', '\t', '|'] as const;

/**
 * The delimiter of a table: the one that splits the first records into the steadiest and largest
 * number of fields, with real quote handling.
 *
 * @returns `,` when no delimiter splits anything (a table of one column)
 */
export function sniffDelimiter(text: string, path: string, comments: boolean): string {
  const head = text.slice(0, 65536);
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

function steadiness(head: string, options: CsvOptions): number {
  const widths = new Map<number, number>();
  let records = 0;
  try {
    forEachRecord(head, options, (cells) => {
      if (records >= 50) return;
      records += 1;
      widths.set(cells.length, (widths.get(cells.length) ?? 0) + 1);
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
