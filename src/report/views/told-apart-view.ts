import type { AnalyteComparison, ReductionSummary } from '../../compare/index.ts';
import { plainNumber } from '../format-number.ts';
import type { View } from '../view.ts';

/** One row an analyte with a pair told apart or equivalent; the rest are counted. */
export function toldApartView(
  comparisons: readonly AnalyteComparison[],
  { confidence, margin }: { readonly confidence: number; readonly margin: number },
): View {
  const apart = comparisons.filter(({ pairs }) =>
    pairs.some(({ verdict }) => verdict === 'told-apart'),
  ).length;
  const shown = comparisons.filter(({ pairs }) =>
    pairs.some(({ verdict }) => verdict !== 'not-told-apart'),
  );
  return {
    caption: `Devices told apart on ${apart} of ${comparisons.length} analytes, on feeds they share`,
    columns: [
      { head: 'Analyte', align: 'left' },
      { head: 'Devices', align: 'right' },
      { head: 'Pairs told apart', align: 'right' },
      { head: 'Pairs equivalent', align: 'right' },
      { head: 'Groups not told apart, least in the product first', align: 'left' },
    ],
    rows: shown.map((comparison) => [
      comparison.analyte.name,
      String(comparison.devices.length),
      pairsText(comparison, 'told-apart'),
      pairsText(comparison, 'equivalent'),
      groupsText(comparison),
    ]),
    legend: [
      `Analytes left out, nothing told apart: ${comparisons.length - shown.length}.`,
      `Confidence ${plainNumber(confidence * 100)} % over all pairs of an analyte; a device in two groups is told apart from neither.`,
      `Equivalent: no larger difference than ${plainNumber(margin * 100)} points of percent is left open.`,
      'A bound is never ranked against a bound. Of pairs marked "apparent" the uncertainty is assumed.',
    ],
  };
}

function pairsText(
  { pairs }: AnalyteComparison,
  wanted: AnalyteComparison['pairs'][number]['verdict'],
): string {
  const found = pairs.filter(({ verdict }) => verdict === wanted);
  const apparent = found.filter(({ firm }) => !firm).length;
  const count = `${found.length} of ${pairs.length}`;
  return apparent === 0 ? count : `${count} (${apparent} apparent)`;
}

function groupsText({ devices, groups }: AnalyteComparison): string {
  if (groups.length === 1) return 'all';
  return groups
    .map((group) =>
      group
        .flatMap((at) => devices[at] ?? [])
        .map(nameOf)
        .join(', '),
    )
    .join('; ');
}

function nameOf({ device, variant }: ReductionSummary): string {
  return variant === 'standard' ? device : `${device} (${variant})`;
}
