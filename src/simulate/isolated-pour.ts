import { checkDevice } from './check-device.ts';
import { ABOVE_ZERO, checkNumber, FINITE } from './check-number.ts';
import { drainPerFlush, isByVolume } from './compile-flush-rules.ts';
import type { DrainDevice, FlushRule } from './drain-device.ts';

/** Drain of one pour as a line in its volume: `ratio` × volume + `fixedL`. */
export interface PourLine {
  /** Litres drained per clean litre, however large the pour. */
  readonly ratio: number;
  /** Litres drained per pour, however small. */
  readonly fixedL: number;
}

/** The line of a pour with a long pause before and after it, and what it leaves out. */
export interface IsolatedPour extends PourLine {
  /** Rules that stay out in whole (by time, at power-on) or in part (repeats), in row order. */
  readonly excludedRules: readonly string[];
}

/**
 * What one pour drains when the pauses before and after it are long.
 *
 * Every `start` rule counts once before it, every `idle` rule once after it. A `produced` rule, and
 * a `dump` by volume, adds its drained volume per `afterL` to the ratio. Flushes that do not belong
 * to a pour stay out and are named: `interval`, `power-on`, `dump` by time, and the repeats of a
 * repeating `idle` rule, whose first flush counts. Quiet hours and least intervals are left aside:
 * the pour is taken to fall outside them. A flush with clean water also drains what making its
 * product drains, as in `simulateDrain`.
 *
 * @param device litres and seconds
 * @throws {BenchError} simulation-input
 * @example
 * isolatedPourDrain({
 *   drainRatio: 0.5,
 *   flushRules: [{ rule: 'after use', trigger: 'idle', afterS: 600, volumeL: 1.4 }],
 * }) // { ratio: 0.5, fixedL: 1.4, excludedRules: [] }
 */
export function isolatedPourDrain(device: DrainDevice): IsolatedPour {
  checkDevice(device);
  let ratio = device.drainRatio;
  let fixedL = device.perStartL ?? 0;
  const excludedRules: string[] = [];
  for (const rule of device.flushRules) {
    const drainL = drainPerFlush(rule, device.drainRatio);
    if (isByVolume(rule)) ratio += drainL / (rule.afterL ?? Number.POSITIVE_INFINITY);
    else if (rule.trigger === 'idle' || rule.trigger === 'start') fixedL += drainL;
    if (goesOnWithoutPour(rule)) excludedRules.push(rule.rule);
  }
  return { ratio, fixedL, excludedRules };
}

/** True for rules that spend water, first or again, without a pour to set them off. */
function goesOnWithoutPour(rule: FlushRule): boolean {
  switch (rule.trigger) {
    case 'interval':
    case 'power-on':
      return true;
    case 'dump':
      return !isByVolume(rule);
    case 'idle':
      return rule.repeat === true;
    case 'start':
    case 'produced':
      return false;
  }
}

/**
 * Litres drained per clean litre of one isolated pour.
 *
 * @param isolated from `isolatedPourDrain`, or from a fit of measured pours
 * @param pourL clean litres of the pour, above 0
 * @throws {BenchError} simulation-input
 * @example isolatedPourRatio({ ratio: 0.5, fixedL: 1.5 }, 0.25) // 6.5
 */
export function isolatedPourRatio(isolated: PourLine, pourL: number): number {
  checkLine(isolated);
  return isolated.ratio + isolated.fixedL / checkNumber('pourL', pourL, ABOVE_ZERO);
}

/**
 * The pour size at which two devices drain the same per isolated pour.
 *
 * On one side of it the first device drains less, on the other side the second.
 * @returns litres; null where no pour size above 0 makes them equal, and where all do
 * @throws {BenchError} simulation-input when a figure is not a finite number
 * @example breakEvenPourL({ ratio: 1, fixedL: 0.25 }, { ratio: 0.5, fixedL: 1.5 }) // 2.5
 */
export function breakEvenPourL(a: PourLine, b: PourLine): number | null {
  checkLine(a);
  checkLine(b);
  const pourL = (a.fixedL - b.fixedL) / (b.ratio - a.ratio);
  return pourL > 0 && pourL < Number.POSITIVE_INFINITY ? pourL : null;
}

function checkLine(line: PourLine): void {
  checkNumber('ratio', line.ratio, FINITE);
  checkNumber('fixedL', line.fixedL, FINITE);
}
