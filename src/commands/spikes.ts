import { computeSpikes } from '../analyse/spikes/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { spikesViews } from '../report/views/index.ts';
import { benchOutcome, filterSettings } from './bench-outcome.ts';
import { checkFilters, type Filters } from './filters.ts';

/**
 * Nominal doses beside the spiked feeds as measured: rows of `spikes/1`.
 *
 * A dose belongs to an event, not to a device, so a filter by device leaves all rows.
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function spikes(bench: Bench, filters: Filters = {}): Outcome {
  const keep = checkFilters(bench, filters);
  const rows = computeSpikes(bench)
    .map(({ row }) => row)
    .filter(({ analyte }) => keep.keepsAnalyte(analyte));
  const { nondetect_bound, confidence, quality, uncertainty } = bench.settings;
  return benchOutcome(bench, {
    schema: 'spikes/1',
    settings: {
      nondetect_bound,
      confidence,
      uncertainty,
      spike_recovery: quality.spike_recovery,
      reductions_use: 'the measured feed, never the nominal dose',
      batch: 'results of the spiked feed samples of one event, arithmetic mean',
      natural_feed: 'of the same event, else the last taken before the batch',
      ...filterSettings(filters),
    },
    rows,
    findings: [],
    views: spikesViews(rows),
  });
}
