import {
  benchUncertainty,
  type DeviceDrain,
  type DeviceDraws,
  type DrainCurve,
  drainCurves,
  drawsOf,
  hasCurve,
  type LineDraws,
  lineDraws,
} from '../analyse/index.ts';
import type { Finding } from '../findings/index.ts';
import type { Bench } from '../model/index.ts';
import { benchWaterUse } from './bench-facts.ts';
import { checkFilters } from './filters.ts';
import { drawCount, seedOf, type WaterUseOptions } from './water-use-options.ts';

/** Draws of the figures of a device; null where none are asked for. */
export type InputsOf = (drain: DeviceDrain) => DeviceDraws | null;

/** Curves of the devices that the filters keep, with the draws behind them. */
export function keptCurves(
  bench: Bench,
  options: WaterUseOptions,
): {
  readonly curves: readonly DrainCurve[];
  readonly findings: readonly Finding[];
  readonly inputsOf: InputsOf;
} {
  const keep = checkFilters(bench, options);
  const seed = seedOf(bench, options);
  const use = benchWaterUse(bench, seed);
  const { curves, findings } = drainCurves(use.drains);
  const draws = drawCount(bench, options);
  const drawn = drawsOf(benchUncertainty(bench, use.drains), draws, seed);
  return {
    curves: curves.filter(({ drain }) =>
      keep.keepsDevice(drain.device.values.device, drain.variant),
    ),
    findings: [...use.findings, ...findings],
    inputsOf: (drain) => (draws === 0 ? null : drawn(drain)),
  };
}

/** Draws of the curve of a device; null without a curve or without draws. */
export function linesOf(curve: DrainCurve, inputsOf: InputsOf): LineDraws | null {
  const inputs = hasCurve(curve) ? inputsOf(curve.drain) : null;
  return inputs === null ? null : lineDraws(curve.drain, inputs);
}
