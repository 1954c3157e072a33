import { type Costs, computeCosts, costSeries } from '../analyse/costs/index.ts';
import { BenchError } from '../findings/index.ts';
import { type Bench, type CostCurveRow, STANDARD } from '../model/index.ts';
import { readCostSettings } from '../normalise/index.ts';
import { costChart } from '../report/charts/cost-chart.ts';
import type { Chart } from '../report/charts/draw-svg.ts';
import type { Outcome } from '../report/index.ts';
import { costsViews } from '../report/views/costs-view.ts';
import { benchSpread } from './bench-facts.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters } from './filters.ts';
import { readBench } from './read-bench.ts';
import { toldProgress, untold } from './told-progress.ts';
import { drawCount, rangeSettings, seedOf, type WaterUseOptions } from './water-use-options.ts';

const costsOf = new WeakMap<Bench, Map<string, Costs>>();

/** The costs of a bench, before any filter, computed once for a seed and a number of draws. */
export function benchCosts(bench: Bench, options: WaterUseOptions = {}): Costs {
  const byKey = costsOf.get(bench) ?? new Map<string, Costs>();
  const seed = seedOf(bench, options);
  const draws = drawCount(bench, options);
  const key = `${seed} ${draws}`;
  const known =
    byKey.get(key) ??
    computeCosts(
      bench,
      untold(benchSpread(bench, seed, draws)),
      readCostSettings(bench.settings).value,
    );
  costsOf.set(bench, byKey.set(key, known));
  return known;
}

/**
 * Cost of owning each device in each scenario: rows of `costs/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function costs(bench: Bench, options: WaterUseOptions = {}): Outcome {
  const keep = checkFilters(bench, options);
  const { facts, ranges, findings } = benchCosts(bench, options);
  const kept = facts
    .map(({ row }) => row)
    .filter(
      (row) => keep.keepsDevice(row.device, row.variant) && keep.keepsScenario(row.scenario ?? ''),
    );
  const isWholeBench = (options.scenarios ?? []).length === 0;
  const keptRanges = isWholeBench
    ? ranges.filter((row) => keep.keepsDevice(row.device, row.variant))
    : [];
  const { settings } = bench;
  return benchOutcome(bench, {
    schema: 'costs/1',
    settings: {
      tariffs: settings.tariffs ?? null,
      cost_horizon: settings.cost_horizon,
      discount_rate: settings.discount_rate,
      scenario_days: settings.scenario_days,
      seed: seedOf(bench, options),
      ...rangeSettings(bench, options),
      cost_ranges: 'those of water use, through part lives, tariffs and hours; prices as stated',
      year: '365 days of use; lifetimes in years of 365.2425 days',
      parts:
        'the earlier of time and capacity, capacity against clean water; the first set belongs to ' +
        'the purchase, none is bought at the very end',
      discounting: 'purchases as they fall due, running costs at the end of each year',
      ...filterSettings(options),
    },
    rows: [...kept, ...keptRanges],
    findings,
    views: costsViews(kept, keptRanges),
  });
}

/**
 * Money spent over the years in one scenario: rows of `cost-over-time/1`, the points of
 * {@link costsChart}.
 *
 * @param scenario null: none, and no rows
 * @throws {BenchError} filter-unknown
 */
export function costsOverTime(
  bench: Bench,
  scenario: string | null,
  options: WaterUseOptions = {},
): Outcome {
  const scenarios = scenario === null ? [] : [scenario];
  const keep = checkFilters(bench, { ...options, scenarios });
  const { facts, findings } = benchCosts(bench, options);
  const currency = facts[0]?.row.currency ?? null;
  const rows = scenarios
    .flatMap((name) => costSeries(facts, name).map((series) => ({ ...series, scenario: name })))
    .filter(({ device, variant }) => keep.keepsDevice(device, variant))
    .flatMap(({ device, variant, scenario: name, isWhole, points }) =>
      points.map(({ year, amount }): CostCurveRow => {
        return { device, variant, scenario: name, currency, year, spent: amount, whole: isWhole };
      }),
    );
  return benchOutcome(bench, {
    schema: 'cost-over-time/1',
    settings: {
      cost_horizon: bench.settings.cost_horizon,
      scenario,
      seed: seedOf(bench, options),
      course: 'purchase at 0, parts as they are bought, the rest evenly; not discounted',
      ...filterSettings(options),
    },
    rows,
    findings,
    views: [],
  });
}

/**
 * Money spent over the years on every device in one scenario, as an SVG.
 *
 * A device without a purchase price has no curve; a curve that leaves something out says so.
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown; currency-mixed
 */
export async function costsChart(
  bench: Bench,
  scenario: string,
  options: WaterUseOptions = {},
): Promise<Chart> {
  const keep = checkFilters(bench, { ...options, scenarios: [scenario] });
  const { facts, findings } = benchCosts(bench, options);
  const mixed = findings.find((item) => item.level === 'error');
  if (mixed !== undefined) {
    throw new BenchError(mixed.code, mixed.message, mixed.remedy, mixed.place);
  }
  const names = new Map(bench.tables.devices.map(({ values }) => [values.device, values.name]));
  const curves = costSeries(facts, scenario)
    .filter(({ device, variant }) => keep.keepsDevice(device, variant))
    .map(({ device, variant, isWhole, points }) => {
      const name = names.get(device) ?? device;
      return { name: variant === STANDARD ? name : `${name} (${variant})`, isWhole, points };
    });
  return costChart({
    title: `What each device has cost by when: ${scenario}`,
    currency: facts[0]?.row.currency ?? '',
    curves,
  });
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const refused = refusedResult(bench);
  if (refused !== null) return refused;
  await call.io.progress('playing the scenarios');
  const { options, io } = call;
  await toldProgress(
    io,
    'drawing',
    benchSpread(bench, seedOf(bench, options), drawCount(bench, options)),
  );
  return doneResult(costs(bench, options));
}
