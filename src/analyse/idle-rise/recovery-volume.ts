import type { IdleGroup, IdleProfile } from './idle-profile.ts';

/** Share of the rise that has to be gone before the water counts as recovered; our choice. */
const GONE = 0.9;

/** How the water after a pause comes back to what the device makes when it runs. */
export interface Recovery {
  readonly runningTds: number;
  /** `no-pause`: read without a pause; `last-reading`: the last reading after this one. */
  readonly runningFrom: 'no-pause' | 'last-reading';
  /** Litres until nine tenths of the rise are gone; null where the readings end before. */
  readonly litres: number | null;
}

/**
 * Volume to recover: litres drawn until nine tenths of the rise above the running TDS are gone.
 *
 * The running TDS is the last of the readings without a pause, where there are any; else the last
 * reading after the pause itself, if the readings no longer fell by more than a tenth of the rise.
 * Between the middles of two portions the TDS is taken as a straight line.
 */
export function recoveryOf(group: IdleGroup, profile: IdleProfile): Recovery | null {
  const first = profile.tds[0];
  const last = profile.tds.at(-1);
  if (first === undefined || last === undefined) return null;
  const rested = group.profiles.find(({ idleS }) => idleS === 0);
  const known = rested?.tds.at(-1);
  const runningTds = known ?? last;
  const runningFrom = known === undefined ? 'last-reading' : 'no-pause';
  const rise = first - runningTds;
  if (rise <= 0) {
    const isSingle = known === undefined && profile.tds.length < 2;
    return { runningTds, runningFrom, litres: isSingle ? null : 0 };
  }
  const before = profile.tds.at(-2) ?? Number.POSITIVE_INFINITY;
  const isSettled = known !== undefined || before - last <= (1 - GONE) * rise;
  const litres = isSettled ? crossing(profile, runningTds + (1 - GONE) * rise) : null;
  return { runningTds, runningFrom, litres };
}

/** Litres at which the line through the middles of the portions first comes down to a level. */
function crossing({ toL, tds }: IdleProfile, level: number): number | null {
  const middles = toL.map((end, i) => ((toL[i - 1] ?? 0) + end) / 2);
  for (let i = 1; i < tds.length; i++) {
    const [x1 = 0, x2 = 0] = [middles[i - 1], middles[i]];
    const [y1 = 0, y2 = 0] = [tds[i - 1], tds[i]];
    if (y2 > level) continue;
    return y1 <= level ? x1 : x1 + ((x2 - x1) * (y1 - level)) / (y1 - y2);
  }
  return null;
}
