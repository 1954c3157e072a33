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

/** Scatter of the runs of one fit about it. */
export function fitScatter(fit: DrainFit): Scatter {
  const runs = usedRuns(fit);
  const degreesOfFreedom = runs.length - (fit.method === 'pooled' ? 1 : 2);
  if (degreesOfFreedom <= 0) return NO_SCATTER;
  let squares = 0;
  for (const run of runs) {
    const expectedL = expectedDrainL(fit, run);
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
