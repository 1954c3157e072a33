import {
  SCENARIO_FIGURES,
  traceDrainRatio,
  traceReduction,
  traceScenario,
} from '../compare/index.ts';
import { BenchError, closestWord, type Finding } from '../findings/index.ts';
import { type Bench, STANDARD, type TraceRow } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { traceView } from '../report/views/index.ts';
import { benchReductions, benchWaterUse } from './bench-facts.ts';
import { benchOutcome, doneResult, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { allMeasures } from './compare.ts';
import { checkFilters } from './filters.ts';
import { readBench } from './read-bench.ts';
import { reductionSettings } from './reduction-settings.ts';
import { seedOf, waterUseSettings } from './water-use.ts';

export interface TraceOptions {
  /** The state of the device; standard where it is left out. */
  readonly variant?: string;
  readonly seed?: number | null;
}

/**
 * How one figure came about, back to file, line and column: rows of `trace/1`.
 *
 * @param bench a bench without errors
 * @param device a device of the bench
 * @param measure an id such as `reduction.lead`, `water-use.drain-ratio` or
 * `water-use.total-drain-ratio.family`
 * @throws {BenchError} filter-unknown, measure-unknown
 */
export function trace(
  bench: Bench,
  device: string,
  measure: string,
  options: TraceOptions = {},
): Outcome {
  const variant = options.variant ?? STANDARD;
  checkFilters(bench, { devices: [device], variants: [variant] });
  const traced = stepsOf(bench, device, variant, measure, options);
  return benchOutcome(bench, {
    schema: 'trace/1',
    settings: {
      ...reductionSettings(bench),
      ...waterUseSettings(bench, options),
      device,
      variant,
      measure,
    },
    rows: traced.rows,
    findings: traced.findings,
    views: [traceView(traced.rows)],
  });
}

function stepsOf(
  bench: Bench,
  device: string,
  variant: string,
  measure: string,
  options: TraceOptions,
): { readonly rows: readonly TraceRow[]; readonly findings: readonly Finding[] } {
  const [subject = '', id = '', ...rest] = measure.split('.');
  if (subject === 'reduction') {
    const { facts, findings } = benchReductions(bench);
    const own = facts.filter(
      ({ row }) =>
        row.device === device && row.variant === variant && row.analyte === measure.slice(10),
    );
    if (own.length > 0) return { rows: traceReduction(bench, own), findings };
  }
  if (subject === 'water-use') {
    const use = benchWaterUse(bench, seedOf(bench, options));
    const { findings } = use;
    const drain = use.drains.find(
      (item) => item.device.values.device === device && item.variant === variant,
    );
    if (id === 'drain-ratio' && rest.length === 0 && drain !== undefined) {
      return { rows: traceDrainRatio(drain), findings };
    }
    const fact = use.facts.find(
      (item) => item.drain === drain && item.row.scenario === rest.join('.'),
    );
    if (fact !== undefined && isScenarioFigure(id)) {
      return { rows: traceScenario(fact, id), findings };
    }
  }
  throw unknownMeasure(bench, device, variant, measure, options);
}

function isScenarioFigure(id: string): id is keyof typeof SCENARIO_FIGURES {
  return Object.hasOwn(SCENARIO_FIGURES, id);
}

/** What can be traced. */
const TRACED = ['reduction.', 'water-use.'] as const;

function unknownMeasure(
  bench: Bench,
  device: string,
  variant: string,
  measure: string,
  options: TraceOptions,
): BenchError {
  const { measures } = allMeasures(bench, { ...options, draws: 0 });
  const ids = measures.flatMap(({ row }) =>
    row.device === device &&
    row.variant === variant &&
    TRACED.some((subject) => row.measure.startsWith(subject))
      ? row.measure
      : [],
  );
  const near = closestWord(measure, ids);
  return new BenchError(
    'measure-unknown',
    `"${measure}" is not a measure of ${device} (${variant}) that can be traced`,
    near === null
      ? 'name one such as reduction.lead or water-use.drain-ratio; `pourbench compare` lists them'
      : `did you mean "${near}"?`,
  );
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const refused = refusedResult(bench);
  if (refused !== null) return refused;
  const variant = call.options.variants[0];
  return doneResult(
    trace(bench, argument(call, 1), argument(call, 2), {
      ...(variant === undefined ? {} : { variant }),
      seed: call.options.seed,
    }),
  );
}
