import { findRoot } from './find-root.ts';
import { refuse, requireCount, requireInnerProbability, requirePositive } from './refuse-input.ts';

/** Tubes, wells or portions of one volume of the sample, and how many of them grew. */
export interface TubeSet {
  /** Volume of undiluted sample in each tube; any unit, the same for all sets. */
  readonly volume: number;
  readonly tubes: number;
  readonly positive: number;
}

/** A most probable number: organisms for each unit of volume. */
export interface MostProbableNumber {
  readonly method: string;
  readonly intervalMethod: string;
  readonly confidence: number;
  /** Null where no tube or every tube is positive: the likelihood has no finite top. */
  readonly estimate: number | null;
  /** Standard uncertainty of its natural logarithm, by the curvature of the likelihood; else null. */
  readonly uLog: number | null;
  /** 0 where no tube is positive. */
  readonly low: number;
  /** Infinity where every tube is positive. */
  readonly high: number;
}

const METHOD = 'maximum likelihood of independent tubes (Poisson)';
const EXACT = 'exact limits: outcomes ordered by their estimate, half of the error at each end';

/** Outcomes that are gone through one by one; more sets or tubes than this are refused. */
const MOST_OUTCOMES = 200_000;

/**
 * The most probable number of organisms behind the tubes of one sample, with exact limits.
 *
 * What: a tube of volume v stays negative with probability exp(-λ v). The estimate makes what was
 * seen most likely. The limits are those λ at which an outcome with an estimate as high, or as low,
 * has half of the error probability: they hold at least at the confidence, whatever λ is. With no
 * positive tube only the upper limit says something, with no negative one only the lower.
 * @param sets one entry a volume; sets of one volume may be given apart
 * @param confidence two-sided level, 0.95 unless given
 * @throws {BenchError} statistics-input for no tubes, a volume not above zero, counts that are no whole
 * numbers, more positive tubes than tubes, or more outcomes than can be gone through
 * Source: likelihood: W. G. Cochran (1950), Biometrics 6, 105-116; US FDA, Bacteriological Analytical
 * Manual, Appendix 2. Limits: inversion of two one-sided tests, as C. J. Clopper and E. S. Pearson
 * (1934) for a share; derived in docs/methods.md.
 * Checked by: tests/outside-checks/most-probable-number/
 * @example
 * mostProbableNumber([{ volume: 10, tubes: 3, positive: 2 }, { volume: 1, tubes: 3, positive: 1 },
 *   { volume: 0.1, tubes: 3, positive: 0 }]) // estimate 0.147: 15 in 100 mL
 */
export function mostProbableNumber(
  sets: readonly TubeSet[],
  confidence = 0.95,
): MostProbableNumber {
  requireTubes(sets);
  requireInnerProbability('the confidence', confidence);
  const miss = (1 - confidence) / 2;
  const seen = likeliest(sets);
  const said = { method: METHOD, intervalMethod: EXACT, confidence };
  const total = sets.reduce((sum, { volume, tubes }) => sum + volume * tubes, 0);
  if (seen === 0) {
    return { ...said, estimate: null, uLog: null, low: 0, high: -Math.log(miss) / total };
  }
  const outcomes = outcomesOf(sets);
  const atLeast = outcomes.filter(({ estimate }) => estimate >= seen * (1 - SAME));
  const low = limitOf((rate) => chanceOf(sets, atLeast, rate) - miss, total);
  if (seen === Number.POSITIVE_INFINITY) {
    return { ...said, estimate: null, uLog: null, low, high: Number.POSITIVE_INFINITY };
  }
  const atMost = outcomes.filter(({ estimate }) => estimate <= seen * (1 + SAME));
  const high = limitOf((rate) => miss - chanceOf(sets, atMost, rate), total);
  return { ...said, estimate: seen, uLog: uLogOf(sets, seen), low, high };
}

/** Two estimates closer than this, relative, are one: they differ by rounding only. */
const SAME = 1e-9;

function requireTubes(sets: readonly TubeSet[]): void {
  if (sets.length === 0) refuse('there are no tubes', 'give at least one set of tubes');
  let outcomes = 1;
  for (const { volume, tubes, positive } of sets) {
    requirePositive('the volume of a tube', volume);
    requireCount('the number of tubes', tubes, 1);
    requireCount('the number of positive tubes', positive, 0);
    if (positive > tubes) {
      refuse(`${positive} of ${tubes} tubes are positive`, 'count the positive tubes again');
    }
    outcomes *= tubes + 1;
  }
  if (outcomes > MOST_OUTCOMES) {
    refuse(`${outcomes} outcomes are possible`, 'leave out dilutions in which all tubes agree');
  }
}

/** The rate of greatest likelihood: 0 without a positive tube, Infinity without a negative one. */
function likeliest(sets: readonly TubeSet[]): number {
  const positive = sets.reduce((sum, set) => sum + set.positive, 0);
  const negativeVolume = sets.reduce(
    (sum, { volume, tubes, positive: grew }) => sum + volume * (tubes - grew),
    0,
  );
  if (positive === 0) return 0;
  if (negativeVolume === 0) return Number.POSITIVE_INFINITY;
  // Falls in the rate: from infinity at 0 to minus the negative volume. x v / (e^(λv) - 1) is at
  // most x / λ, so the root lies at or below positive / negativeVolume.
  const score = (rate: number): number =>
    sets.reduce(
      (sum, { volume, positive: grew }) =>
        grew === 0 ? sum : sum + (grew * volume) / Math.expm1(rate * volume),
      -negativeVolume,
    );
  const most = positive / negativeVolume;
  return findRoot(score, most * 1e-12, most * (1 + 1e-12));
}

/** From the curvature of the likelihood at its top: Σ x v² e^(λv) / (e^(λv) - 1)². */
function uLogOf(sets: readonly TubeSet[], rate: number): number {
  const information = sets.reduce((sum, { volume, positive }) => {
    const half = 2 * Math.sinh((rate * volume) / 2);
    return positive === 0 ? sum : sum + positive * (volume / half) ** 2;
  }, 0);
  return 1 / (rate * Math.sqrt(information));
}

interface TubeOutcome {
  readonly positive: readonly number[];
  readonly estimate: number;
}

/** Every number of positive tubes each set can have, with its estimate. */
function outcomesOf(sets: readonly TubeSet[]): TubeOutcome[] {
  const counts = sets.reduce<number[][]>(
    (before, { tubes }) =>
      before.flatMap((own) => Array.from({ length: tubes + 1 }, (_, grew) => [...own, grew])),
    [[]],
  );
  return counts.map((positive) => ({
    positive,
    estimate: likeliest(sets.map((set, at) => ({ ...set, positive: positive[at] ?? 0 }))),
  }));
}

/** Probability of any of the outcomes at a rate. */
function chanceOf(
  sets: readonly TubeSet[],
  outcomes: readonly TubeOutcome[],
  rate: number,
): number {
  const chances = sets.map(({ volume, tubes }) =>
    binomialChances(tubes, -Math.expm1(-rate * volume)),
  );
  return outcomes.reduce(
    (sum, { positive }) =>
      sum + positive.reduce((product, grew, at) => product * (chances[at]?.[grew] ?? 0), 1),
    0,
  );
}

/** Binomial probabilities of 0 to n successes. */
function binomialChances(n: number, p: number): number[] {
  let ways = 1;
  return Array.from({ length: n + 1 }, (_, k) => {
    if (k > 0) ways = (ways * (n - k + 1)) / k;
    return ways * p ** k * (1 - p) ** (n - k);
  });
}

/** Where a function that rises from below zero crosses it; searched in decades around 1 / total. */
function limitOf(rising: (rate: number) => number, total: number): number {
  let low = 1e-12 / total;
  let high = 1 / total;
  while (rising(high) < 0) {
    low = high;
    high *= 10;
  }
  return findRoot(rising, low, high);
}
