import { flowFacts } from '../analyse/flow/index.ts';
import { computeIdleRise } from '../analyse/idle-rise/index.ts';
import { type Measure, measuresOf } from '../compare/index.ts';
import type { Finding } from '../findings/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { compareViews, measureRows, toldApartView } from '../report/views/index.ts';
import { benchComparisons, benchReductions, benchSpread, benchWaterUse } from './bench-facts.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { benchCosts } from './costs.ts';
import { type CheckedFilters, checkFilters } from './filters.ts';
import { readBench } from './read-bench.ts';
import { reductionSettings } from './reduction-settings.ts';
import {
  marginOf,
  type ToldApartOptions,
  tellingSettings,
  toldApart,
  toldApartGroups,
} from './tell-apart.ts';
import { toldProgress, untold } from './told-progress.ts';
import {
  drawCount,
  rangeSettings,
  seedOf,
  type WaterUseOptions,
  waterUseSettings,
} from './water-use-options.ts';

export interface CompareOptions extends WaterUseOptions, ToldApartOptions {}

/**
 * All measures of all devices side by side: rows of `compare/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown, option-unknown for the margin
 */
export function compare(bench: Bench, options: CompareOptions = {}): Outcome {
  const keep = checkFilters(bench, options);
  const { measures, findings } = allMeasures(bench, options);
  const margin = marginOf(bench, options);
  // Every device enters the comparison, so that a filter changes nothing but what is shown.
  const comparisons = benchComparisons(bench, margin).filter(
    ({ analyte, devices }) =>
      keep.keepsAnalyte(analyte.key) &&
      devices.some(({ device, variant }) => keep.keepsDevice(device, variant)),
  );
  const rows = measureRows(measures.filter((measure) => keepsMeasure(keep, measure)));
  return benchOutcome(bench, {
    schema: 'compare/1',
    settings: {
      ...reductionSettings(bench),
      ...waterUseSettings(bench, options),
      ...tellingSettings(margin),
      ...rangeSettings(bench, options),
      events:
        'ratio of arithmetic means over the events, natural feeds before spiked ones; a pair that ' +
        'leaves everything open stays out where another says something',
      idle_rise: 'ranges of readings from instruments.tds_tolerance and half of the last digit',
      ...filterSettings(options),
    },
    rows,
    findings,
    views: [
      ...compareViews(rows),
      ...(comparisons.length === 0
        ? []
        : [toldApartView(comparisons, { confidence: bench.settings.confidence, margin })]),
    ],
  });
}

export function allMeasures(
  bench: Bench,
  options: WaterUseOptions,
): {
  readonly measures: readonly Measure[];
  readonly findings: readonly Finding[];
} {
  const reduced = benchReductions(bench);
  const waterUse = benchWaterUse(bench, seedOf(bench, options));
  const draws = drawCount(bench, options);
  const uses = untold(benchSpread(bench, seedOf(bench, options), draws));
  return {
    measures: measuresOf(bench, {
      reductions: reduced.facts,
      drains: waterUse.drains,
      uses,
      flows: flowFacts(bench).facts,
      costs: benchCosts(bench, options).facts.map(({ row }) => row),
      idleRise: computeIdleRise(bench, waterUse, null).rows,
    }),
    findings: [...reduced.findings, ...waterUse.findings],
  };
}

function keepsMeasure(keep: CheckedFilters, { row }: Measure): boolean {
  const [subject = '', ...rest] = row.measure.split('.');
  if (!keep.keepsDevice(row.device, row.variant)) return false;
  if (subject === 'reduction') return keep.keepsAnalyte(rest.join('.'));
  const isOfScenario = subject === 'water-use' || subject === 'costs' || rest[0] === 'mean';
  return rest.length < 2 || !isOfScenario || keep.keepsScenario(rest.slice(1).join('.'));
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const refused = refusedResult(bench);
  if (refused !== null) return refused;
  await call.io.progress('comparing the devices');
  const { toldApart: wantsPairs, groups: wantsGroups } = call.options;
  if (wantsPairs) return doneResult(toldApart(bench, call.options));
  if (wantsGroups) return doneResult(toldApartGroups(bench, call.options));
  const { options, io } = call;
  await toldProgress(
    io,
    'drawing',
    benchSpread(bench, seedOf(bench, options), drawCount(bench, options)),
  );
  return doneResult(compare(bench, options));
}
