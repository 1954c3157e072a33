import type { Analyte, AnalyteBasis } from './analyte.ts';
import { ANALYTE_ROWS, type AnalyteRow } from './tables/analytes.ts';
import { SPELLINGS_FROM_MEMORY, SPELLINGS_SEEN } from './tables/more-spellings.ts';

let table: readonly Analyte[] | null = null;

/** Every analyte of the tables, in their order, with all its aliases. */
export function tableAnalytes(): readonly Analyte[] {
  table ??= buildTable();
  return table;
}

function buildTable(): readonly Analyte[] {
  const more = new Map<string, string[]>();
  for (const [key, spellings] of [...SPELLINGS_SEEN, ...SPELLINGS_FROM_MEMORY]) {
    more.set(key, [...(more.get(key) ?? []), ...list(spellings)]);
  }
  return ANALYTE_ROWS.map((row) => analyteOfRow(row, more.get(row[0]) ?? []));
}

function analyteOfRow(row: AnalyteRow, more: readonly string[]): Analyte {
  const [key, name, cas, group, kind, molarMass, charge, unit, basisText, aliasText, members] = row;
  const bases = list(basisText).map(basisOf);
  const aliases: string[] = [];
  const aliasBasis: Record<string, string> = {};
  for (const entry of [...list(aliasText), ...more]) {
    const [alias = '', basis] = entry.split(' = ');
    aliases.push(alias);
    if (basis !== undefined) aliasBasis[alias] = basis;
  }
  return {
    key,
    name,
    cas: cas === '' ? null : cas,
    group,
    kind,
    molarMass,
    charge,
    unit,
    basis: bases[0]?.basis ?? null,
    bases,
    aliases,
    aliasBasis,
    members: members === '' ? [] : members.split(' '),
    note: row[11] === '' ? null : row[11],
  };
}

function basisOf(text: string): AnalyteBasis {
  const [basis = '', mass] = text.split(' = ');
  return { basis, gPerMol: mass === undefined ? null : Number(mass) };
}

function list(text: string): string[] {
  return text === '' ? [] : text.split(' | ');
}
