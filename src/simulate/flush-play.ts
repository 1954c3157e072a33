import {
  type CompiledRules,
  DEFERS,
  NEVER_QUIET,
  ON_GRID,
  ONCE,
  SINCE_FLUSH,
} from './compile-flush-rules.ts';
import type { FlushRecord } from './drain-device.ts';
import { quietWait } from './quiet-hours.ts';
import { SAME_INSTANT_S } from './same-instant.ts';

/** Lets a counter that misses its mark by a rounding error (0.1 L ten times) reach it. */
const SAME_VOLUME = 1e-9;

/** One device being played: its rules and what they are waiting for. Changed in place. */
export interface FlushPlay {
  readonly rules: CompiledRules;
  readonly clockAtStartS: number;
  /** Names by row and the list to write to, only where flushes are recorded. */
  readonly record: { readonly names: readonly string[]; readonly flushes: FlushRecord[] } | null;
  /** Executed flushes by row. */
  readonly counts: Float64Array;
  /** Litres since the last flush of each volume rule, without `pendingL`. */
  readonly counterL: Float64Array;
  /** When each timer is due; infinite while it is not armed. */
  readonly dueS: Float64Array;
  /** 1 where quiet hours have moved the due time. */
  readonly isDeferred: Uint8Array;
  /** When the last flush of any rule was executed. */
  lastFlushS: number;
  /** Litres poured since the counters were last brought up to date. */
  pendingL: number;
  /** The pending litres at which a counter may reach its mark. */
  nextMarkL: number;
}

/** A play at power-on: timers armed, power-on rules executed. */
export function startFlushPlay(
  rules: CompiledRules,
  clockAtStartS: number,
  record: FlushPlay['record'],
): FlushPlay {
  const play: FlushPlay = {
    rules,
    clockAtStartS,
    record,
    counts: new Float64Array(rules.drainPerFlushL.length),
    counterL: new Float64Array(rules.volumes.row.length),
    dueS: rules.timers.firstDueS.slice(),
    isDeferred: new Uint8Array(rules.timers.row.length),
    lastFlushS: Number.NEGATIVE_INFINITY,
    pendingL: 0,
    nextMarkL: rules.volumes.row.length > 0 ? 0 : Number.POSITIVE_INFINITY,
  };
  for (const row of rules.powerOnRows) execute(play, row, 0, 1);
  return play;
}

// The functions below run at every flush. They build no objects (a recorded flush apart), and read
// columns with `as number` because every index is known to lie inside.

/** Fires a timer that is due, or puts it off to the end of quiet hours. */
export function fireTimer(play: FlushPlay, timer: number): void {
  const { dueS, isDeferred } = play;
  const { timers } = play.rules;
  const atS = dueS[timer] as number;
  const quiet = timers.quiet[timer] as number;
  let isDropped = false;
  if (quiet !== NEVER_QUIET && isDeferred[timer] === 0) {
    const fromS = timers.quietFromS[timer] as number;
    const waitS = quietWait(play.clockAtStartS + atS, fromS, timers.quietToS[timer] as number);
    if (waitS > 0 && quiet === DEFERS) {
      dueS[timer] = atS + waitS;
      isDeferred[timer] = 1;
      return;
    }
    isDropped = waitS > 0;
  }
  isDeferred[timer] = 0;
  dueS[timer] = dueAfter(timers.next[timer] as number, atS, timers.afterS[timer] as number);
  if (!isDropped) tryFlush(play, timers.row[timer] as number, atS, 1);
}

/** Fires the start rules of a pour that follows a pause of `idleS`. */
export function fireStarts(play: FlushPlay, atS: number, idleS: number): void {
  const { row, after } = play.rules.starts;
  for (let k = 0; k < row.length; k++) {
    if (idleS >= (after[k] as number) - SAME_INSTANT_S) tryFlush(play, row[k] as number, atS, 1);
  }
}

/** Adds the pending litres to the counters and fires the volume rules whose mark is reached. */
export function fireVolumes(play: FlushPlay, atS: number): void {
  const { counterL } = play;
  const { row, after } = play.rules.volumes;
  play.nextMarkL = Number.POSITIVE_INFINITY;
  for (let k = 0; k < row.length; k++) {
    const afterL = after[k] as number;
    let countL = (counterL[k] as number) + play.pendingL;
    const times = Math.floor(countL / afterL + SAME_VOLUME);
    // A dropped flush leaves its counter, so that the next pour owes it too.
    if (times > 0 && tryFlush(play, row[k] as number, atS, times)) countL -= times * afterL;
    counterL[k] = countL;
    // Looked at a little early rather than late.
    const missingL = afterL - countL - 2 * SAME_VOLUME * afterL;
    if (missingL < play.nextMarkL) play.nextMarkL = missingL;
  }
  play.pendingL = 0;
}

function dueAfter(next: number, atS: number, afterS: number): number {
  switch (next) {
    case ONCE:
      return Number.POSITIVE_INFINITY;
    case ON_GRID: {
      // The grid stays where power-on put it; points passed while waiting are lost.
      const nextS = (Math.floor((atS + SAME_INSTANT_S) / afterS) + 1) * afterS;
      // After some centuries doubles are coarser than the tolerance, and the point found may be now.
      return nextS > atS ? nextS : nextS + afterS;
    }
    default: // AGAIN, SINCE_FLUSH
      return atS + afterS;
  }
}

/** Executes a flush unless the last one of any rule is too recent. Returns whether it did. */
function tryFlush(play: FlushPlay, row: number, atS: number, times: number): boolean {
  const minIntervalS = play.rules.minIntervalS[row] as number;
  if (minIntervalS > 0 && atS - play.lastFlushS < minIntervalS - SAME_INSTANT_S) return false;
  execute(play, row, atS, times);
  return true;
}

function execute(play: FlushPlay, row: number, atS: number, times: number): void {
  play.counts[row] = (play.counts[row] as number) + times;
  play.lastFlushS = atS;
  if (play.rules.timers.anySinceFlush) restartSinceFlush(play, atS);
  if (play.record !== null) {
    play.record.flushes.push({ rule: play.record.names[row] as string, atS });
  }
}

function restartSinceFlush(play: FlushPlay, atS: number): void {
  const { next, afterS, gridCount } = play.rules.timers;
  for (let timer = 0; timer < gridCount; timer++) {
    if (next[timer] !== SINCE_FLUSH) continue;
    play.dueS[timer] = atS + (afterS[timer] as number);
    play.isDeferred[timer] = 0;
  }
}
