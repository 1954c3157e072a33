import type { Spread, WaterUseRow, YardstickVerdict } from '../../model/index.ts';
import { waterEfficiencyFigures } from '../../reference/index.ts';
import { constantPressureRatio } from '../../simulate/index.ts';
import type { DeviceDrain } from '../device-drain.ts';

/** What the published yardsticks ask for, as figures. */
export interface EfficiencyFloor {
  /** Most drain per volume treated, US EPA WaterSense. */
  readonly mostDrainRatio: number | null;
  /** Least efficiency, a fraction, ASSE 1086. */
  readonly leastEfficiency: number | null;
}

/** The thresholds of the reference table; null where it holds none. */
export function efficiencyFloor(): EfficiencyFloor {
  const thresholds = waterEfficiencyFigures('threshold');
  const ratio = thresholds.find(
    ({ metric, standard }) =>
      metric === 'maximum reject ratio' && standard === 'US EPA WaterSense final',
  );
  const efficiency = thresholds.find(({ metric }) => metric === 'minimum efficiency');
  return {
    mostDrainRatio: ratio?.value ?? null,
    leastEfficiency: efficiency?.value == null ? null : efficiency.value / 100,
  };
}

/** A device in a scenario beside the yardsticks, as published; figures of the bench, no ratings. */
type YardsticksRow = NonNullable<WaterUseRow['yardsticks']>;

/**
 * Recovery and efficiency by the definitions of NSF/ANSI 58, for reverse osmosis with a drain line.
 *
 * The recovery of a tank device is that of filling an open tank, by tanks.csv; without it, it is not
 * known. What keeps to a yardstick is said of ranges: all of it, none of it, or `cannot-say`.
 * @param use ranges of the total drain ratio and of the recovery in a scenario
 * @returns null for other devices, which the yardsticks do not concern
 * Source: definitions seen in trade-press articles by certification staff; thresholds as in the
 *   table of reference figures.
 */
export function reportedYardsticks(
  drain: DeviceDrain,
  use: Pick<WaterUseRow, 'total_drain_ratio' | 'recovery'>,
): YardsticksRow | null {
  const { technology, drain_line, tank } = drain.device.values;
  if (technology !== 'reverse-osmosis' || drain_line !== 'yes') return null;
  const open = openRatio(drain, tank === 'yes');
  const { mostDrainRatio, leastEfficiency } = efficiencyFloor();
  return {
    recovery_tank_bypassed: open === null ? null : 1 / (1 + open),
    efficiency_in_use: use.recovery.estimate,
    within_2_3: mostDrainRatio === null ? null : atMost(use.total_drain_ratio, mostDrainRatio),
    reaches_40_percent: leastEfficiency === null ? null : atLeast(use.recovery, leastEfficiency),
  };
}

/** Whether a range lies at or below a figure; null without an estimate. */
export function atMost({ low, estimate, high }: Spread, most: number): YardstickVerdict | null {
  if (estimate === null) return null;
  if (low === null || high === null) return 'cannot-say';
  if (high <= most) return 'meets';
  return low > most ? 'misses' : 'cannot-say';
}

/** Whether a range lies at or above a figure; null without an estimate. */
export function atLeast({ low, estimate, high }: Spread, least: number): YardstickVerdict | null {
  if (estimate === null) return null;
  if (low === null || high === null) return 'cannot-say';
  if (low >= least) return 'meets';
  return high < least ? 'misses' : 'cannot-say';
}

function openRatio(drain: DeviceDrain, hasTank: boolean): number | null {
  if (drain.tank !== null) return constantPressureRatio(drain.tank.tank);
  return hasTank ? null : (drain.fit?.ratio ?? null);
}
