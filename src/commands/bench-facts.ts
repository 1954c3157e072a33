import { claimTests } from '../analyse/claims/index.ts';
import {
  computeReductions,
  computeWaterUse,
  type SpreadFact,
  type SpreadProgress,
  spreadSteps,
  statementOptions,
  type WaterUse,
} from '../analyse/index.ts';
import { computeSums } from '../analyse/sums/index.ts';
import { type AnalyteComparison, type Margin, tellApart } from '../compare/index.ts';
import type { Bench } from '../model/index.ts';
import { feedWindowS } from './quantity-setting.ts';
import { readClaims } from './read-claims.ts';

/**
 * What several commands rest on, computed once for a bench: a bench never changes, and the notes ask
 * for the same facts many times.
 */
const reductionsOf = new WeakMap<Bench, ReturnType<typeof computeReductions>>();
const waterUseOf = new WeakMap<Bench, Map<number, WaterUse>>();
const spreadOf = new WeakMap<Bench, Map<string, readonly SpreadFact[]>>();
const comparisonsOf = new WeakMap<Bench, Map<string, readonly AnalyteComparison[]>>();

/** Every reduction of a bench, with its findings. */
export function benchReductions(bench: Bench): ReturnType<typeof computeReductions> {
  const known =
    reductionsOf.get(bench) ??
    computeReductions(bench, feedWindowS(bench), (facts) =>
      claimTests(bench, readClaims(bench).claims, facts, computeSums(bench, facts)),
    );
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

/**
 * The water use of a bench with its ranges, by seed and number of draws, in steps where it is not known
 * yet.
 */
export function* benchSpread(
  bench: Bench,
  seed: number,
  draws: number,
): Generator<SpreadProgress, readonly SpreadFact[]> {
  const known = knownSpread(bench, seed, draws);
  if (known !== null) return known;
  const facts = yield* spreadSteps(bench, benchWaterUse(bench, seed), { seed, draws });
  const byKey = spreadOf.get(bench) ?? new Map<string, readonly SpreadFact[]>();
  spreadOf.set(bench, byKey.set(`${seed} ${draws}`, facts));
  return facts;
}

/** The ranges of a bench where they were computed before; else null. */
export function knownSpread(
  bench: Bench,
  seed: number,
  draws: number,
): readonly SpreadFact[] | null {
  return spreadOf.get(bench)?.get(`${seed} ${draws}`) ?? null;
}

/** Which devices differ on which analyte, over all devices of the bench, at one margin. */
export function benchComparisons(bench: Bench, margin: Margin): readonly AnalyteComparison[] {
  const byMargin = comparisonsOf.get(bench) ?? new Map<string, readonly AnalyteComparison[]>();
  const key = JSON.stringify(margin);
  const known =
    byMargin.get(key) ??
    tellApart(benchReductions(bench).facts, { ...statementOptions(bench), margin });
  comparisonsOf.set(bench, byMargin.set(key, known));
  return known;
}
