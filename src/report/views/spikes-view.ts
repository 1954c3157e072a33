import type { SpikeRow } from '../../model/index.ts';
import { atMostDigits } from '../format-number.ts';
import type { View } from '../view.ts';
import { sideText } from './reduction-words.ts';

/** Nominal and measured dose of every spiked feed. */
export function spikesViews(rows: readonly SpikeRow[]): View[] {
  const differ = rows.filter(({ agreement }) => agreement === 'differs').length;
  const [first] = rows;
  return [
    {
      caption:
        first === undefined
          ? 'No dose of a spiked feed is logged in spikes.csv'
          : `Doses of spiked feeds: ${rows.length}, of which ${differ} differ from the feed as measured`,
      columns: [
        { head: 'Event', align: 'left' },
        { head: 'Analyte', align: 'left' },
        { head: 'Unit', align: 'left' },
        { head: 'Nominal dose', align: 'right' },
        { head: 'Measured feed', align: 'right' },
        { head: 'Natural feed before', align: 'right' },
        { head: 'Found of the dose (%)', align: 'right' },
        { head: 'Agreement', align: 'left' },
      ],
      rows: rows.map((row) => [
        row.event,
        row.analyte,
        row.unit,
        atMostDigits(row.nominal, 4),
        sideText(row.measured),
        row.natural_sample === null ? 'not tested' : sideText(row.natural),
        recoveryText(row.recovery),
        row.agreement.replaceAll('-', ' '),
      ]),
      legend:
        first === undefined
          ? []
          : [
              'Reductions use the measured feed, never the nominal dose, and a spiked feed is never mixed with a natural one.',
              `Found of the dose: measured less natural feed, over the dose, with the uncertainty of both feeds. It agrees where all of it lies within ${percent(first.accepted_low)} to ${percent(first.accepted_high)} % (common practice, no source).`,
            ],
    },
  ];
}

function recoveryText({ low, estimate, high }: SpikeRow['recovery']): string {
  if (low === null) return high === null ? 'not known' : `at most ${percent(high)}`;
  const range = high === null ? `at least ${percent(low)}` : `${percent(low)} to ${percent(high)}`;
  return estimate === null ? range : `${percent(estimate)} (${range})`;
}

function percent(fraction: number): string {
  return atMostDigits(fraction * 100, 3);
}
