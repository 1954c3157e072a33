import type { NextTestRow, PriceList } from '../../model/index.ts';
import { significant } from '../format-number.ts';
import type { View } from '../view.ts';
import {
  actionText,
  assumptionsText,
  becauseText,
  labText,
  moneyText,
  type NameOf,
  openText,
  remedyText,
} from './next-test-words.ts';

/** Rates are told for so much money: one unit buys too little of a verdict to read. */
const RATE = 100;

/** What to buy first, what that settles, and what nothing on offer settles. */
export function nextTestsViews(
  rows: readonly NextTestRow[],
  prices: PriceList | null,
  nameOf: NameOf,
): View[] {
  const ranked = rows.filter(({ rank }) => rank !== null);
  const left = rows.filter(({ rank }) => rank === null);
  return [
    purchases(ranked, rows, prices, nameOf),
    ...(ranked.length === 0 ? [] : [settled(ranked, nameOf)]),
    ...(left.length === 0 ? [] : [leftOpen(left, prices, nameOf)]),
  ];
}

function purchases(
  ranked: readonly NextTestRow[],
  rows: readonly NextTestRow[],
  prices: PriceList | null,
  nameOf: NameOf,
): View {
  if (ranked.length === 0)
    return { caption: caption(ranked, rows), columns: [], rows: [], legend: [] };
  const isPriced = prices !== null;
  const currency = prices?.currency ?? '';
  return {
    caption: caption(ranked, rows),
    columns: [
      { head: 'Rank', align: 'right' },
      { head: 'Samples to take', align: 'left' },
      { head: 'Lab, package', align: 'left' },
      { head: 'Samples', align: 'right' },
      { head: 'Cost', align: 'right' },
      { head: 'Settles', align: 'right' },
      { head: isPriced ? `For ${RATE} ${currency}` : 'A sample', align: 'right' },
    ],
    rows: ranked.map((row) => [
      String(row.rank),
      actionText(row, nameOf),
      labText(row),
      String(row.samples),
      moneyText(row.cost, row.currency),
      String(row.verdicts.length),
      isPriced
        ? row.per_money === null
          ? 'free'
          : significant(row.per_money * RATE, 2)
        : significant(row.per_sample ?? 0, 2),
    ]),
    legend: [
      'A verdict is settled where the rules of this tool would decide it, for the claim or against it, or confirm a contradiction.',
      isPriced
        ? `For ${RATE} ${currency}: verdicts settled for that money at the rate of the row.`
        : 'A sample: verdicts settled a sample; without a price list (--prices) nothing is told by money.',
      ...assumptionsText(ranked),
      'Samples of one event and package share the feed; a feed that a row above pays for is not counted again.',
      'Without a budget the first row is the best for the money of all choices; rows after it, and rows within a budget, are best step by step.',
      ...(isPriced
        ? ['Prices are those of the list: no shipping, no standards for a spike, no time.']
        : []),
      'A retest of these specimens on this feed; it certifies nothing. No medical advice.',
    ],
  };
}

function caption(ranked: readonly NextTestRow[], rows: readonly NextTestRow[]): string {
  const open = rows.reduce((sum, { verdicts }) => sum + verdicts.length, 0);
  const last = ranked.at(-1);
  if (open === 0) return 'No verdict of this bench is open';
  if (last === undefined) return `Nothing on offer settles any of ${open} open verdicts`;
  const settled = last.settled_so_far;
  const words = ranked.length === 1 ? 'One purchase' : `${ranked.length} purchases`;
  const cost =
    last.cost_so_far === null ? '' : `, for ${moneyText(last.cost_so_far, last.currency)}`;
  return `${words} could settle ${settled} of ${open} open verdicts${cost}`;
}

function settled(ranked: readonly NextTestRow[], nameOf: NameOf): View {
  return {
    caption: 'What each could settle, and why it is open',
    columns: [
      { head: 'Rank', align: 'right' },
      { head: 'Device', align: 'left' },
      { head: 'Open', align: 'left' },
      { head: 'Now, then', align: 'left' },
      { head: 'Because', align: 'left' },
    ],
    rows: ranked.flatMap((row) =>
      row.verdicts.map((verdict) => [
        String(row.rank),
        deviceText(verdict),
        openText(verdict, nameOf),
        `${verdict.now}; then ${verdict.would_be ?? 'not known'}`,
        becauseText(verdict),
      ]),
    ),
    legend: [],
  };
}

function leftOpen(left: readonly NextTestRow[], prices: PriceList | null, nameOf: NameOf): View {
  const offered = new Set(
    (prices?.packages ?? []).flatMap(({ tests }) => tests.map(({ analyte }) => analyte)),
  );
  const verdicts = left.flatMap((row) => row.verdicts);
  return {
    caption:
      verdicts.length === 1
        ? 'Nothing on offer settles one open verdict'
        : `Nothing on offer settles ${verdicts.length} open verdicts`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Open', align: 'left' },
      { head: 'Now', align: 'left' },
      { head: 'Because', align: 'left' },
      { head: 'What could', align: 'left' },
    ],
    rows: verdicts.map((verdict) => [
      deviceText(verdict),
      openText(verdict, nameOf),
      verdict.now,
      becauseText(verdict),
      prices !== null && !offered.has(verdict.analyte ?? '')
        ? 'no package on offer measures it'
        : remedyText(verdict),
    ]),
    legend: [
      prices === null
        ? 'At the limits of this bench, if the figures repeat. Without a price list (--prices) only what the bench has measured before can be planned.'
        : 'Within the price list and the budget, if the figures repeat.',
    ],
  };
}

function deviceText({ device, variant }: NextTestRow['verdicts'][number]): string {
  return variant === 'standard' ? device : `${device} (${variant})`;
}
