import type { MineralRow } from '../../model/index.ts';
import { plainNumber } from '../format-number.ts';
import type { View } from '../view.ts';
import { intervalText } from './mineral-words.ts';

type Guidance = MineralRow['guidance'][number];

const VERDICTS = [
  ['below', 'Below'],
  ['within', 'Within'],
  ['above', 'Above'],
  ['cannot-say', 'Cannot say'],
] as const;

/** Each figure against guidance by number, and the numbered list of the guidance itself. */
export function guidanceViews(
  waters: readonly {
    readonly name: string;
    readonly event: string;
    readonly rows: readonly MineralRow[];
  }[],
): View[] {
  const numbers = new Map<string, { readonly row: MineralRow; readonly guidance: Guidance }>();
  const numberOf = (row: MineralRow, guidance: Guidance): number => {
    const { role, low, high, unit, basis, context, source } = guidance;
    const key = JSON.stringify([row.quantity, role, low, high, unit, basis, context, source]);
    if (!numbers.has(key)) numbers.set(key, { row, guidance });
    return [...numbers.keys()].indexOf(key) + 1;
  };
  const judged = waters.flatMap((water) =>
    water.rows.flatMap((row) => {
      if (row.guidance.length === 0) return [];
      const cells = VERDICTS.map(([verdict]) =>
        row.guidance
          .filter((each) => each.verdict === verdict)
          .map((each) => numberOf(row, each))
          .sort((a, b) => a - b)
          .join(' '),
      );
      return [[water.event, water.name, row.name, intervalText(row), ...cells]];
    }),
  );
  return [judgedView(judged), listView([...numbers.values()])];
}

function judgedView(rows: readonly (readonly string[])[]): View {
  return {
    caption: 'Minerals against published guidance, which is not a requirement on any device',
    columns: [
      { head: 'Event', align: 'left' },
      { head: 'Water', align: 'left' },
      { head: 'Quantity', align: 'left' },
      { head: 'Found', align: 'right' },
      ...VERDICTS.map(([, head]) => ({ head, align: 'left' as const })),
    ],
    rows,
    legend: [
      'Numbers are those of the guidance in the next table. Cannot say: an end of the guidance lies inside what the result allows.',
    ],
  };
}

function listView(
  guidance: readonly { readonly row: MineralRow; readonly guidance: Guidance }[],
): View {
  return {
    caption: 'The guidance by number: recommendations, proposals, targets and taste panels',
    columns: [
      { head: 'No.', align: 'right' },
      { head: 'Quantity', align: 'left' },
      { head: 'Guidance', align: 'left' },
      { head: 'For', align: 'left' },
      { head: 'Source', align: 'left' },
      { head: 'Read', align: 'left' },
    ],
    rows: guidance.map(({ row, guidance: each }, index) => [
      String(index + 1),
      row.name,
      rangeText(each),
      each.context,
      each.source,
      each.verified.startsWith('seen') ? 'seen' : 'from memory',
    ]),
    legend: [
      'Seen: read in a copy of the source. From memory: not read in a source for this table. None of it is a requirement, and the WHO Guidelines set no minimum for calcium, magnesium or dissolved solids.',
    ],
  };
}

/** `minimum 30 mg/L as Ca`. */
function rangeText({ role, low, high, unit, basis }: Guidance): string {
  const range =
    low !== null && high !== null
      ? `${plainNumber(low)} to ${plainNumber(high)}`
      : `${openWord(role, low)}${plainNumber(low ?? high ?? 0)}`;
  const isPlain = unit === '1' || unit === 'pH';
  return `${role} ${range}${isPlain ? '' : ` ${unit}`}${basis === null ? '' : ` ${basis}`}`;
}

/** A taste panel's class with one open end says which; `minimum` and `maximum` say it themselves. */
function openWord(role: string, low: number | null): string {
  if (!role.startsWith('palatability')) return '';
  return low === null ? 'up to ' : 'above ';
}
