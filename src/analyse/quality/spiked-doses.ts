import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace } from '../../model/index.ts';
import { computeSpikes, type SpikeFact } from '../spikes/index.ts';
import type { SampleResults } from './sample-results.ts';
import { shortNumber } from './short-number.ts';

/** Doses that the measured feed does not agree with, or that no feed was measured for. */
export function spikeFindings(view: SampleResults): Finding[] {
  if (view.bench.tables.spikes.length === 0) return [];
  return computeSpikes(view.bench).flatMap(findingOf);
}

function findingOf({ row, source, analyte }: SpikeFact): Finding[] {
  const what = `${analyte.name} of ${row.event}`;
  if (row.agreement === 'untested') {
    return [
      finding(
        'spike-feed-missing',
        `${what}: a dose of ${shortNumber(row.nominal)} ${row.unit} and no result of the spiked feed`,
        'have the spiked feed measured; a reduction is never taken from a nominal dose',
        cellPlace(source, 'analyte'),
      ),
    ];
  }
  if (row.agreement !== 'differs') return [];
  const percent = (fraction: number | null): string =>
    fraction === null ? 'an unknown share' : `${shortNumber(fraction * 100)} %`;
  const { low, high } = row.recovery;
  const found = low === null ? `at most ${percent(high)}` : `${percent(low)} to ${percent(high)}`;
  return [
    finding(
      'spike-dose-differs',
      `${what}: ${found} of the nominal ${shortNumber(row.nominal)} ${row.unit} was found in the feed`,
      'check the dose, its volume and the mixing; reductions use the measured feed',
      cellPlace(source, 'dose'),
    ),
  ];
}
