import { type LineDraws, lineDrainL } from '../drain-uncertainty/index.ts';

/** Pour sizes in litres between which two devices are not told apart. */
export interface BreakEvenRange {
  readonly lowL: number;
  /** Null: they are not told apart at any larger pour looked at. */
  readonly highL: number | null;
}

/** No household pour is larger, litres; beyond it the search ends. */
export const LARGEST_POUR_L = 100;
const STEPS = 40;

/**
 * The pour sizes around a break-even at which two devices are not told apart.
 *
 * At a pour size the drain of A less that of B is drawn; the two are told apart where the central
 * part of the draws, as large as the confidence, lies on one side of 0. From the break-even outward
 * the first sizes at which they are told apart are the ends; found by halving, so that a size beyond
 * at which they might be mixed up again is not looked for.
 * @param a draws of the lines, paired with those of `b`
 * @param pourL the break-even of the measured figures, above 0
 * @param largestL the largest pour looked at, above `pourL`: 100 L, or what a tank holds
 */
export function breakEvenRange(
  a: LineDraws,
  b: LineDraws,
  pourL: number,
  confidence: number,
  largestL: number = LARGEST_POUR_L,
): BreakEvenRange {
  const isMixed = (sizeL: number) => !areToldApart(a, b, sizeL, confidence);
  const apartL = largerApart(isMixed, pourL, largestL);
  return {
    lowL: isMixed(0) ? 0 : lastMixed(isMixed, pourL, 0),
    highL: apartL === null ? null : lastMixed(isMixed, pourL, apartL),
  };
}

/**
 * A larger pour at which the two are told apart: the largest, else half of it and so on, as the
 * largest pour of a tank is more than some of its draws hold.
 */
function largerApart(
  isMixed: (sizeL: number) => boolean,
  pourL: number,
  largestL: number,
): number | null {
  for (let sizeL = largestL; sizeL > pourL; sizeL /= 2) {
    if (!isMixed(sizeL)) return sizeL;
  }
  return null;
}

/** Halves the way from a size that is mixed up to one that is not. */
function lastMixed(isMixed: (sizeL: number) => boolean, from: number, to: number): number {
  let mixed = from;
  let apart = to;
  for (let step = 0; step < STEPS; step++) {
    const middle = (mixed + apart) / 2;
    if (isMixed(middle)) mixed = middle;
    else apart = middle;
  }
  return mixed;
}

function areToldApart(a: LineDraws, b: LineDraws, pourL: number, confidence: number): boolean {
  return isOneSided(
    a.ratio.length,
    (draw) => lineDrainL(a, draw, pourL) - lineDrainL(b, draw, pourL),
    confidence,
  );
}

/** True where the central part of the draws of a difference lies on one side of 0. */
export function isOneSided(
  draws: number,
  difference: (draw: number) => number,
  confidence: number,
): boolean {
  let above = 0;
  let below = 0;
  for (let draw = 0; draw < draws; draw++) {
    const value = difference(draw);
    if (value > 0) above++;
    else if (value < 0) below++;
  }
  const most = ((1 - confidence) / 2) * draws;
  return draws > 0 && Math.min(draws - above, draws - below) < most;
}
