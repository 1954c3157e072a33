import type { DrainFit, DrainRun } from '../drain-fit.ts';

/** How far single measurements scatter about what is fitted to them, relative to their size. */
export interface Scatter {
  /** Relative standard deviation of one measurement. */
  readonly relativeSd: number;
  /** Measurements less fitted figures, over all that were pooled; 0: nothing to tell it from. */
  readonly degreesOfFreedom: number;
}

export const NO_SCATTER: Scatter = { relativeSd: 0, degreesOfFreedom: 0 };

/** The runs a fit rests on. */
export function usedRuns(fit: DrainFit): DrainRun[] {
  return fit.runs.filter((run) => run.refused === null);
}

/** Drain of production that a fit expects of a run, litres. */
export function expectedDrainL(fit: DrainFit, run: DrainRun): number {
  return fit.ratio * run.clean.volumeL + fit.perStartL * (run.row.values.starts ?? 0);
}

/** The runs of a fit whose bucket held production alone, and the drain ratio they give. */
export function plainRuns(fit: DrainFit): {
  readonly runs: readonly DrainRun[];
  readonly ratio: number;
} {
  const used = usedRuns(fit);
  const runs = used.filter(({ row }) => row.values.collected_until !== 'after-flush');
  let cleanL = 0;
  let drainL = 0;
  for (const run of runs) {
    cleanL += run.clean.volumeL;
    drainL += run.producingL - fit.perStartL * (run.row.values.starts ?? 0);
  }
  return runs.length === used.length || cleanL <= 0
    ? { runs: used, ratio: fit.ratio }
    : { runs, ratio: drainL / cleanL };
}

/**
 * Scatter of the runs of one fit. Where some runs had a flush taken out, that of the others about
 * their own ratio: what is wrong with the flush is no scatter of the runs.
 */
export function fitScatter(fit: DrainFit): Scatter {
  const { runs, ratio } = plainRuns(fit);
  const degreesOfFreedom = runs.length - (fit.method === 'pooled' ? 1 : 2);
  if (degreesOfFreedom <= 0) return NO_SCATTER;
  let squares = 0;
  for (const run of runs) {
    const expectedL = ratio * run.clean.volumeL + fit.perStartL * (run.row.values.starts ?? 0);
    if (expectedL > 0) squares += ((run.producingL - expectedL) / expectedL) ** 2;
  }
  return { relativeSd: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

/**
 * Scatter pooled over several devices or rules: few repeats of each, measured the same way, tell
 * together what none of them tells alone.
 * Source: √(Σ ν s² / Σ ν), as for repeats.
 */
export function pooledScatter(scatters: readonly Scatter[]): Scatter {
  let squares = 0;
  let degreesOfFreedom = 0;
  for (const one of scatters) {
    squares += one.degreesOfFreedom * one.relativeSd ** 2;
    degreesOfFreedom += one.degreesOfFreedom;
  }
  return degreesOfFreedom === 0
    ? NO_SCATTER
    : { relativeSd: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}
