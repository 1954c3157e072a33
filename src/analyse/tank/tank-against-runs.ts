import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace } from '../../model/index.ts';
import { refillTank } from '../../simulate/index.ts';
import type { DrainFit, DrainRun } from '../drain-fit.ts';
import type { DeviceTank } from './device-tank.ts';

/** Refill and measurement may differ by this share before it is said; no source, our choice. */
const ACCEPTED = 0.2;

/** Measured refills of a tank, and what the refill model says of the same draws. */
export interface TankCheck {
  readonly runs: number;
  readonly measuredL: number;
  readonly modelledL: number;
}

/**
 * Measured runs that end at shut-off, against the refill model.
 *
 * Each is taken as one draw from a full tank, refilled to full. Draws that would not start a filling,
 * or that exceed a full tank, stay out.
 * @returns null without such a run
 */
export function checkTank(tank: DeviceTank, fit: DrainFit): TankCheck | null {
  const used = fit.runs.flatMap((run) => {
    const modelledL = modelled(tank, run);
    return modelledL === null ? [] : { measuredL: run.producingL, modelledL };
  });
  if (used.length === 0) return null;
  return {
    runs: used.length,
    measuredL: used.reduce((sum, run) => sum + run.measuredL, 0),
    modelledL: used.reduce((sum, run) => sum + run.modelledL, 0),
  };
}

function modelled({ tank, usableL, restartL }: DeviceTank, run: DrainRun): number | null {
  const { collected_until, starts } = run.row.values;
  const level = usableL - run.clean.volumeL;
  const isOneDraw = run.refused === null && collected_until === 'shut-off' && (starts ?? 1) === 1;
  if (!isOneDraw || level < 0 || level > restartL) return null;
  return refillTank(tank, level, usableL).drainL;
}

/** What there is to say where model and measurement differ by more than a fifth. */
export function tankAgainstRuns(tank: DeviceTank, fit: DrainFit | null): Finding[] {
  const check = fit === null ? null : checkTank(tank, fit);
  if (check === null || check.measuredL === 0) return [];
  const off = check.modelledL / check.measuredL - 1;
  if (Math.abs(off) <= ACCEPTED) return [];
  const litres = (value: number): number => Number(value.toPrecision(3));
  return [
    finding(
      'tank-runs-disagree',
      `the refill computed from tanks.csv drains ${litres(check.modelledL)} L where ` +
        `${check.runs} measured ${check.runs === 1 ? 'run' : 'runs'} of ${tank.row.values.device} drained ${litres(check.measuredL)} L`,
      'check the pressures and flows of tanks.csv, above all the restart pressure and the drain flow',
      cellPlace(tank.row, 'device'),
    ),
  ];
}
