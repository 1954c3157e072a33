import type { LookupRow } from '../../model/index.ts';
import { plainNumber } from '../format-number.ts';
import type { View } from '../view.ts';

/** An analyte and its reference levels: two tables for each analyte the text can mean. */
export function lookupViews(rows: readonly LookupRow[], otherMeaning: string | null): View[] {
  return rows.flatMap((row, index) => [
    factsView(row, rows.length, index === 0 ? otherMeaning : null),
    ...(row.levels.length === 0 ? [] : [levelsView(row)]),
  ]);
}

function factsView(row: LookupRow, count: number, otherMeaning: string | null): View {
  const bases = row.bases.map(({ basis, g_per_mol }) =>
    g_per_mol === null ? basis : `${basis} (${plainNumber(g_per_mol)} g/mol)`,
  );
  const pairs: readonly (readonly [string, string])[] = [
    ['key', row.analyte],
    ['CAS number', row.cas ?? 'none'],
    ['group', row.group],
    ['unit', row.basis === null ? row.unit : `${row.unit} ${row.basis}`],
    ...(bases.length === 0 ? [] : [['bases', bases.join(', ')] as const]),
    ['other spellings', row.aliases.join('; ')],
    ...(row.members.length === 0 ? [] : [['sum of', row.members.join(', ')] as const]),
    ...(row.note === null ? [] : [['note', row.note] as const]),
  ];
  return {
    caption: count === 1 ? row.name : `${row.name}: one of ${count} meanings`,
    columns: [
      { head: 'What', align: 'left' },
      { head: 'Value', align: 'left' },
    ],
    rows: pairs,
    legend: otherMeaning === null ? [] : [`The spelling can also mean ${otherMeaning}.`],
  };
}

function levelsView(row: LookupRow): View {
  return {
    caption: `Reference levels of ${row.name}: ${row.levels.length}`,
    columns: [
      { head: 'Jurisdiction', align: 'left' },
      { head: 'Kind', align: 'left' },
      { head: 'Level', align: 'right' },
      { head: 'Unit', align: 'left' },
      { head: 'Source', align: 'left' },
      { head: 'Verified', align: 'left' },
      { head: 'Note', align: 'left' },
    ],
    rows: row.levels.map((level) => [
      level.jurisdiction,
      level.kind,
      levelText(level),
      level.basis === null ? level.unit : `${level.unit} ${level.basis}`,
      level.edition === null ? level.source : `${level.source} (${level.edition})`,
      level.verified,
      level.note ?? '',
    ]),
    legend: ['A reference level is a level for supplies, not medical advice for one glass.'],
  };
}

function levelText(level: LookupRow['levels'][number]): string {
  if (level.value === null && level.low === null) return 'no number';
  if (level.low === null) return plainNumber(level.value ?? 0);
  return level.value === null
    ? `from ${plainNumber(level.low)}`
    : `${plainNumber(level.low)} to ${plainNumber(level.value)}`;
}
