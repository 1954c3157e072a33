import type { PourSeries } from './drain-device.ts';
import { type FlushPlay, fireStarts, fireTimer, fireVolumes } from './flush-play.ts';
import { refuseOrder, refuseOverlap, refusePour } from './pour-order.ts';
import { SAME_INSTANT_S } from './same-instant.ts';

/** What the pours themselves came to; the flushes are in the play. */
export interface PlayedPours {
  readonly cleanL: number;
  readonly starts: number;
}

/**
 * Plays pours through the flush rules of a device, event by event.
 *
 * At one instant: the end of a pour and the flushes its volume set off; timers that are due; start
 * rules; then the next pour. A long pause costs no more than the flushes in it.
 *
 * One long function on purpose: this loop runs once per pour of every simulated year, and calls that
 * pass times between functions cost more than the work itself (measured: 1.7 times slower).
 * @param play a play at power-on; changed in place
 * @param secondsPerL duration of a pour per litre; 0: pours take no time
 * @param endS the horizon: a pour that starts by then counts in full, a flush counts if due by then
 * @throws {BenchError} simulation-input, pours-unordered, pours-overlap
 */
export function playPours(
  play: FlushPlay,
  pours: PourSeries,
  secondsPerL: number,
  endS: number,
): PlayedPours {
  const { atS, volumeL } = pours;
  const toleranceS = SAME_INSTANT_S;
  const { dueS, isDeferred } = play;
  const { afterS, gridCount } = play.rules.timers;
  const leastPauseS = play.rules.leastPauseS - toleranceS;
  const timerCount = dueS.length;
  const pourCount = atS.length;
  const lastS = endS + toleranceS;
  let nextDueS = Number.NEGATIVE_INFINITY; // not known yet
  let previousAtS = 0;
  let previousEndS = 0;
  let starts = 0;
  // Kahan's compensated sum: a year of small pours adds up to the last digit.
  let cleanL = 0;
  let lostL = 0;

  // One turn more than there are pours, for the flushes after the last one.
  for (let index = 0; index <= pourCount; index++) {
    const isPour = index < pourCount;
    const startS = isPour ? (atS[index] as number) : Number.POSITIVE_INFINITY;
    const pourL = isPour ? (volumeL[index] as number) : 0;
    if (isPour) {
      // Written so that NaN fails: every comparison with it is false.
      const isUsable = startS >= 0 && startS < Infinity && pourL >= 0 && pourL < Infinity;
      if (!isUsable) refusePour(index, startS, pourL);
      if (startS < previousAtS - toleranceS) refuseOrder(index, startS, previousAtS);
      if (startS < previousEndS - toleranceS) refuseOverlap(index, startS, previousEndS);
    }
    const pourEndS = startS + pourL * secondsPerL;

    const untilS = Math.min(startS + toleranceS, lastS);
    while (nextDueS <= untilS) {
      let first = -1;
      nextDueS = Number.POSITIVE_INFINITY;
      for (let timer = 0; timer < timerCount; timer++) {
        const timerS = dueS[timer] as number;
        if (timerS < nextDueS) {
          nextDueS = timerS;
          first = timer;
        }
      }
      if (nextDueS > untilS) break;
      // Of timers due at one instant the first in order goes first.
      const sameUntilS = Math.min(nextDueS + toleranceS, untilS);
      for (let timer = 0; timer < first; timer++) {
        if ((dueS[timer] as number) <= sameUntilS) first = timer;
      }
      fireTimer(play, first);
    }

    if (isPour && startS <= lastS) {
      const idleS = startS - previousEndS;
      if (idleS >= leastPauseS) fireStarts(play, startS, idleS);
      starts++;
      const summandL = pourL - lostL;
      const sumL = cleanL + summandL;
      lostL = sumL - cleanL - summandL;
      cleanL = sumL;

      if (pourEndS <= lastS) {
        play.pendingL += pourL;
        if (play.pendingL >= play.nextMarkL) fireVolumes(play, pourEndS);
      }
      // Grid timers that fell due inside the pour are due at its end.
      nextDueS = Number.POSITIVE_INFINITY;
      for (let timer = 0; timer < gridCount; timer++) {
        let timerS = dueS[timer] as number;
        if (timerS < pourEndS) {
          timerS = pourEndS;
          dueS[timer] = timerS;
        }
        if (timerS < nextDueS) nextDueS = timerS;
      }
      // The pour has cancelled the idle timers; they count anew from its end.
      for (let timer = gridCount; timer < timerCount; timer++) {
        const timerS = pourEndS + (afterS[timer] as number);
        dueS[timer] = timerS;
        isDeferred[timer] = 0;
        if (timerS < nextDueS) nextDueS = timerS;
      }
    }
    previousAtS = startS;
    previousEndS = pourEndS;
  }
  return { cleanL, starts };
}
