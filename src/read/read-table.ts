import { BenchError, type Finding, finding, place } from '../findings/index.ts';
import type { RawRow, RawTable } from '../model/index.ts';
import { forEachRecord } from './csv-records.ts';
import { decodeText } from './decode-text.ts';
import { sniffDelimiter } from './sniff-delimiter.ts';

export interface TableReading {
  readonly table: RawTable;
  readonly findings: readonly Finding[];
}

/**
 * A bench CSV as records of text.
 *
 * Blank rows are passed over; a ragged row is an error and is left out, so that no cell is ever
 * read under the wrong header.
 * @throws {BenchError} file-binary, file-empty, quote-unclosed
 */
export function readTable(bytes: Uint8Array, path: string, comments: boolean): TableReading {
  const decoded = decodeText(bytes, path);
  const findings: Finding[] = [...decoded.findings];
  const delimiter = sniffDelimiter(decoded.text, path, comments);
  let header: readonly string[] | null = null;
  let headerLine = 0;
  const rows: RawRow[] = [];
  forEachRecord(decoded.text, { path, delimiter, comments }, (cells, line) => {
    if (header === null) {
      header = cells.map((cell) => cell.trim());
      headerLine = line;
      return;
    }
    if (cells.every((cell) => cell.trim() === '')) return;
    if (cells.length !== header.length) {
      findings.push(
        finding(
          'row-ragged',
          `the row has ${cells.length} fields and the header ${header.length}`,
          'add the missing delimiters, or quote a cell that holds one',
          place({ file: path, line }),
        ),
      );
      return;
    }
    rows.push({ line, cells });
  });
  if (header === null) throw emptyFile(path);
  return { table: { path, header, headerLine, rows }, findings };
}

function emptyFile(path: string): BenchError {
  return new BenchError(
    'file-empty',
    'the file holds no header line',
    'write the header line, or remove the file',
    place({ file: path }),
  );
}
