import type { BenchRow, SampleRow, WallTime } from '../../model/index.ts';
import { isUsable, type SampleResults } from './sample-results.ts';

/** A bottle with its sample and what the lab measured in it. */
export interface BottleResults {
  readonly row: BenchRow<'bottles'>;
  readonly sample: SampleRow;
  readonly results: readonly number[];
  /** Least hours between sampling and receipt; null where either time is not stated. */
  readonly hours: number | null;
}

/** Bottles of valid samples, each with the results of its lab file. */
export function bottleResults(view: SampleResults): BottleResults[] {
  const files = new Map(view.table.files.map(({ stem }, index) => [stem, index]));
  return view.bench.tables.bottles.flatMap((row) => {
    const index = view.sampleNamed(row.values.sample);
    const sample = view.samples[index];
    if (sample === undefined || !isUsable(sample)) return [];
    const file = files.get(row.values.lab);
    const results = [...view.of(index)].filter((result) => view.table.file[result] === file);
    return { row, sample, results, hours: leastHours(sample.values.taken_at, row) };
  });
}

const DAY_S = 86_400;

/**
 * Hours from sampling to receipt. A date without a clock time may be any moment of its day: the
 * shortest time that is possible counts, and it is below zero only where no reading makes sense.
 */
function leastHours(taken: WallTime | null, row: BenchRow<'bottles'>): number | null {
  const received = row.values.received_at;
  if (taken === null || received === null) return null;
  const latestTaken = taken.seconds + (taken.hasTime ? 0 : DAY_S);
  const shortest = received.seconds - latestTaken;
  if (shortest >= 0) return shortest / 3600;
  const latestReceived = received.seconds + (received.hasTime ? 0 : DAY_S);
  return Math.min(0, latestReceived - taken.seconds) / 3600;
}
