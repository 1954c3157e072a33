import { type Finding, finding, placeText } from '../findings/index.ts';
import { type Bench, type BenchRow, cellPlace } from '../model/index.ts';
import { pourFlows } from './pour-flow.ts';

/** Times closer than this are one instant. */
const SAME_INSTANT_S = 1e-6;

/**
 * Recorded pours that start before the one before them has ended, for the slowest device of the
 * bench: a recording is played through every device, so it has to fit all of them.
 * @returns nothing where no device has timed pours, since then no duration is known
 */
export function recordedOverlaps(bench: Bench): Finding[] {
  const flows = pourFlows(bench).flows.map((flow) => flow.flowLPerMin);
  if (flows.length === 0) return [];
  const slowest = Math.min(...flows);
  return bench.recordings.flatMap(({ rows }) => overlapsOf(recordedPours(rows), slowest));
}

/** The rows of a recording that are pours. */
export function recordedPours(rows: readonly BenchRow<'usage'>[]): BenchRow<'usage'>[] {
  return rows.filter((row) => (row.values.what ?? 'pour') === 'pour');
}

/**
 * Overlaps of recorded pours at a flow. In a recording an overlap means that a time or a volume is
 * wrong: it is named by its row.
 * @param flow L/min
 */
export function overlapsOf(pours: readonly BenchRow<'usage'>[], flow: number): Finding[] {
  return pours.flatMap((row, index) => {
    const earlier = pours[index - 1];
    if (earlier === undefined) return [];
    const durationS = ((earlier.values.volume?.value ?? 0) / flow) * 60;
    const endS = earlier.values.at.seconds + durationS;
    if (endS <= row.values.at.seconds + SAME_INSTANT_S) return [];
    return finding(
      'pours-overlap',
      `the pour starts before the one of ${placeText(cellPlace(earlier))} has ended ` +
        `(at ${Number(flow.toPrecision(3))} L/min it takes ${Math.ceil(durationS)} s)`,
      'correct the times or the volumes of the recording',
      cellPlace(row, 'at'),
    );
  });
}
