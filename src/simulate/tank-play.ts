import { ABOVE_ZERO, checkNumber, ZERO_OR_MORE } from './check-number.ts';
import type { Pours } from './drain-device.ts';
import { refuseOrder, refusePour } from './pour-order.ts';
import { SAME_INSTANT_S } from './same-instant.ts';
import {
  levelAfter,
  refillSeconds,
  type StorageTank,
  type TankFigures,
  tankFigures,
} from './tank-refill.ts';

/** What drawing from a tank came to. Volumes in litres. */
export interface SimulatedTank {
  /** Clean water the user got. */
  readonly drawnL: number;
  /** Clean water asked for and not there, because the tank was empty. */
  readonly shortfallL: number;
  /** Clean water that went into the tank. */
  readonly madeL: number;
  /** Drain while filling, within the horizon. */
  readonly drainL: number;
  /** How often filling started. */
  readonly starts: number;
  readonly fillingS: number;
  readonly startL: number;
  readonly endL: number;
  readonly isFillingAtEnd: boolean;
  /**
   * Drain that brings the tank back to the level it began with: of a filling that goes on, what is
   * left of it; else the missing litres at the drain of a whole filling from restart to stop.
   * Negative where the tank ends fuller than it began.
   */
  readonly levelDrainL: number;
  /** `drainL` per litre made and per litre drawn; null without such water. */
  readonly drainPerMade: number | null;
  readonly drainPerDrawn: number | null;
  /** Drain with equal tank level at both ends, per litre drawn; null when nothing was drawn. */
  readonly equalLevelRatio: number | null;
}

/**
 * Plays draws through a storage tank that fills from its restart to its stop pressure.
 *
 * Draws take no time. A draw that leaves the tank at or below the restart pressure starts the
 * filling; it goes on until the stop pressure, through further draws. A draw larger than what the
 * tank holds gives what there is, and the rest is short.
 * @param pours seconds and litres, in order; may be empty
 * @param horizon `startL`: litres at second 0; left out: full
 * @throws {BenchError} simulation-input, pours-unordered
 * Source: derived; conventions as stated.
 * Checked by: tests/outside-checks/physics/
 */
export function simulateTank(
  tank: StorageTank,
  pours: Pours,
  horizon: { readonly endS: number; readonly startL?: number },
): SimulatedTank {
  const figures = tankFigures(tank);
  const endS = checkNumber('endS', horizon.endS, ZERO_OR_MORE);
  const startL = checkNumber('startL', horizon.startL ?? figures.stopL, {
    holds: (litres) => litres >= 0 && litres <= figures.stopL,
    words: `litres from 0 to the full tank, ${figures.stopL}`,
  });
  const state = { atS: 0, levelL: startL, isFilling: startL <= figures.restartL };
  let starts = state.isFilling ? 1 : 0;
  let fillingS = 0;
  let madeL = 0;
  let drawnL = 0;
  let shortfallL = 0;
  const advance = (untilS: number): void => {
    if (state.isFilling) {
      const spanS = Math.max(0, untilS - state.atS);
      const neededS = refillSeconds(figures, state.levelL, figures.stopL);
      fillingS += Math.min(spanS, neededS);
      state.isFilling = neededS > spanS;
      const reachedL = state.isFilling ? levelAfter(figures, state.levelL, spanS) : figures.stopL;
      madeL += reachedL - state.levelL;
      state.levelL = reachedL;
    }
    state.atS = Math.max(state.atS, untilS);
  };
  for (let index = 0; index < pours.atS.length; index++) {
    const atS = pours.atS[index] ?? Number.NaN;
    const askedL = pours.volumeL[index] ?? Number.NaN;
    const isUsable = atS >= 0 && atS < Infinity && askedL >= 0 && askedL < Infinity;
    if (!isUsable) refusePour(index, atS, askedL);
    if (atS < state.atS - SAME_INSTANT_S) refuseOrder(index, atS, state.atS);
    if (atS > endS + SAME_INSTANT_S) break;
    advance(atS);
    const givenL = Math.min(askedL, state.levelL);
    drawnL += givenL;
    shortfallL += askedL - givenL;
    state.levelL -= givenL;
    if (!state.isFilling && state.levelL <= figures.restartL) {
      state.isFilling = true;
      starts++;
    }
  }
  advance(endS);
  const drainL = figures.rejectLPerS * fillingS;
  const levelDrainL = closingDrain(figures, startL, state);
  return {
    drawnL,
    shortfallL,
    madeL,
    drainL,
    starts,
    fillingS,
    startL,
    endL: state.levelL,
    isFillingAtEnd: state.isFilling,
    levelDrainL,
    drainPerMade: madeL > 0 ? drainL / madeL : null,
    drainPerDrawn: drawnL > 0 ? drainL / drawnL : null,
    equalLevelRatio: drawnL > 0 ? (drainL + levelDrainL) / drawnL : null,
  };
}

function closingDrain(
  figures: TankFigures,
  startL: number,
  end: { readonly levelL: number; readonly isFilling: boolean },
): number {
  const missingL = startL - end.levelL;
  if (end.isFilling && missingL > 0) {
    return figures.rejectLPerS * refillSeconds(figures, end.levelL, startL);
  }
  return missingL * cycleRatio(figures);
}

/** Drain per litre of a whole filling from restart to stop. */
function cycleRatio(figures: TankFigures): number {
  const { restartL, stopL, rejectLPerS } = figures;
  return (rejectLPerS * refillSeconds(figures, restartL, stopL)) / (stopL - restartL);
}

/**
 * Drain per litre of a whole filling from restart to stop.
 * @throws {BenchError} simulation-input
 */
export function tankCycleRatio(tank: StorageTank): number {
  return cycleRatio(tankFigures(tank));
}

/**
 * Drain per litre of a draw that stands alone, from a full tank, with the tank full again after it.
 *
 * A draw that does not reach the restart pressure starts no filling: its litres are made up later,
 * at the drain of a whole filling from restart to stop. A larger draw is refilled at once.
 * @param pourL litres, above 0
 * @returns null for more than a full tank holds
 * @throws {BenchError} simulation-input
 */
export function isolatedTankRatio(tank: StorageTank, pourL: number): number | null {
  const figures = tankFigures(tank);
  const litres = checkNumber('pourL', pourL, ABOVE_ZERO);
  if (litres > figures.stopL) return null;
  if (figures.stopL - litres > figures.restartL) return cycleRatio(figures);
  const seconds = refillSeconds(figures, figures.stopL - litres, figures.stopL);
  return (figures.rejectLPerS * seconds) / litres;
}
