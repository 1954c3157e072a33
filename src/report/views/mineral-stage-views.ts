import type { MineralRow } from '../../model/index.ts';
import { atMostDigits } from '../format-number.ts';
import { percentEstimate, percentRange } from '../format-percent.ts';
import type { View, ViewColumn } from '../view.ts';
import { eventName, waterName } from './mineral-shown-waters.ts';

const LEFT = 'left';
const RIGHT = 'right';

export const AGAINST = [
  ['stage', 'Over the water before the stage, mg/L'],
  ['devices-without-mineral-stage', 'Over devices without one, mg/L'],
  ['feed', 'Over the feed, mg/L'],
] as const;

/** Gains of mineral stages, one line a quantity. */
export function gainView(rows: readonly MineralRow[], names: ReadonlyMap<string, string>): View {
  const lines = new Map<string, MineralRow[]>();
  for (const row of rows) {
    const key = [row.kind, row.event, row.device, row.variant, row.quantity].join('\t');
    lines.set(key, [...(lines.get(key) ?? []), row]);
  }
  return {
    caption: 'What the mineral stages add, as far as the limits show it',
    columns: [
      { head: 'Event', align: LEFT },
      { head: 'Water', align: LEFT },
      { head: 'Quantity', align: LEFT },
      ...AGAINST.map(([, head]): ViewColumn => ({ head, align: RIGHT })),
    ],
    rows: [...lines.values()].flatMap((line) => {
      const [first] = line;
      if (first === undefined) return [];
      const cells = AGAINST.map(([against]) => gainText(line.find((r) => r.against === against)));
      return [[eventName(first), waterName(first, names), first.name, ...cells]];
    }),
    legend: [
      'Ranges are interval arithmetic over the limits of both true values; a range that holds 0 shows neither gain nor loss. Devices without one: of the same technology at the same event, as a range.',
      'Apparent: rests on assumed uncertainty. Calcite and magnesia: what dissolved if all of the gain came from it.',
      'The first water after a pause carries more minerals than water drawn in one go.',
    ],
  };
}

/** A gain with its range, signed; a dash where it was not tested. */
export function gainText(row: MineralRow | undefined): string {
  if (row === undefined) return '-';
  const { low, estimate, high } = row;
  const range =
    low === null || high === null ? 'unbounded' : `${signed(low, 'down')} to ${signed(high, 'up')}`;
  const text = estimate === null ? range : `${signed(estimate)} (${range})`;
  const isApparent = row.class !== 'not-told' && row.notes.includes('assumed-uncertainty');
  return isApparent ? `${text}, apparent` : text;
}

function signed(value: number, toward?: 'down' | 'up'): string {
  // Two digits, and never coarser than units.
  const size = 10 ** Math.max(0, 1 - Math.floor(Math.log10(Math.abs(value) || 1)));
  const rounded =
    toward === undefined
      ? value
      : (toward === 'down' ? Math.floor(value * size) : Math.ceil(value * size)) / size;
  const text = atMostDigits(rounded, toward === undefined || Math.abs(rounded) >= 100 ? 3 : 2);
  return value > 0 ? `+${text}` : text;
}

/** What is and what is not a measure of rejection behind a mineral stage. */
export function rejectionView(
  rows: readonly MineralRow[],
  names: ReadonlyMap<string, string>,
): View {
  const ways = [...new Set(rows.map(wayOf))];
  return {
    caption:
      'With a mineral stage the fall in dissolved solids is not a measure of rejection; ions the stage does not add are',
    columns: [
      { head: 'Event', align: LEFT },
      { head: 'Water', align: LEFT },
      { head: 'Quantity', align: LEFT },
      { head: 'Reduction', align: RIGHT },
      { head: 'Measures', align: LEFT },
      { head: 'How', align: RIGHT },
    ],
    rows: rows.map((row) => [
      eventName(row),
      waterName(row, names),
      row.name,
      reductionText(row),
      row.group === 'reduction' ? 'not rejection' : 'rejection',
      String(ways.indexOf(wayOf(row)) + 1),
    ]),
    legend: [
      ...ways.map((way, index) => `${index + 1}: ${way}.`),
      'What a stage adds unseen makes such a rejection look smaller, never larger. Ions differ: chloride and nitrate pass more easily than sulfate or calcium.',
    ],
  };
}

function wayOf({ reason, method }: MineralRow): string {
  return reason ?? method ?? '';
}

function reductionText({ low, estimate, high }: MineralRow): string {
  if (low === null && high === null && estimate === null) return 'unknown';
  return estimate === null ? percentRange(low, high) : percentEstimate(estimate, low, high);
}
