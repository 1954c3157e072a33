import type { AnalyteComparison, Margin, ReductionSummary } from '../../compare/index.ts';
import type { ToldApartGroupRow, ToldApartRow } from '../../model/index.ts';
import { atMostDigits, plainNumber, significant } from '../format-number.ts';
import type { View } from '../view.ts';

/** One row an analyte with a pair told apart or equivalent; the rest are counted. */
export function toldApartView(
  comparisons: readonly AnalyteComparison[],
  options: { readonly confidence: number; readonly margin: Margin },
): View {
  const compared = comparisons.filter((one) => one.comparisons > 0);
  const has = ({ pairs }: AnalyteComparison, ...verdicts: readonly string[]): boolean =>
    pairs.some(({ verdict }) => verdicts.includes(verdict));
  const apart = compared.filter((one) => has(one, 'differ')).length;
  const shown = compared.filter((one) => has(one, 'differ', 'equivalent'));
  return {
    caption: `Devices told apart on ${apart} of ${compared.length} analytes, on feeds they share`,
    columns: [
      { head: 'Analyte', align: 'left' },
      { head: 'Devices', align: 'right' },
      { head: 'Pairs told apart', align: 'right' },
      { head: 'Pairs equivalent', align: 'right' },
      { head: 'Groups not told apart, least in the product first', align: 'left' },
    ],
    rows: shown.map((comparison) => [
      withKind(comparison.analyte.name, comparison.kind),
      String(comparison.devices.length),
      pairsText(comparison, 'differ'),
      pairsText(comparison, 'equivalent'),
      groupsText(comparison),
    ]),
    legend: [
      `Analytes left out, nothing told apart: ${compared.length - shown.length}.`,
      'A device in two groups is told apart from neither.',
      ...methodLegend(options),
    ],
  };
}

/** The pairs that differ or are equivalent, one row each; the rest are counted. */
export function toldApartViews(
  rows: readonly ToldApartRow[],
  options: { readonly confidence: number; readonly margin: Margin },
): View[] {
  const count = (verdict: ToldApartRow['verdict']): number =>
    rows.filter((row) => row.verdict === verdict).length;
  const shown = rows.filter(({ verdict }) => verdict === 'differ' || verdict === 'equivalent');
  return [
    {
      caption: `${count('differ')} of ${rows.length} pairs of devices differ, ${count('equivalent')} are equivalent, ${count('not-told-apart')} are not told apart, ${count('not-comparable')} cannot be compared`,
      columns: [
        { head: 'Analyte', align: 'left' },
        { head: 'Device a', align: 'left' },
        { head: 'Device b', align: 'left' },
        { head: 'Verdict', align: 'left' },
        { head: 'Reduction of b less that of a (points)', align: 'right' },
        { head: 'What a lets through over what b does', align: 'right' },
        { head: 'Confidence (%)', align: 'right' },
        { head: 'Events', align: 'right' },
      ],
      rows: shown.map((row) => [
        withKind(row.analyte, row.kind),
        nameOf(row.device_a, row.variant_a),
        nameOf(row.device_b, row.variant_b),
        verdictText(row),
        figureText(row.passage_difference, 100),
        figureText(row.passage_ratio, 1),
        row.adjusted_confidence === null ? '' : atMostDigits(row.adjusted_confidence * 100, 4),
        String(row.events.length),
      ]),
      legend: [
        'Pairs that were not told apart or cannot be compared stand, with the reason, in the JSON and CSV formats.',
        'Confidence: of the one interval, raised for the number of pairs of the analyte.',
        ...methodLegend(options),
      ],
    },
  ];
}

/** The groups of devices not told apart, one row a group. */
export function toldApartGroupViews(rows: readonly ToldApartGroupRow[]): View[] {
  const split = new Set(
    rows.flatMap(({ analyte, kind, groups }) => (groups > 1 ? `${analyte} ${kind}` : [])),
  ).size;
  return [
    {
      caption: `Groups of devices not told apart: on ${split} analytes there is more than one`,
      columns: [
        { head: 'Analyte', align: 'left' },
        { head: 'Group', align: 'right' },
        { head: 'Devices not told apart', align: 'left' },
        { head: 'Pairs not comparable', align: 'right' },
      ],
      rows: rows.map((row) => [
        withKind(row.analyte, row.kind),
        `${row.group} of ${row.groups}`,
        row.groups === 1
          ? `all ${row.members.length}`
          : row.members.map(({ device, variant }) => nameOf(device, variant)).join(', '),
        String(row.not_comparable),
      ]),
      legend: [
        'The group that lets least through stands first. A device in two groups is told apart from neither: "not told apart" does not carry over from pair to pair.',
      ],
    },
  ];
}

function methodLegend({
  confidence,
  margin,
}: {
  readonly confidence: number;
  readonly margin: Margin;
}): string[] {
  return [
    `Confidence ${plainNumber(confidence * 100)} % over all pairs of an analyte and kind of feed.`,
    margin.kind === 'points'
      ? `Equivalent: no larger difference than ${atMostDigits(margin.value * 100, 4)} points of percent is left open.`
      : `Equivalent: no larger factor than ${plainNumber(margin.value)} between what passes is left open.`,
    'A bound is never ranked against a bound. Of pairs marked "apparent" the uncertainty is assumed. Differences hold for the shared feeds and these specimens.',
  ];
}

function verdictText({ verdict, less_passes: less, firm }: ToldApartRow): string {
  const apparent = firm ? '' : ' (apparent)';
  return verdict === 'differ' ? `${less} lets less through${apparent}` : `${verdict}${apparent}`;
}

function figureText({ low, estimate, high }: ToldApartRow['product_a'], factor: number): string {
  const digits = (value: number): string => significant(value * factor, 2);
  if (low === null && high === null) return 'no limits';
  if (low === null) return `at most ${digits(high ?? 0)}`;
  if (high === null) return `at least ${digits(low)}`;
  const range = `${digits(low)} to ${digits(high)}`;
  return estimate === null ? range : `${digits(estimate)} (${range})`;
}

function withKind(name: string, kind: 'natural' | 'spiked'): string {
  return kind === 'spiked' ? `${name} (spiked)` : name;
}

function pairsText(
  { pairs, comparisons }: AnalyteComparison,
  wanted: AnalyteComparison['pairs'][number]['verdict'],
): string {
  const found = pairs.filter(({ verdict }) => verdict === wanted);
  const apparent = found.filter(({ firm }) => !firm).length;
  const count = `${found.length} of ${comparisons}`;
  return apparent === 0 ? count : `${count} (${apparent} apparent)`;
}

function groupsText({ devices, groups }: AnalyteComparison): string {
  if (groups.length === 1) return 'all';
  return groups
    .map((group) =>
      group
        .flatMap((at) => devices[at] ?? [])
        .map(({ device, variant }: ReductionSummary) => nameOf(device, variant))
        .join(', '),
    )
    .join('; ');
}

function nameOf(device: string, variant: string): string {
  return variant === 'standard' ? device : `${device} (${variant})`;
}
