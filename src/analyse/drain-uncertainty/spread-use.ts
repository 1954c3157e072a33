import type { Bench, Spread, WaterUseRow } from '../../model/index.ts';
import { normalQuantile } from '../../statistics/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import type { WaterScenario } from '../water-scenarios.ts';
import type { WaterUse, WaterUseFact } from '../water-use.ts';
import { reportedYardsticks } from '../yardsticks/index.ts';
import { type DeviceDraws, deviceDraws, scatterDraws } from './device-draws.ts';
import { type BenchUncertainty, benchUncertainty } from './device-uncertainty.ts';
import { type DeviceYears, deviceYears } from './device-years.ts';
import { ranged } from './ranged.ts';

/** Which figures get a range, and how. */
export interface SpreadOptions {
  readonly seed: number;
  /** 0: no ranges. */
  readonly draws: number;
  /** Left out: all. Leaving one out changes no range of another. */
  readonly keeps?: (fact: WaterUseFact) => boolean;
}

/** How far the work has come, as a fraction. */
export interface SpreadProgress {
  readonly done: number;
  readonly scenario: string;
}

/** A fact with its ranges, and the draws behind them. */
export interface SpreadFact extends WaterUseFact {
  readonly spread: UseDraws | null;
}

/** Columns of one figure a draw, with what was drawn for it. */
export interface UseDraws {
  readonly inputs: DeviceDraws;
  /** The pour size of the year a draw uses, as a multiple of the scenario's. */
  readonly pourFactor: Float64Array;
  readonly totalDrainRatio: Float64Array;
  /** Where the water of each draw went. */
  readonly years: DeviceYears;
}

/** Years of a scenario whose pours are the same each year: they differ in pour size only. */
const YEARS_ALIKE = 40;

/** What the draws of one scenario go through, device by device. */
interface Playing {
  readonly fact: WaterUseFact;
  readonly inputs: DeviceDraws;
  readonly play: (year: number) => void;
  readonly years: DeviceYears;
}

/**
 * Ranges of water use by Monte Carlo: what the bench leaves open in drain ratio, drain per start,
 * flush volumes and pour size, and, where pours are random, how years differ.
 *
 * Each scenario is played for a number of years, every one with a pour size of its own (lognormal,
 * taken at the middles of parts of equal probability) and, where pours are random, with pours of its
 * own; all devices go through the same years. Each draw takes one of these years in turn and its own
 * ratio, drain per start and flush volumes. Ends are the quantiles that leave half of what the
 * confidence leaves out on each side; a range always holds its estimate, which is the one year played
 * with the measured figures.
 *
 * A tank that tanks.csv describes is played with its own drawn figures. One that it does not gets no
 * range: its ratio holds for one draw size.
 * @returns the facts in their order, those not kept as they were; yields between steps of the work
 * Source: JCGM 101:2008, propagation of distributions by a Monte Carlo method; stratified sampling.
 */
export function* spreadSteps(
  bench: Bench,
  use: WaterUse,
  options: SpreadOptions,
): Generator<SpreadProgress, SpreadFact[]> {
  const { seed, draws, keeps = () => true } = options;
  const wanted = use.facts.filter(
    (fact) => draws > 0 && fact.simulated !== null && !fact.drain.hasTank && keeps(fact),
  );
  const uncertainty = benchUncertainty(bench, use.drains);
  const drawn = drawsOf(uncertainty, draws, seed);
  const done = new Map<WaterUseFact, SpreadFact>();
  const { confidence } = bench.settings;
  for (const [at, scenario] of use.scenarios.entries()) {
    const facts = wanted.filter((fact) => fact.scenario === scenario);
    if (facts.length === 0) continue;
    const years = Math.min(draws, scenario.isRandom ? bench.settings.water_use.years : YEARS_ALIKE);
    const pourFactor = pourFactors(bench.settings.water_use.pour_size_spread, years);
    const household = scenario.years();
    const playing = facts.flatMap((fact) => playingOf(fact, scenario, household, years, drawn));
    for (const [year, factor] of pourFactor.entries()) {
      household.draw(year, factor);
      for (const each of playing) each.play(year);
      yield { done: (at + (year + 1) / years) / use.scenarios.length, scenario: scenario.name };
    }
    for (const each of playing) done.set(each.fact, spreadOf(each, pourFactor, confidence));
  }
  return use.facts.map((fact) => done.get(fact) ?? { ...fact, spread: null });
}

/** The same at one go. */
export function spreadUse(bench: Bench, use: WaterUse, options: SpreadOptions): SpreadFact[] {
  const steps = spreadSteps(bench, use, options);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** Draws of a device, made when first asked for: its scenarios share them. */
export function drawsOf(
  uncertainty: BenchUncertainty,
  draws: number,
  seed: number,
): (drain: DeviceDrain) => DeviceDraws {
  const scatter = scatterDraws(uncertainty, draws, seed);
  const known = new Map<DeviceDrain, DeviceDraws>();
  return (drain) => {
    const found = known.get(drain) ?? deviceDraws(drain, uncertainty, scatter, seed);
    known.set(drain, found);
    return found;
  };
}

function playingOf(
  fact: WaterUseFact,
  scenario: WaterScenario,
  household: ReturnType<WaterScenario['years']>,
  years: number,
  drawn: (drain: DeviceDrain) => DeviceDraws,
): Playing[] {
  const { model } = fact.drain;
  if (model === null) return [];
  const { endS, clockAtStartS } = scenario;
  const inputs = drawn(fact.drain);
  const played = deviceYears(model, inputs, { endS, clockAtStartS }, years);
  return [
    {
      fact,
      inputs,
      play: (year) => played.play(year, household.pours(model.cleanFlowLPerMin)),
      years: played,
    },
  ];
}

/** Lognormal factors with mean 1, at the middles of parts of equal probability. */
export function pourFactors(relative: number, count: number): Float64Array {
  const sigma = Math.sqrt(Math.log1p(relative * relative));
  return Float64Array.from({ length: count }, (_, year) =>
    Math.exp(sigma * normalQuantile((year + 0.5) / count) - (sigma * sigma) / 2),
  );
}

function spreadOf(playing: Playing, factors: Float64Array, confidence: number): SpreadFact {
  const { fact, inputs, years } = playing;
  const draws = inputs.ratio.length;
  const { days } = fact.scenario;
  const column = () => new Float64Array(draws);
  const clean = column();
  const producing = column();
  const flushed = column();
  const flushes = column();
  const totalDrainRatio = column();
  const share = column();
  const yearly = column();
  const pourFactor = column();
  for (let draw = 0; draw < draws; draw++) {
    const { year, cleanL, producingL, flushL, flushes: count } = years.of(draw);
    const drainL = producingL + flushL;
    clean[draw] = cleanL / days;
    producing[draw] = producingL / days;
    flushed[draw] = flushL / days;
    flushes[draw] = count / days;
    totalDrainRatio[draw] = drainL / cleanL;
    share[draw] = cleanL / (cleanL + drainL);
    yearly[draw] = (drainL / days) * 365;
    pourFactor[draw] = factors[year] as number;
  }
  const range = ({ estimate }: Spread, values: Float64Array) =>
    ranged(estimate, values, confidence);
  const total_drain_ratio = range(fact.row.total_drain_ratio, totalDrainRatio);
  const recovery = range(fact.row.recovery, share);
  const row: WaterUseRow = {
    ...fact.row,
    clean_L_per_day: range(fact.row.clean_L_per_day, clean),
    producing_drain_L_per_day: range(fact.row.producing_drain_L_per_day, producing),
    flush_drain_L_per_day: range(fact.row.flush_drain_L_per_day, flushed),
    flushes_per_day: range(fact.row.flushes_per_day, flushes),
    total_drain_ratio,
    recovery,
    drain_L_per_year: range(fact.row.drain_L_per_year, yearly),
    yardsticks: reportedYardsticks(fact.drain, { total_drain_ratio, recovery }),
  };
  return { ...fact, row, spread: { inputs, pourFactor, totalDrainRatio, years } };
}
