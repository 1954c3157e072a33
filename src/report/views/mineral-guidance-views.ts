import type { MineralRow } from '../../model/index.ts';
import { plainNumber } from '../format-number.ts';
import type { View } from '../view.ts';
import type { ShownWater } from './mineral-shown-waters.ts';
import { waterList } from './water-list.ts';

type Guidance = MineralRow['guidance'][number];

const OUTSIDE = [
  ['below', 'Below'],
  ['above', 'Above'],
  ['cannot-say', 'Cannot say'],
] as const;

interface Judged {
  readonly row: MineralRow;
  readonly guidance: Guidance;
  readonly waters: Map<ShownWater, Guidance['verdict']>;
}

interface Numbered extends Judged {
  readonly no: string;
}

/** Which waters each guidance finds outside, which fall into a class, and where both come from. */
export function guidanceViews(waters: readonly ShownWater[]): View[] {
  const judged = new Map<string, Judged>();
  for (const water of waters) {
    for (const row of water.rows) {
      for (const guidance of row.guidance) {
        const { role, low, high, unit, basis, context, source } = guidance;
        const key = JSON.stringify([row.quantity, role, low, high, unit, basis, context, source]);
        const known = judged.get(key) ?? { row, guidance, waters: new Map() };
        known.waters.set(water, guidance.verdict);
        judged.set(key, known);
      }
    }
  }
  const list = [...judged.values()].sort((a, b) => Number(isClass(a)) - Number(isClass(b)));
  const numbered = list.map((each, index): Numbered => ({ ...each, no: String(index + 1) }));
  return [
    judgedView(numbered.filter((each) => !isClass(each))),
    classView(numbered.filter(isClass)),
    listView(numbered),
  ];
}

/** `poor above 200 mg/L` is no wish: a water below it is not amiss. */
function isClass({ guidance }: Judged): boolean {
  return !/^(?:minimum|maximum|optimum)/.test(guidance.role);
}

function watersAt({ waters }: Judged, verdict: Guidance['verdict']): string {
  const found = [...waters].flatMap(([water, each]) => (each === verdict ? [water] : []));
  return waterList(found, [...waters.keys()]);
}

function judgedView(judged: readonly Numbered[]): View {
  return {
    caption: 'Minerals against published guidance, which is not a requirement on any device',
    columns: [
      { head: 'No.', align: 'right' },
      { head: 'Quantity', align: 'left' },
      { head: 'Guidance', align: 'left' },
      ...OUTSIDE.map(([, head]) => ({ head, align: 'left' as const })),
    ],
    rows: judged.map((each) => [
      each.no,
      each.row.name,
      rangeText(each.guidance),
      ...OUTSIDE.map(([verdict]) => watersAt(each, verdict)),
    ]),
    legend: [
      'Waters not named lie within, or were not tested for it. In brackets: at these events only. Cannot say: an end of the guidance lies inside what the result allows.',
    ],
  };
}

function classView(judged: readonly Numbered[]): View {
  return {
    caption: 'Published classes of minerals: which waters fall into them',
    columns: [
      { head: 'No.', align: 'right' },
      { head: 'Quantity', align: 'left' },
      { head: 'Class', align: 'left' },
      { head: 'Waters', align: 'left' },
      { head: 'Cannot say', align: 'left' },
    ],
    rows: judged.map((each) => [
      each.no,
      each.row.name,
      rangeText(each.guidance),
      watersAt(each, 'within'),
      watersAt(each, 'cannot-say'),
    ]),
    legend: [],
  };
}

function listView(guidance: readonly Numbered[]): View {
  return {
    caption: 'The guidance by number: recommendations, proposals, targets and taste panels',
    columns: [
      { head: 'No.', align: 'right' },
      { head: 'Quantity', align: 'left' },
      { head: 'For', align: 'left' },
      { head: 'Source', align: 'left' },
      { head: 'Read', align: 'left' },
    ],
    rows: guidance.map(({ no, row, guidance: each }) => [
      no,
      row.name,
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
