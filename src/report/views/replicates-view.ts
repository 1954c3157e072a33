import type { ReductionSummary } from '../../compare/index.ts';
import { percentEstimate, percentRange } from '../format-percent.ts';
import type { View } from '../view.ts';

/**
 * What three or more pairs of a device and analyte say by their own scatter; none where no device has
 * as many.
 */
export function replicateViews(summaries: readonly ReductionSummary[]): View[] {
  const shown = summaries.filter(
    ({ replicates }) =>
      replicates !== null && (replicates.ofMeans !== null || replicates.geometric !== null),
  );
  if (shown.length === 0) return [];
  return [
    {
      caption: `Several events together: ${shown.length} reductions with three pairs or more`,
      columns: [
        { head: 'Device', align: 'left' },
        { head: 'Analyte', align: 'left' },
        { head: 'Pairs (n)', align: 'right' },
        { head: 'Of these censored', align: 'right' },
        { head: 'Reduction of the means', align: 'right' },
        { head: 'Geometric', align: 'right' },
        { head: 'Worst pair', align: 'right' },
      ],
      rows: shown.map(({ device, variant, kind, analyte, replicates, worstLow }) => [
        variant === 'standard' ? device : `${device} (${variant})`,
        kind === 'spiked' ? `${analyte.name} (spiked)` : analyte.name,
        String(replicates?.n ?? 0),
        String(replicates?.censored ?? 0),
        intervalText(replicates?.ofMeans ?? null),
        intervalText(replicates?.geometric ?? null),
        percentRange(worstLow, null),
      ]),
      legend: [
        "Reduction of the means: 1 less the sum of the products over the sum of the feeds; in brackets Fieller's interval of the pairs with Student's t (n - 1).",
        "Geometric: of the geometric mean passage, with Student's t of its logarithm; with censored pairs by likelihood, from eight pairs with three figures. It is never lower than that of the means where all pairs share a feed, so it does not lead.",
        'Worst pair: the lowest end of the interval of any one event.',
      ],
    },
  ];
}

function intervalText(interval: NonNullable<ReductionSummary['replicates']>['ofMeans']): string {
  if (interval === null || !(interval.estimate < 1)) return '';
  const { estimate, low, high } = interval;
  return low === null ? 'no lower end' : percentEstimate(estimate, low, high);
}
