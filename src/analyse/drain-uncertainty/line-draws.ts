import { isolatedPourDrain, isolatedTankRatio } from '../../simulate/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import type { DeviceDraws } from './device-draws.ts';

/**
 * Draws of what a pour that stands alone drains: `ratio` × volume + `fixedL`, of a tank with the
 * refill of the pour in place of production.
 */
export interface LineDraws {
  readonly ratio: Float64Array;
  readonly fixedL: Float64Array;
  /** Drain of a refill, litres; NaN for more than the full tank holds. Null without a tank. */
  readonly refillL: ((draw: number, pourL: number) => number) | null;
}

/** The line of an isolated pour for every draw of a device's figures; null where it has no model. */
export function lineDraws(drain: DeviceDrain, inputs: DeviceDraws): LineDraws | null {
  const { model } = drain;
  if (model === null) return null;
  const { tank } = inputs;
  const draws = inputs.ratio.length;
  const ratio = new Float64Array(draws);
  const fixedL = new Float64Array(draws);
  for (let draw = 0; draw < draws; draw++) {
    const drainRatio = inputs.ratio[draw] as number;
    const line = isolatedPourDrain({
      drainRatio,
      perStartL: inputs.perStartL[draw] as number,
      flushRules: model.flushRules.map((rule, row) => ({
        ...rule,
        volumeL: inputs.flushL[row]?.[draw] ?? rule.volumeL,
      })),
    });
    ratio[draw] = tank === null ? line.ratio : line.ratio - drainRatio;
    fixedL[draw] = line.fixedL;
  }
  if (tank === null) return { ratio, fixedL, refillL: null };
  const { tanks, rejectFactor } = tank;
  const refillL = (draw: number, pourL: number): number => {
    const each = tanks[draw % tanks.length];
    if (each === undefined || pourL === 0) return 0;
    const refill = isolatedTankRatio(each, pourL);
    return refill === null ? Number.NaN : refill * pourL * (rejectFactor[draw] as number);
  };
  return { ratio, fixedL, refillL };
}

/** Litres to drain of a pour that stands alone, with the figures of one draw. */
export function lineDrainL(
  { ratio, fixedL, refillL }: LineDraws,
  draw: number,
  pourL: number,
): number {
  const refill = refillL === null ? 0 : refillL(draw, pourL);
  return refill + (ratio[draw] as number) * pourL + (fixedL[draw] as number);
}
