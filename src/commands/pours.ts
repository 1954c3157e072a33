import { type FlowFact, flowFacts } from '../analyse/flow/index.ts';
import type { Bench, PourRow } from '../model/index.ts';
import type { Outcome } from '../report/index.ts';
import { poursViews } from '../report/views/pours-view.ts';
import { benchOutcome, doneResult, filterSettings, refusedResult } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { checkFilters, type Filters } from './filters.ts';
import { idleRise } from './idle-rise.ts';
import { readBench } from './read-bench.ts';

/** 8 US fluid ounces; exact (NIST Handbook 44, Appendix C). */
const US_CUP_L = 0.2365882365;
/** 231 cubic inches; exact (NIST Handbook 44, Appendix C). */
const US_GALLON_L = 3.785411784;
const MINUTES_PER_DAY = 1440;

/**
 * Flow of clean water and the times to fill common vessels: rows of `pours/1`.
 *
 * @param bench a bench without errors
 * @throws {BenchError} filter-unknown
 */
export function pours(bench: Bench, filters: Filters = {}): Outcome {
  const keep = checkFilters(bench, filters);
  const { facts, findings } = flowFacts(bench);
  const rows = facts.filter(({ flow }) => keep.keepsDevice(flow.device, flow.variant)).map(pourRow);
  return benchOutcome(bench, {
    schema: 'pours/1',
    settings: {
      flow: 'all volume / all time of the runs; of cumulative readings the last of the run',
      confidence: bench.settings.confidence,
      instruments: { ...bench.settings.instruments },
      uncertainty:
        'the larger of the scatter of repeats and the errors of readings and stopwatch, with what ' +
        'vessel or scale share; Student t by the effective degrees of freedom (GUM G.2b)',
      first_rush: 'a first split of at most 1.5 s',
      standardised:
        '25 degC and 50 psi by the flow equation of ASTM D4516 with both common temperature ' +
        'factors; solids and recovery of the bench, no pressure loss along the membrane',
      measures: bench.settings.measures ?? null,
      ...filterSettings(filters),
    },
    rows,
    findings,
    views: poursViews(rows),
  });
}

function pourRow(fact: FlowFact): PourRow {
  const { flow, uncertainty, production } = fact;
  const { rated_flow, rated_production } = fact.device.values;
  const runFlows = flow.runs.map((run) => (run.volumeL / run.timeS) * 60);
  const fill = (litres: number): number => (litres / flow.flowLPerMin) * 60;
  const fillRange = (litres: number) => {
    if (uncertainty === null) return null;
    const { low, high } = uncertainty.range;
    return { low_s: (litres / high) * 60, high_s: low > 0 ? (litres / low) * 60 : null };
  };
  const share = (measured: number | undefined, stated: number | undefined): number | null =>
    measured === undefined || stated === undefined ? null : measured / stated;
  const advertisedL =
    rated_production === null ? undefined : rated_production.value * MINUTES_PER_DAY;
  const made = production?.from === 'pours' ? (uncertainty?.range ?? null) : null;
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
    flow_uncertainty: uncertaintyKeys(uncertainty),
    fill_range_glass_250_mL: fillRange(0.25),
    fill_range_carafe_1_L: fillRange(1),
    fill_range_us_cup: fillRange(US_CUP_L),
    fill_range_us_gallon: fillRange(US_GALLON_L),
    ...courseKeys(fact),
    advertised_flow_L_per_min: rated_flow?.value ?? null,
    share_of_advertised_flow: share(flow.flowLPerMin, rated_flow?.value),
    production_L_per_day: production?.litres ?? null,
    production_low_L_per_day: made === null ? null : Math.max(0, made.low) * MINUTES_PER_DAY,
    production_high_L_per_day: made === null ? null : made.high * MINUTES_PER_DAY,
    production_from: production?.from ?? null,
    advertised_production_L_per_day: advertisedL ?? null,
    share_of_advertised_production: share(production?.litres, advertisedL),
    usable_tank_L: fact.usableTankL,
  };
}

function uncertaintyKeys(uncertainty: FlowFact['uncertainty']): PourRow['flow_uncertainty'] {
  if (uncertainty === null) return null;
  const { range, parts, restsOn } = uncertainty;
  return {
    low_L_per_min: Math.max(0, range.low),
    high_L_per_min: range.high,
    standard_L_per_min: range.u,
    degrees_of_freedom: Number.isFinite(range.degreesOfFreedom) ? range.degreesOfFreedom : null,
    scatter_L_per_min: parts.scatter,
    reading_L_per_min: parts.reading,
    stopwatch_L_per_min: parts.stopwatch,
    vessel_L_per_min: parts.vessel,
    rests_on: restsOn,
  };
}

/** How the flow repeats, starts, runs and settles, and what it would be under standard conditions. */
function courseKeys(
  fact: FlowFact,
): Pick<
  PourRow,
  'repeats' | 'first_rush' | 'decline' | 'decline_low' | 'decline_high' | 'settled' | 'standardised'
> {
  const { repeats, rush, decline, settled, standard } = fact;
  return {
    repeats:
      repeats === null
        ? null
        : {
            n: repeats.n,
            mean_L_per_min: repeats.mean,
            sd_L_per_min: repeats.sd,
            low_L_per_min: repeats.low,
            high_L_per_min: repeats.high,
          },
    first_rush:
      rush === null
        ? null
        : {
            runs: rush.runs,
            length_s: rush.seconds,
            flow_L_per_min: rush.flowLPerMin,
            low_L_per_min: Math.max(0, rush.flow.low),
            high_L_per_min: rush.flow.high,
            after_L_per_min: rush.afterLPerMin,
            after_low_L_per_min: Math.max(0, rush.after.low),
            after_high_L_per_min: rush.after.high,
          },
    decline: decline?.share ?? null,
    decline_low: decline?.range.low ?? null,
    decline_high: decline?.range.high ?? null,
    settled:
      settled === null
        ? null
        : {
            flow_L_per_min: settled.flowLPerMin,
            low_L_per_min: Math.max(0, settled.flow.low),
            high_L_per_min: settled.flow.high,
            start_lag_s: settled.lagS,
            start_lag_low_s: settled.lag.low,
            start_lag_high_s: settled.lag.high,
          },
    standardised:
      standard === null
        ? null
        : {
            pours: standard.pours,
            pressure_kPa: standard.pressureKPa,
            temperature_degC: 25,
            by_power_L_per_min: standard.byPowerLPerMin,
            by_power_low_L_per_min: Math.max(0, standard.byPower.low),
            by_power_high_L_per_min: standard.byPower.high,
            by_arrhenius_L_per_min: standard.byArrheniusLPerMin,
            by_arrhenius_low_L_per_min: Math.max(0, standard.byArrhenius.low),
            by_arrhenius_high_L_per_min: standard.byArrhenius.high,
          },
  };
}

export async function run(call: Call): Promise<CommandResult> {
  const bench = readBench(argument(call, 0));
  const refused = refusedResult(bench);
  if (refused !== null) return refused;
  const { devices, variants, idleRise: isIdleRise } = call.options;
  if (!isIdleRise) return doneResult(pours(bench, { devices, variants }));
  await call.io.progress('playing the scenarios');
  return doneResult(idleRise(bench, call.options));
}
