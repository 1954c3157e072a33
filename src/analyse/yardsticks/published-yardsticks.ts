import { waterEfficiencyFigures } from '../../reference/index.ts';
import { constantPressureRatio, type SimulatedDrain } from '../../simulate/index.ts';
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

/** A device in a scenario beside the yardsticks; figures of the bench, no ratings. */
export interface Yardsticks {
  /** Product / inlet while producing, with the tank absent or bypassed. */
  readonly recoveryTankBypassed: number | null;
  /** Product the user gets / inlet over the scenario. */
  readonly efficiencyInUse: number | null;
  readonly isWithinDrainRatio: boolean | null;
  readonly reachesEfficiency: boolean | null;
}

/**
 * Recovery and efficiency by the definitions of NSF/ANSI 58, for reverse osmosis with a drain line.
 *
 * The recovery of a tank device is that of filling an open tank, by tanks.csv; without it, it is not
 * known. Comparisons are by the estimates.
 * @returns null for other devices, which the yardsticks do not concern
 * Source: definitions seen in trade-press articles by certification staff; thresholds as in the
 *   table of reference figures.
 */
export function reportedYardsticks(
  drain: DeviceDrain,
  simulated: SimulatedDrain | null,
): Yardsticks | null {
  const { technology, drain_line, tank } = drain.device.values;
  if (technology !== 'reverse-osmosis' || drain_line !== 'yes') return null;
  const open = openRatio(drain, tank === 'yes');
  const { mostDrainRatio, leastEfficiency } = efficiencyFloor();
  const ratio = simulated?.totalDrainRatio ?? null;
  const efficiency = simulated?.recovery ?? null;
  return {
    recoveryTankBypassed: open === null ? null : 1 / (1 + open),
    efficiencyInUse: efficiency,
    isWithinDrainRatio: ratio === null || mostDrainRatio === null ? null : ratio <= mostDrainRatio,
    reachesEfficiency:
      efficiency === null || leastEfficiency === null ? null : efficiency >= leastEfficiency,
  };
}

function openRatio(drain: DeviceDrain, hasTank: boolean): number | null {
  if (drain.tank !== null) return constantPressureRatio(drain.tank.tank);
  return hasTank ? null : (drain.fit?.ratio ?? null);
}
