import type { SweepRow } from '../../model/index.ts';
import {
  type PourSeries,
  type SimulatedDrain,
  simulateDrain,
  tankCycleRatio,
} from '../../simulate/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import { playTank } from '../tank/index.ts';
import { type WaterScenario, YEAR_OF_ESTIMATES } from '../water-scenarios.ts';
import { type Sweep, type SweepPoint, withInput } from './sweep-inputs.ts';

export interface SweepPlan {
  /** One or two; two give every pair of values. */
  readonly sweeps: readonly Sweep[];
  readonly drains: readonly DeviceDrain[];
  readonly scenarios: readonly WaterScenario[];
}

/**
 * Water use with one or two inputs set to one value after the other, all else as measured.
 *
 * Devices without the input, without known drain, without a drain line, or with a tank that tanks.csv
 * does not describe are left out.
 * @returns rows by values, then device, then scenario; yields the done part between values
 * @throws {BenchError} simulation-input where a value cannot be played
 */
export function* sweepSteps(plan: SweepPlan): Generator<{ readonly done: number }, SweepRow[]> {
  const [first, second] = plan.sweeps;
  if (first === undefined) return [];
  const rows: SweepRow[] = [];
  const others: readonly (number | null)[] = second?.values ?? [null];
  const pairs = first.values.flatMap((value) => others.map((other) => ({ value, other })));
  for (const [index, { value, other }] of pairs.entries()) {
    for (const drain of plan.drains) {
      if (drain.device.values.drain_line === 'no' || drain.hasTank) continue;
      for (const scenario of plan.scenarios) {
        const start = startOf(drain, scenario);
        const one = start === null ? null : withInput(start, first, value);
        const point =
          one === null || second === undefined || other === null
            ? one
            : withInput(one, second, other);
        if (point === null) continue;
        rows.push({
          input: first.name,
          value,
          unit: first.unit,
          second_input: second?.name ?? null,
          second_value: other,
          second_unit: second?.unit ?? null,
          device: drain.device.values.device,
          variant: drain.variant,
          scenario: scenario.name,
          ...played(point, scenario),
        });
      }
    }
    yield { done: (index + 1) / pairs.length };
  }
  return rows;
}

function startOf(drain: DeviceDrain, scenario: WaterScenario): SweepPoint | null {
  return drain.model === null
    ? null
    : {
        model: drain.model,
        tank: drain.tank?.tank ?? null,
        groups: scenario.groups,
        pourFactor: 1,
      };
}

type Played = Omit<
  SweepRow,
  | 'input'
  | 'value'
  | 'unit'
  | 'second_input'
  | 'second_value'
  | 'second_unit'
  | 'device'
  | 'variant'
  | 'scenario'
>;

function played(point: SweepPoint, scenario: WaterScenario): Played {
  const { days } = scenario;
  const drained = drainedBy(point, scenario);
  const flushes = Object.values(drained.flushCounts).reduce((sum, count) => sum + count, 0);
  return {
    clean_L_per_day: drained.cleanL / days,
    producing_drain_L_per_day: drained.producingDrainL / days,
    flush_drain_L_per_day: drained.flushDrainL / days,
    flushes_per_day: flushes / days,
    total_drain_ratio: drained.totalDrainRatio,
    recovery: drained.recovery,
    drain_L_per_year: (drained.totalDrainL / days) * 365,
  };
}

function drainedBy(point: SweepPoint, scenario: WaterScenario): SimulatedDrain {
  const { endS, clockAtStartS } = scenario;
  const { tank, model } = point;
  const pours = poursOf(point, scenario);
  const play = (drainRatio: number): SimulatedDrain =>
    simulateDrain({ ...model, drainRatio }, pours, { endS, clockAtStartS });
  return tank === null
    ? play(model.drainRatio)
    : playTank({ tank }, pours, endS, play(tankCycleRatio(tank))).drain;
}

/** The pours of the year of the estimates, with what the point changes in them. */
function poursOf({ model, groups, pourFactor }: SweepPoint, scenario: WaterScenario): PourSeries {
  const years = scenario.years(groups ?? undefined);
  years.draw(YEAR_OF_ESTIMATES, pourFactor);
  return years.pours(model.cleanFlowLPerMin);
}
