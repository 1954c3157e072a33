import { type Instruments, volumeUncertainty } from '../drain-uncertainty/index.ts';
import type { PourRun } from '../pour-flow.ts';

/** Water that came out in one stretch of time, and what the instruments leave open in it. */
export interface Stretch {
  readonly volumeL: number;
  readonly timeS: number;
  /** Standard uncertainty of the vessel or scale, litres: the same error in every stretch. */
  readonly sharedL: number;
  /** Variance of reading the volume, another error each time; litres squared. */
  readonly readingVariance: number;
  /** Variance of stopping the time, another error each time; seconds squared. */
  readonly timeVariance: number;
}

/** A first split of at most so many seconds is the first rush and no part of the steady flow. */
const RUSH_S = 1.5;

type Pour = PourRun['pours'][number];

function measured({ volume, timeS }: Pour, instruments: Instruments): Stretch {
  const { instrumentL, readingL } = volumeUncertainty(volume, instruments);
  return {
    volumeL: volume.volumeL,
    timeS,
    sharedL: instrumentL,
    readingVariance: readingL ** 2,
    timeVariance: instruments.stopwatch_s ** 2,
  };
}

/**
 * The stretches of a run that follow each other without the tap closing: its splits, or what came
 * between its cumulative readings. Single pours are no such stretches.
 *
 * A stretch between two cumulative readings has the reading errors of both; its two stops are those of
 * any hand-stopped time.
 */
export function stretches(run: PourRun, instruments: Instruments): Stretch[] {
  const of = (reading: string) =>
    run.pours
      .filter(({ row }) => row.values.reading === reading)
      .map((pour) => measured(pour, instruments));
  const splits = of('split');
  if (splits.length > 0) return splits;
  return of('cumulative').map((reading, index, all): Stretch => {
    const before = all[index - 1];
    if (before === undefined) return reading;
    return {
      volumeL: reading.volumeL - before.volumeL,
      timeS: reading.timeS - before.timeS,
      sharedL: reading.sharedL - before.sharedL,
      readingVariance: reading.readingVariance + before.readingVariance,
      timeVariance: reading.timeVariance,
    };
  });
}

/** The first rush of a run and the stretches after it; the rush is null where none was split off. */
export function withoutRush(
  run: PourRun,
  instruments: Instruments,
): {
  readonly rush: Stretch | null;
  readonly rest: readonly Stretch[];
} {
  const all = stretches(run, instruments);
  const [first, ...rest] = all;
  const isSplit = run.pours.some(({ row }) => row.values.reading === 'split');
  if (first === undefined || !isSplit || first.timeS > RUSH_S || rest.length === 0) {
    return { rush: null, rest: all };
  }
  return { rush: first, rest };
}

/**
 * Stretches that follow each other as one. Their stops in between cancel: what comes late to one
 * comes early to the next, so that the whole has the two stops of one hand-stopped time.
 * @param stretches at least one
 */
export function joined(stretches: readonly Stretch[]): Stretch {
  const sum = (of: (stretch: Stretch) => number) =>
    stretches.reduce((all, one) => all + of(one), 0);
  return {
    volumeL: sum(({ volumeL }) => volumeL),
    timeS: sum(({ timeS }) => timeS),
    sharedL: sum(({ sharedL }) => sharedL),
    readingVariance: sum(({ readingVariance }) => readingVariance),
    timeVariance: stretches[0]?.timeVariance ?? 0,
  };
}

/** Pours that repeat each other: single pours, and runs of split or cumulative readings as one. */
export function repeats(
  runs: readonly PourRun[],
  instruments: Instruments,
): (Stretch & { readonly from: readonly Pour[] })[] {
  return runs.flatMap((run) => {
    const singles = run.pours.filter(({ row }) => (row.values.reading ?? 'single') === 'single');
    const own = singles.map((pour) => ({ ...measured(pour, instruments), from: [pour] }));
    const splits = run.pours.filter(({ row }) => row.values.reading === 'split');
    const last = run.pours.filter(({ row }) => row.values.reading === 'cumulative').at(-1);
    const rest = run.pours.filter((pour) => !singles.includes(pour));
    const counted = last === undefined ? splits : [...splits, last];
    const parts = counted.map((pour) => measured(pour, instruments));
    return parts.length === 0 ? own : [...own, { ...joined(parts), from: rest }];
  });
}
