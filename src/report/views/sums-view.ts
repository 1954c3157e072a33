import type { LogReductionRow, SumRow } from '../../model/index.ts';
import { atMostDigits } from '../format-number.ts';
import { percentEstimate, percentRange } from '../format-percent.ts';
import type { View } from '../view.ts';

const CAUTION =
  'A before/after test of these samples on this feed and this specimen; no certification.';

/** One table of sums for each device and variant. */
export function sumsViews(rows: readonly SumRow[]): View[] {
  if (rows.length === 0) return [noneView('No sum has two members that were tested')];
  return byDevice(rows).map(({ title, rows: own }) => ({
    caption: `${title}: ${own.length} sums, ${own.filter(({ outcome }) => outcome !== 'untested').length} of them tested over all members`,
    columns: [
      { head: 'Sum', align: 'left' },
      { head: 'Event', align: 'left' },
      { head: 'Unit', align: 'left' },
      { head: 'Feed', align: 'right' },
      { head: 'Product', align: 'right' },
      { head: 'Reduction', align: 'right' },
      { head: 'Over members found in the feed', align: 'left' },
      { head: 'Product against 1', align: 'left' },
    ],
    rows: own.map((row) => [
      `${row.name}, ${row.members.length} members`,
      row.kind === 'spiked' ? `${row.event} (spiked)` : row.event,
      unitText(row),
      sideText(row.feed),
      sideText(row.product),
      sumText(row),
      row.outcome === 'untested' ? (row.reason ?? '') : foundText(row),
      row.product_verdict === null ? '' : row.product_verdict.replaceAll('-', ' '),
    ]),
    legend: [
      'A sum adds intervals: what was not detected adds 0 to its low end and the limit of the lab to its high end. Compliance sums count it as zero; that figure stands in the JSON and CSV formats as nondetects_as_zero.',
      'The members are the same on both sides. A sum of ratios is each member over its own reference level, and at most 1 meets the rule.',
      CAUTION,
    ],
  }));
}

/** log10 reductions of organisms, as reported and with the chance of counting. */
export function logReductionsViews(rows: readonly LogReductionRow[]): View[] {
  const shown = rows.filter(({ outcome }) => outcome !== 'untested' && outcome !== 'untestable');
  const tooLow = rows.filter(({ outcome }) => outcome === 'untestable').length;
  return [
    {
      caption: `log10 reductions of organisms: ${rows.length} pairs; in ${tooLow} the feed held too little to show a reduction`,
      columns: [
        { head: 'Device', align: 'left' },
        { head: 'Variant', align: 'left' },
        { head: 'Organism', align: 'left' },
        { head: 'Event', align: 'left' },
        { head: 'As reported', align: 'right' },
        { head: 'With the uncertainty of the results', align: 'right' },
        { head: 'With the chance of counting', align: 'right' },
        { head: 'Feed from', align: 'left' },
        { head: 'Product from', align: 'left' },
      ],
      rows: shown.map((row) => [
        row.device,
        row.variant,
        row.analyte,
        row.event,
        logText(row),
        logText({ low: row.interval_low, high: row.interval_high }),
        row.counted === null ? '' : logText(row.counted),
        row.counted?.feed_method ?? '',
        row.counted?.product_method ?? '',
      ]),
      legend: [
        'Pairs that were not tested or whose feed held too little stand in the JSON and CSV formats only.',
        'With the uncertainty of the results: the interval of the printed reduction as a log10. With the chance of counting: from the limits of each count or of the tubes of each most probable number.',
        'A log10 reduction of 2 lets one organism in a hundred pass, of 3 one in a thousand. None found is a count of 0 in the volume examined, not an absence.',
        'Water that is not microbiologically safe needs proper disinfection, whatever stands here.',
        CAUTION,
      ],
    },
  ];
}

function noneView(caption: string): View {
  return { caption, columns: [{ head: 'Sum', align: 'left' }], rows: [], legend: [] };
}

function byDevice(rows: readonly SumRow[]): { title: string; rows: SumRow[] }[] {
  const groups = new Map<string, SumRow[]>();
  for (const row of rows) {
    const title = row.variant === 'standard' ? row.device : `${row.device} (${row.variant})`;
    const group = groups.get(title) ?? [];
    groups.set(title, group);
    group.push(row);
  }
  return [...groups].map(([title, own]) => ({ title, rows: own }));
}

function sideText({ low, high }: SumRow['feed']): string {
  if (low === null) return 'not tested';
  if (high === null) return `> ${atMostDigits(low, 4)}`;
  if (high === low) return atMostDigits(low, 4);
  return low === 0
    ? `< ${atMostDigits(high, 4)}`
    : `${atMostDigits(low, 4)} to ${atMostDigits(high, 4)}`;
}

function unitText({ unit, basis }: SumRow): string {
  if (unit === '1') return 'ratio';
  return basis === null ? unit : `${unit} ${basis}`;
}

type Stated = Pick<SumRow, 'outcome' | 'reduction'>;

function sumText({ outcome, reduction }: Stated): string {
  const { estimate, interval_low: low, interval_high: high } = reduction;
  switch (outcome) {
    case 'untested':
      return 'not tested';
    case 'rise':
      return 'rise';
    case 'untestable':
      return 'feed too low to show';
    case 'not-shown':
      return 'no reduction shown';
    case 'at-least':
      return percentRange(low, null);
    case 'between':
      return percentRange(low, high);
    case 'measured':
      return estimate === null ? '' : percentEstimate(estimate, low, high);
    default:
      return outcome satisfies never;
  }
}

function foundText({ found, members }: SumRow): string {
  if (found.members.length === 0) return 'none found';
  const of = `${found.members.length} of ${members.length}`;
  return found.outcome === 'untested'
    ? `${of}: not tested: ${found.reason ?? ''}`
    : `${of}: ${sumText(found)}`;
}

/** A log10 reduction or its bounds, rounded outward: `≥ 1.58`, `0.09 to 1.06`. */
export function logText({ low, high }: { low: number | null; high: number | null }): string {
  const digits = (value: number, towards: 'floor' | 'ceil'): string =>
    (Math[towards](value * 100) / 100).toFixed(2);
  if (low === null) return high === null ? 'not known' : `≤ ${digits(high, 'ceil')}`;
  if (high === null) return `≥ ${digits(low, 'floor')}`;
  return low === high ? low.toFixed(2) : `${digits(low, 'floor')} to ${digits(high, 'ceil')}`;
}
