import type { PourRun } from '../pour-flow.ts';

/** Water that came out in one stretch of time. */
export interface Stretch {
  readonly volumeL: number;
  readonly timeS: number;
}

/** A first split of at most so many seconds is the first rush and no part of the steady flow. */
const RUSH_S = 1.5;

/**
 * The stretches of a run that follow each other without the tap closing: its splits, or what came
 * between its cumulative readings. Single pours are no such stretches.
 */
export function stretches(run: PourRun): Stretch[] {
  const of = (reading: string) => run.pours.filter(({ row }) => row.values.reading === reading);
  const splits = of('split').map(({ volume, timeS }) => ({ volumeL: volume.volumeL, timeS }));
  if (splits.length > 0) return splits;
  let before: Stretch = { volumeL: 0, timeS: 0 };
  return of('cumulative').map(({ volume, timeS }) => {
    const stretch = { volumeL: volume.volumeL - before.volumeL, timeS: timeS - before.timeS };
    before = { volumeL: volume.volumeL, timeS };
    return stretch;
  });
}

/** The first rush of a run and the stretches after it; the rush is null where none was split off. */
export function withoutRush(run: PourRun): {
  readonly rush: Stretch | null;
  readonly rest: readonly Stretch[];
} {
  const all = stretches(run);
  const [first, ...rest] = all;
  const isSplit = run.pours.some(({ row }) => row.values.reading === 'split');
  if (first === undefined || !isSplit || first.timeS > RUSH_S || rest.length === 0) {
    return { rush: null, rest: all };
  }
  return { rush: first, rest };
}

/** All volume over all time, L/min; null without any time. */
export function pooledFlow(parts: readonly Stretch[]): number | null {
  const timeS = parts.reduce((sum, part) => sum + part.timeS, 0);
  const volumeL = parts.reduce((sum, part) => sum + part.volumeL, 0);
  return timeS > 0 ? (volumeL / timeS) * 60 : null;
}

/** Pours that repeat each other: single pours, and runs of split or cumulative readings as one. */
export function repeats(
  runs: readonly PourRun[],
): (Stretch & { readonly from: PourRun['pours'] })[] {
  return runs.flatMap((run) => {
    const singles = run.pours.filter(({ row }) => (row.values.reading ?? 'single') === 'single');
    const own = singles.map((pour) => ({
      volumeL: pour.volume.volumeL,
      timeS: pour.timeS,
      from: [pour],
    }));
    const rest = run.pours.filter((pour) => !singles.includes(pour));
    const parts = stretches(run);
    if (rest.length === 0) return own;
    return [
      ...own,
      {
        volumeL: parts.reduce((sum, part) => sum + part.volumeL, 0),
        timeS: parts.reduce((sum, part) => sum + part.timeS, 0),
        from: rest,
      },
    ];
  });
}
