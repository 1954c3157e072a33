import { BenchError, type Finding, finding } from '../../findings/index.ts';
import { type Bench, type BenchRow, cellPlace, type DeviceRow } from '../../model/index.ts';
import {
  feedBrineFactor,
  osmoticPressureKPa,
  type StorageTank,
  tankCycleRatio,
  tankLevels,
} from '../../simulate/index.ts';
import { feedSolids } from '../flow/dissolved-solids.ts';

/** Temperature at which the osmotic pressure is taken, degC; from 5 to 30 it changes by 5 %. */
const OSMOTIC_C = 20;

/** A storage tank as tanks.csv describes it, ready for the refill model. */
export interface DeviceTank {
  readonly row: BenchRow<'tanks'>;
  readonly tank: StorageTank;
  /** Litres of clean water between full and empty. */
  readonly usableL: number;
  /** Litres left when it starts to fill again. */
  readonly restartL: number;
  /** Drain per litre of a filling from restart to stop. */
  readonly cycleRatio: number;
  /** Feed solids behind the osmotic pressure, mg/L; null: none known, taken as 0. */
  readonly feedSolidsMgPerL: number | null;
}

const NEEDED = [
  'shell',
  'precharge',
  'feed_pressure',
  'stop',
  'restart',
  'permeate_flow',
  'reject_flow',
] as const;

/**
 * The tank of a device, where tanks.csv holds every figure the refill model needs.
 *
 * The osmotic pressure comes from the mean dissolved solids of the natural feeds, concentrated along
 * the membrane by the recovery into an open tank; the product's own is left out (a few kPa).
 * Without tested solids it is 0, which makes the drain too low by some percent, and is said.
 * @returns no tank where tanks.csv has no row, lacks a figure, or its pressures cannot work; the
 *   findings say which
 */
export function deviceTank(
  bench: Bench,
  device: DeviceRow,
): { readonly tank: DeviceTank | null; readonly findings: readonly Finding[] } {
  const name = device.values.device;
  const row = bench.tables.tanks.find(({ values }) => values.device === name);
  if (device.values.tank !== 'yes' || row === undefined) return { tank: null, findings: [] };
  const missing = NEEDED.filter((column) => row.values[column] === null);
  const { shell, precharge, feed_pressure, stop, restart, permeate_flow, reject_flow } = row.values;
  if (
    shell === null ||
    precharge === null ||
    feed_pressure === null ||
    stop === null ||
    restart === null ||
    permeate_flow === null ||
    reject_flow === null
  ) {
    return { tank: null, findings: [incomplete(row, missing.join(', '))] };
  }
  const solids = feedSolids(bench, name)?.mgPerL ?? null;
  const recovery = permeate_flow.value / (permeate_flow.value + reject_flow.value);
  const tank: StorageTank = {
    shellL: shell.value,
    prechargeKPa: precharge.value,
    stopKPa: stop.value,
    restartKPa: restart.value,
    feedKPa: feed_pressure.value,
    openFlowLPerMin: permeate_flow.value,
    rejectFlowLPerMin: reject_flow.value,
    ...(solids === null || recovery >= 1
      ? {}
      : { osmoticKPa: osmoticPressureKPa(solids * feedBrineFactor(recovery), OSMOTIC_C) }),
  };
  try {
    const { stopL, restartL } = tankLevels(tank);
    const found = {
      row,
      tank,
      usableL: stopL,
      restartL,
      cycleRatio: tankCycleRatio(tank),
      feedSolidsMgPerL: solids,
    };
    return { tank: found, findings: solids === null ? [osmosisUnknown(row)] : [] };
  } catch (error) {
    if (!(error instanceof BenchError)) throw error;
    return { tank: null, findings: [cannotWork(row, error)] };
  }
}

function incomplete(row: BenchRow<'tanks'>, missing: string): Finding {
  return finding(
    'tank-incomplete',
    `tanks.csv does not say ${missing} of ${row.values.device}, so its refill is not computed`,
    'measure it; until then the measured ratio stands for the draw size it was measured at',
    cellPlace(row, 'device'),
  );
}

function osmosisUnknown(row: BenchRow<'tanks'>): Finding {
  return finding(
    'tank-osmosis-unknown',
    `no feed was tested for dissolved solids, so the refill of ${row.values.device} is computed without osmotic pressure`,
    'have the feed tested for total dissolved solids; without it the drain comes out some percent too low',
    cellPlace(row, 'device'),
  );
}

function cannotWork(row: BenchRow<'tanks'>, error: BenchError): Finding {
  return finding(
    'tank-impossible',
    `the figures of ${row.values.device} cannot belong together: ${error.finding.message}`,
    'check the pressures of tanks.csv: pre-charge, restart, stop and feed rise in this order',
    cellPlace(row, 'stop'),
  );
}
