import { computeIdleRise, type TdsThreshold } from '../analyse/idle-rise/index.ts';
import { BenchError } from '../findings/index.ts';
import type { Bench } from '../model/index.ts';
import { readQuantity } from '../normalise/index.ts';
import type { Outcome } from '../report/index.ts';
import { idleRiseViews } from '../report/views/idle-rise-view.ts';
import { benchWaterUse } from './bench-facts.ts';
import { benchOutcome, filterSettings } from './bench-outcome.ts';
import { checkFilters } from './filters.ts';
import { seedOf, type WaterUseOptions } from './water-use.ts';

export interface IdleRiseOptions extends WaterUseOptions {
  /** A reading above which a scenario's water is counted, such as `50 ppm`. */
  readonly above?: string | null;
}

/**
 * The first water after a pause, and the TDS of a scenario's water: rows of `idle-rise/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown; the problem of a reading that cannot be read
 */
export function idleRise(bench: Bench, options: IdleRiseOptions = {}): Outcome {
  const keep = checkFilters(bench, options);
  const threshold = thresholdOf(bench, options.above ?? null);
  const use = benchWaterUse(bench, seedOf(bench, options));
  const { rows, findings } = computeIdleRise(bench, use, threshold);
  const kept = rows.filter(
    (row) =>
      keep.keepsDevice(row.device, row.variant) &&
      (row.scenario === null || keep.keepsScenario(row.scenario)),
  );
  return benchOutcome(bench, {
    schema: 'idle-rise/1',
    settings: {
      above: options.above ?? null,
      scenario_days: bench.settings.scenario_days,
      seed: seedOf(bench, options),
      between_pauses: 'a straight line in the length of the pause; never beyond the tested pauses',
      recovered: 'nine tenths of the rise above the running reading are gone',
      cumulative_reading: 'of the water since the reading before it',
      ...filterSettings(options),
    },
    rows: kept,
    findings,
    views: idleRiseViews(kept),
  });
}

function thresholdOf(bench: Bench, text: string | null): TdsThreshold | null {
  if (text === null) return null;
  const reading = readQuantity(text, {
    dimensions: ['mass-concentration', 'meter-tds'],
    headerUnit: null,
    measures: bench.settings.measures ?? null,
    isStopwatch: false,
  });
  if ('problem' in reading) {
    throw new BenchError(reading.problem, `--above: ${reading.message}`, reading.remedy);
  }
  const { value, dimension } = reading.value;
  return { value, dimension, text };
}
