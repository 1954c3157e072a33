import { type PanelPlan, panelTests, USUAL_PLAN } from '../analyse/panel/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { panelView } from '../report/views/panel-view.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters, type Filters } from './filters.ts';
import { readShare } from './next-tests-options.ts';
import { readBench } from './read-bench.ts';

export interface PanelOptions extends Filters {
  /** What a panel is planned for. */
  readonly plan?: PanelPlan;
  /** The same as written: `20 %`; null or left out: the plan. */
  readonly tellers?: string | null;
  readonly power?: string | null;
}

/**
 * Sensory tests by the exact binomial test: rows of `panel/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown; number-outside for a share that is none
 */
export function panel(bench: Bench, options: PanelOptions = {}): Outcome {
  const keep = checkFilters(bench, options);
  const usual = options.plan ?? USUAL_PLAN;
  const { tellers, power } = options;
  const plan: PanelPlan = {
    share: tellers == null ? usual.share : readShare(tellers, '--tellers'),
    power: power == null ? usual.power : readShare(power, '--power'),
  };
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
        `Answers to plan for: to find, with a chance of ${percent(plan.power)} %, that ` +
          `${percent(plan.share)} % of people tell the waters apart, at a level of ${level}.`,
      ),
    ],
  });
}

const percent = (share: number): number => Number((share * 100).toPrecision(6));

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const { devices, tellers, power } = call.options;
  return refusedResult(bench) ?? doneResult(panel(bench, { devices, tellers, power }));
}
