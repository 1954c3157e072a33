import {
  computeReductions,
  computeWaterUse,
  pourFlows,
  type ReductionFact,
  statementOptions,
} from '../analyse/index.ts';
import { type Measure, measuresOf, tellApart } from '../compare/index.ts';
import type { Finding } from '../findings/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { compareViews, measureRows, toldApartView } from '../report/views/index.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { type CheckedFilters, checkFilters } from './filters.ts';
import { feedWindowS } from './quantity-setting.ts';
import { readBench } from './read-bench.ts';
import { reductionSettings } from './reductions.ts';
import { seedOf, type WaterUseOptions, waterUseSettings } from './water-use.ts';

/**
 * All measures of all devices side by side: rows of `compare/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function compare(bench: Bench, options: WaterUseOptions = {}): Outcome {
  const keep = checkFilters(bench, options);
  const { measures, findings, reductions } = allMeasures(bench, options);
  const { equivalence_margin: margin } = bench.settings;
  const telling = { ...statementOptions(bench), margin };
  // Every device enters the comparison, so that a filter changes nothing but what is shown.
  const comparisons = tellApart(reductions, telling).filter(
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
      told_apart: {
        pairs: 'products on shared feeds, two-sided; Holm over the pairs of an analyte',
        equivalence_margin: margin,
      },
      events: 'ratio of arithmetic means over the events, natural feeds before spiked ones',
      ...filterSettings(options),
    },
    rows,
    findings,
    views: [
      ...compareViews(rows),
      ...(comparisons.length === 0 ? [] : [toldApartView(comparisons, telling)]),
    ],
  });
}

export function allMeasures(
  bench: Bench,
  options: WaterUseOptions,
): {
  readonly measures: readonly Measure[];
  readonly findings: readonly Finding[];
  readonly reductions: readonly ReductionFact[];
} {
  const reduced = computeReductions(bench, feedWindowS(bench));
  const waterUse = computeWaterUse(bench, seedOf(bench, options));
  const { flows } = pourFlows(bench);
  return {
    measures: measuresOf(bench, { reductions: reduced.facts, waterUse, flows }),
    findings: [...reduced.findings, ...waterUse.findings],
    reductions: reduced.facts,
  };
}

function keepsMeasure(keep: CheckedFilters, { row }: Measure): boolean {
  const [subject = '', ...rest] = row.measure.split('.');
  if (!keep.keepsDevice(row.device, row.variant)) return false;
  if (subject === 'reduction') return keep.keepsAnalyte(rest.join('.'));
  if (subject === 'water-use' && rest.length > 1)
    return keep.keepsScenario(rest.slice(1).join('.'));
  return true;
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const refused = refusedResult(bench);
  if (refused !== null) return refused;
  await call.io.progress('comparing the devices');
  return doneResult(compare(bench, call.options));
}
