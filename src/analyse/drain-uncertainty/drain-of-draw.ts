import type { DrainDevice, PlayedYears } from '../../simulate/index.ts';
import type { DeviceDraws } from './device-draws.ts';

/** Litres to drain of one played year with the figures of one draw, and the flushes in it. */
export function drainOfDraw(
  model: DrainDevice,
  inputs: DeviceDraws,
  draw: number,
  played: PlayedYears,
  year: number,
): { readonly producingL: number; readonly flushL: number; readonly count: number } {
  const ratio = inputs.ratio[draw] as number;
  const cleanL = played.cleanL[year] as number;
  const starts = played.starts[year] as number;
  let flushL = 0;
  let count = 0;
  for (const [row, rule] of model.flushRules.entries()) {
    const times = played.flushes[row]?.[year] ?? 0;
    const volumeL = inputs.flushL[row]?.[draw] ?? rule.volumeL;
    // Product that a flush spends has to be made, which drains too.
    const making = rule.water === 'clean' ? ratio : 0;
    flushL += times * volumeL * ((rule.drainFraction ?? 1) + making);
    count += times;
  }
  return {
    producingL: ratio * cleanL + (inputs.perStartL[draw] as number) * starts,
    flushL,
    count,
  };
}
