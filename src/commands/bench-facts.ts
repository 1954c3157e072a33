import {
  computeReductions,
  computeWaterUse,
  statementOptions,
  type WaterUse,
} from '../analyse/index.ts';
import { type AnalyteComparison, type TellingOptions, tellApart } from '../compare/index.ts';
import type { Bench } from '../model/index.ts';
import { feedWindowS } from './quantity-setting.ts';

/**
 * What several commands rest on, computed once for a bench: a bench never changes, and the notes ask
 * for the same facts many times.
 */
const reductionsOf = new WeakMap<Bench, ReturnType<typeof computeReductions>>();
const waterUseOf = new WeakMap<Bench, Map<number, WaterUse>>();
const comparisonsOf = new WeakMap<Bench, readonly AnalyteComparison[]>();

/** Every reduction of a bench, with its findings. */
export function benchReductions(bench: Bench): ReturnType<typeof computeReductions> {
  const known = reductionsOf.get(bench) ?? computeReductions(bench, feedWindowS(bench));
  reductionsOf.set(bench, known);
  return known;
}

/** The water use of every device in every scenario, by the seed of random pours. */
export function benchWaterUse(bench: Bench, seed: number): WaterUse {
  const bySeed = waterUseOf.get(bench) ?? new Map<number, WaterUse>();
  const known = bySeed.get(seed) ?? computeWaterUse(bench, seed);
  waterUseOf.set(bench, bySeed.set(seed, known));
  return known;
}

export function tellingOptions(bench: Bench): TellingOptions {
  return { ...statementOptions(bench), margin: bench.settings.equivalence_margin };
}

/** Which devices differ on which analyte, over all devices of the bench. */
export function benchComparisons(bench: Bench): readonly AnalyteComparison[] {
  const known =
    comparisonsOf.get(bench) ?? tellApart(benchReductions(bench).facts, tellingOptions(bench));
  comparisonsOf.set(bench, known);
  return known;
}
