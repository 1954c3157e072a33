import type { SchemaName } from '../model/index.ts';

/**
 * Rows as CSV for spreadsheets and data frames: comma, `\n`, no byte-order mark, quoting as in
 * RFC 4180.
 *
 * The columns are those of the schema in its order, so the header stands for an empty list of rows
 * too; filled keys a row has beyond them follow in order of first appearance. Nested keys are joined by
 * `_`. Null and undefined are empty. A list of texts or numbers is one cell joined by `;`. A list
 * of objects is one cell of items joined by `; `: of a reference level
 * `US-EPA MCL 10 ug/L: within`, of others the values in order. The whole objects are in the JSON.
 *
 * A text that starts with `=`, `+`, `-`, `@`, tab or carriage return gets an apostrophe in front,
 * because spreadsheets would run it as a formula; numbers never do.
 */
export async function csvText(schema: SchemaName, rows: readonly object[]): Promise<string> {
  const { rowLeaves } = await import('../model/index.ts');
  const columns = new Set(rowLeaves(schema).map((path) => path.join('_')));
  const flat = rows.map((row) => flatten(row));
  for (const cells of flat) {
    for (const [column, text] of cells) if (text !== '') columns.add(column);
  }
  const names = [...columns];
  const lines = flat.map((cells) => names.map((name) => quoted(cells.get(name) ?? '')).join(','));
  return `${[names.map(quoted).join(','), ...lines].join('\n')}\n`;
}

function flatten(row: object): Map<string, string> {
  const cells = new Map<string, string>();
  const visit = (value: unknown, path: string): void => {
    if (isRecord(value)) {
      for (const [key, inner] of Object.entries(value)) {
        visit(inner, path === '' ? key : `${path}_${key}`);
      }
    } else cells.set(path, cellText(value));
  };
  visit(row, '');
  return cells;
}

function cellText(value: unknown): string {
  if (typeof value === 'string') return unarmed(value);
  if (Array.isArray(value)) {
    const separator = value.some(isRecord) ? '; ' : ';';
    return unarmed(value.map(itemText).join(separator));
  }
  return scalarText(value);
}

function scalarText(value: unknown): string {
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  if (typeof value === 'boolean') return String(value);
  return typeof value === 'string' ? value : '';
}

function itemText(item: unknown): string {
  if (!isRecord(item)) return scalarText(item);
  return 'jurisdiction' in item ? levelText(item) : joined(Object.values(item));
}

/** `US-EPA MCL 10 mg/L as N: within`; a level with two ends is `6.5 to 8.5`. */
function levelText(level: Record<string, unknown>): string {
  const { jurisdiction, kind, low, value, unit, basis, verdict } = level;
  const ends = [low, value].map(scalarText).filter((text) => text !== '');
  const text = joined([jurisdiction, kind, ends.join(' to '), unit, basis]);
  return typeof verdict === 'string' ? `${text}: ${verdict}` : text;
}

function joined(values: readonly unknown[]): string {
  return values
    .map(scalarText)
    .filter((text) => text !== '')
    .join(' ');
}

function unarmed(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

function quoted(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
