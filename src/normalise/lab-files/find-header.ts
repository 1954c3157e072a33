import { type AnalyteIndex, readUnit } from '../../reference/index.ts';
import { readColumnTitle } from './column-title.ts';
import { exchangeColumns } from './exchange-profile.ts';
import { isNumericTwin, roleWord } from './header-roles.ts';
import type { Shape } from './layout-plan.ts';

export interface HeadRecord {
  readonly cells: readonly string[];
  readonly line: number;
}

export interface FoundHeader {
  /** Index among the first records. */
  readonly index: number;
  readonly shape: Shape;
  readonly unitsRow: boolean;
  /** True where the file could be read in another layout as well. */
  readonly isTie: boolean;
}

/** A header is sought among so many records; what stands before it is a preamble. */
const WITHIN = 40;

/**
 * The header of a lab export: the first record that names what a layout needs.
 *
 * - long: a column of analytes and one of results;
 * - samples across: a column whose cells are analytes, and columns without any role;
 * - analytes across: three heads that are analytes, or one beside a column of samples;
 * - sample list: numbers and names, and nothing measured.
 * @returns null where no record does
 */
export function findHeader(
  head: readonly HeadRecord[],
  analytes: AnalyteIndex,
): FoundHeader | null {
  let partial: number | null = null;
  for (const [index, record] of head.slice(0, WITHIN).entries()) {
    const header = record.cells.map((cell) => cell.trim());
    const shape = shapeOf(header, head.slice(index + 1), analytes);
    if (shape !== null) {
      return {
        index,
        shape: shape.shape,
        unitsRow: isUnitsRow(head[index + 1]?.cells, header, shape.shape),
        isTie: shape.isTie,
      };
    }
    if (partial === null && isPartial(header)) partial = index;
  }
  return partial === null ? null : { index: partial, shape: 'long', unitsRow: false, isTie: false };
}

function shapeOf(
  header: readonly string[],
  below: readonly HeadRecord[],
  analytes: AnalyteIndex,
): { readonly shape: Shape; readonly isTie: boolean } | null {
  if (exchangeColumns(header) !== null) return { shape: 'long', isTie: false };
  const roles = new Set(header.flatMap((text) => roleWord(text)?.role ?? []));
  const hasAnalyte = roles.has('analyte') || roles.has('cas');
  if (hasAnalyte && roles.has('result')) {
    return { shape: 'long', isTie: analyteHeads(header, analytes) >= 3 };
  }
  const isPreamble = header.filter((text) => text !== '').length < 2;
  if (isPreamble) return null;
  if (hasAnalyte && !roles.has('labSample')) {
    return isSamplesAcross(header, below, analytes)
      ? { shape: 'samples-across', isTie: false }
      : null;
  }
  if (hasAnalyte || roles.has('result')) return null;
  const heads = analyteHeads(header, analytes);
  const namesSamples = roles.has('labSample') || roles.has('clientSample');
  if (heads >= 3 || (heads > 0 && (namesSamples || roles.has('collected')))) {
    return { shape: 'analytes-across', isTie: false };
  }
  return roles.has('labSample') && roles.has('clientSample')
    ? { shape: 'sample-list', isTie: false }
    : null;
}

function analyteHeads(header: readonly string[], analytes: AnalyteIndex): number {
  return header.filter(
    (text) => text.length < 80 && readColumnTitle(text, analytes).kind === 'analyte',
  ).length;
}

function isSamplesAcross(
  header: readonly string[],
  below: readonly HeadRecord[],
  analytes: AnalyteIndex,
): boolean {
  const column = header.findIndex((text) => roleWord(text)?.role === 'analyte');
  const free = header.filter((text) => text !== '' && roleWord(text) === null);
  if (column === -1 || free.length === 0) return false;
  const names = below
    .map(({ cells }) => (cells[column] ?? '').trim())
    .filter((name) => name !== '');
  const known = names.filter((name) => analytes.resolve(name, null).kind !== 'unknown').length;
  return known > 0 && (known >= 3 || known * 2 >= names.length);
}

/** A long export that lacks a role still shows where its header is. */
function isPartial(header: readonly string[]): boolean {
  const roles = new Set(
    header.flatMap((text) => (isNumericTwin(text) ? [] : (roleWord(text)?.role ?? []))),
  );
  return roles.size >= 2 && (roles.has('analyte') || roles.has('cas') || roles.has('result'));
}

const COLUMN_TYPE = /^\d+[sdn]$/;

/** A second row of units under the names, or of column types. */
function isUnitsRow(
  cells: readonly string[] | undefined,
  header: readonly string[],
  shape: Shape,
): boolean {
  const filled = (cells ?? []).map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (filled.length === 0) return false;
  if (filled.length >= 2 && filled.every((cell) => COLUMN_TYPE.test(cell))) return true;
  if (shape !== 'analytes-across') return false;
  const units = filled.filter((cell) => {
    const bare = cell.replace(/^[([](.*)[)\]]$/, '$1');
    return !/^[<>]?\s*[\d.,]+$/.test(bare) && readUnit(bare, {}).kind === 'unit';
  });
  return units.length >= 2 && units.length * 2 >= Math.min(filled.length, header.length);
}
