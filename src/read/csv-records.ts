import { BenchError, place } from '../findings/index.ts';

export interface CsvOptions {
  readonly path: string;
  readonly delimiter: string;
  /** Lines that start with # are comments. */
  readonly comments: boolean;
}

/** Gets each record and the line at which it starts; false ends the reading. */
// biome-ignore lint/suspicious/noConfusingVoidType: most readers want every record and return nothing
export type OnRecord = (cells: readonly string[], line: number) => void | boolean;

/**
 * Gives every record of a CSV text to `onRecord`, with the line at which the record starts.
 *
 * Lines end with LF, CR LF or CR alone. Blank lines are passed over. A quote inside an unquoted cell
 * is a plain character, since bench logs write `4'25"`. Nothing is kept per record, so a large file
 * costs its text only.
 * @throws {BenchError} quote-unclosed, with the line at which the open record starts
 */
export function forEachRecord(text: string, options: CsvOptions, onRecord: OnRecord): void {
  const unix = text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text;
  const { delimiter } = options;
  let at = 0;
  let line = 1;
  while (at < unix.length) {
    const found = unix.indexOf('\n', at);
    const end = found === -1 ? unix.length : found;
    const start = line;
    if (end === at || (options.comments && unix[at] === '#')) {
      at = end + 1;
      line += 1;
      continue;
    }
    const text1 = unix.slice(at, end);
    let cells: readonly string[];
    if (text1.includes('"')) {
      const record = readQuoted(unix, at, delimiter, () => unclosed(options.path, start));
      cells = record.cells;
      at = record.next;
      line += record.breaks + 1;
    } else {
      cells = text1.split(delimiter);
      at = end + 1;
      line += 1;
    }
    if (onRecord(cells, start) === false) return;
  }
}

interface QuotedRecord {
  readonly cells: readonly string[];
  /** Where the next record starts. */
  readonly next: number;
  /** Line breaks inside quoted cells. */
  readonly breaks: number;
}

/** A record with at least one quote in its first line. */
function readQuoted(
  text: string,
  start: number,
  delimiter: string,
  unclosedAt: () => BenchError,
): QuotedRecord {
  const cells: string[] = [];
  let at = start;
  let breaks = 0;
  for (;;) {
    if (text[at] === '"') {
      const quoted = readQuotedCell(text, at, unclosedAt);
      cells.push(quoted.cell);
      breaks += quoted.breaks;
      at = quoted.next;
      // Blanks between a closing quote and the delimiter carry nothing.
      while (text[at] === ' ' && delimiter !== ' ') at += 1;
      if (text[at] === delimiter) {
        at += 1;
        continue;
      }
      if (at >= text.length || text[at] === '\n') return { cells, next: at + 1, breaks };
      throw unclosedAt();
    }
    const lineEnd = indexOrEnd(text, '\n', at);
    const cellEnd = indexOrEnd(text, delimiter, at);
    if (cellEnd >= lineEnd) {
      cells.push(text.slice(at, lineEnd));
      return { cells, next: lineEnd + 1, breaks };
    }
    cells.push(text.slice(at, cellEnd));
    at = cellEnd + 1;
  }
}

function readQuotedCell(
  text: string,
  open: number,
  unclosedAt: () => BenchError,
): { readonly cell: string; readonly next: number; readonly breaks: number } {
  let at = open + 1;
  for (;;) {
    const quote = text.indexOf('"', at);
    if (quote === -1) throw unclosedAt();
    if (text[quote + 1] !== '"') {
      const raw = text.slice(open + 1, quote);
      return {
        cell: raw.includes('"') ? raw.replaceAll('""', '"') : raw,
        next: quote + 1,
        breaks: countOf(raw, '\n'),
      };
    }
    at = quote + 2;
  }
}

function indexOrEnd(text: string, search: string, from: number): number {
  const found = text.indexOf(search, from);
  return found === -1 ? text.length : found;
}

function countOf(text: string, letter: string): number {
  let count = 0;
  for (let at = text.indexOf(letter); at !== -1; at = text.indexOf(letter, at + 1)) count += 1;
  return count;
}

function unclosed(path: string, line: number): BenchError {
  return new BenchError(
    'quote-unclosed',
    'a quoted cell of this record is never closed, or text stands behind its closing quote',
    'close the quote, or double a quote that belongs to the text',
    place({ file: path, line }),
  );
}
