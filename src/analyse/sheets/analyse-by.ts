import type { WallTime } from '../../model/index.ts';

/**
 * The latest moment of an analysis on the same wall clock as the sampling, cut down to the minute.
 *
 * @param taken null, or a date without a time: the result is null, since a day may decide
 * @param hours holding time
 * @example analyseBy(takenAt('2026-07-06T08:30'), 48) // '2026-07-08T08:30'
 */
export function analyseBy(taken: WallTime | null, hours: number): string | null {
  if (taken === null || !taken.hasTime) return null;
  const minutes = Math.floor((taken.seconds + hours * 3600) / 60);
  return new Date(minutes * 60_000).toISOString().slice(0, 16);
}
