import { type PanelPlan, panelTests, USUAL_PLAN } from '../analyse/panel/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { panelView } from '../report/views/panel-view.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters, type Filters } from './filters.ts';
import { readBench } from './read-bench.ts';

export interface PanelOptions extends Filters {
  /** What a panel is planned for. */
  readonly plan?: PanelPlan;
}

/**
 * Sensory tests by the exact binomial test: rows of `panel/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function panel(bench: Bench, options: PanelOptions = {}): Outcome {
  const keep = checkFilters(bench, options);
  const plan = options.plan ?? USUAL_PLAN;
  const { rows, findings } = panelTests(bench, plan);
  const kept = rows.filter((row) => keep.keepsDevice(row.device, 'standard'));
  const level = Number((1 - bench.settings.confidence).toPrecision(6));
  return benchOutcome(bench, {
    schema: 'panel/1',
    settings: {
      level,
      test: 'exact binomial, one-sided; paired tests two-sided too',
      planned_share: plan.share,
      planned_power: plan.power,
      ...filterSettings({ devices: options.devices ?? [] }),
    },
    rows: kept,
    findings,
    views: [
      panelView(
        kept,
        `Answers to plan for: to find, with a chance of ${plan.power * 100} %, that ` +
          `${plan.share * 100} % of people tell the waters apart, at a level of ${level}.`,
      ),
    ],
  });
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  return refusedResult(bench) ?? doneResult(panel(bench, { devices: call.options.devices }));
}
