import { isolatedPourDrain } from '../../simulate/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import type { DeviceDraws } from './device-draws.ts';

/** Draws of the line of a pour that stands alone: `ratio` × volume + `fixedL`. */
export interface LineDraws {
  readonly ratio: Float64Array;
  readonly fixedL: Float64Array;
}

/** The line of an isolated pour for every draw of a device's figures; null where it has no model. */
export function lineDraws(drain: DeviceDrain, inputs: DeviceDraws): LineDraws | null {
  const { model } = drain;
  if (model === null) return null;
  const draws = inputs.ratio.length;
  const lines = { ratio: new Float64Array(draws), fixedL: new Float64Array(draws) };
  for (let draw = 0; draw < draws; draw++) {
    const line = isolatedPourDrain({
      drainRatio: inputs.ratio[draw] as number,
      perStartL: inputs.perStartL[draw] as number,
      flushRules: model.flushRules.map((rule, row) => ({
        ...rule,
        volumeL: inputs.flushL[row]?.[draw] ?? rule.volumeL,
      })),
    });
    lines.ratio[draw] = line.ratio;
    lines.fixedL[draw] = line.fixedL;
  }
  return lines;
}
