import { type PourFlow, pourFlows } from '../analyse/index.ts';
import type { Bench, PourRow } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { poursView } from '../report/views/index.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters, type Filters } from './filters.ts';
import { readBench } from './read-bench.ts';

/** 8 US fluid ounces; exact (NIST Handbook 44, Appendix C). */
const US_CUP_L = 0.2365882365;
/** 231 cubic inches; exact (NIST Handbook 44, Appendix C). */
const US_GALLON_L = 3.785411784;

/**
 * Flow of clean water and the times to fill common vessels: rows of `pours/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function pours(bench: Bench, filters: Filters = {}): Outcome {
  const keep = checkFilters(bench, filters);
  const { flows, findings } = pourFlows(bench);
  const rows = flows
    .filter((flow) => keep.keepsDevice(flow.device, flow.variant))
    .map((flow) => pourRow(flow));
  return benchOutcome(bench, {
    schema: 'pours/1',
    settings: {
      flow: 'all volume / all time of the runs; of cumulative readings the last of the run',
      measures: bench.settings.measures ?? null,
      ...filterSettings(filters),
    },
    rows,
    findings,
    views: [poursView(rows)],
  });
}

export function pourRow(flow: PourFlow): PourRow {
  const runFlows = flow.runs.map((run) => (run.volumeL / run.timeS) * 60);
  const fill = (litres: number): number => (litres / flow.flowLPerMin) * 60;
  return {
    device: flow.device,
    variant: flow.variant,
    runs: flow.runs.length,
    pours: flow.runs.reduce((sum, run) => sum + run.pours.length, 0),
    volume_L: flow.volumeL,
    time_s: flow.timeS,
    flow_L_per_min: flow.flowLPerMin,
    lowest_run_L_per_min: Math.min(...runFlows),
    highest_run_L_per_min: Math.max(...runFlows),
    fill_glass_250_mL_s: fill(0.25),
    fill_carafe_1_L_s: fill(1),
    fill_us_cup_s: fill(US_CUP_L),
    fill_us_gallon_s: fill(US_GALLON_L),
  };
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const { devices, variants } = call.options;
  return refusedResult(bench) ?? doneResult(pours(bench, { devices, variants }));
}
