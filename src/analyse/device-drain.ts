import { type Finding, finding } from '../findings/index.ts';
import {
  type Bench,
  type BenchRow,
  cellPlace,
  type DeviceRow,
  FLUSH_OFF,
  STANDARD,
} from '../model/index.ts';
import type { DrainDevice, FlushRule } from '../simulate/index.ts';
import { type DrainFit, fitDrain } from './drain-fit.ts';
import { type FlushVolume, flushVolume } from './flush-volumes.ts';
import type { PourFlow } from './pour-flow.ts';
import { type DeviceTank, deviceTank, tankAgainstRuns, tankDrainModel } from './tank/index.ts';

/** A device in one state, ready to be played through a scenario. */
export interface DeviceDrain {
  readonly device: DeviceRow;
  readonly variant: string;
  /** Null where the drain is not known: not tested, never zero. */
  readonly model: DrainDevice | null;
  readonly fit: DrainFit | null;
  readonly flushVolumes: readonly FlushVolume[];
  readonly rulesOff: readonly string[];
  /** A storage tank without refill model: the ratio holds for the measured draw size only. */
  readonly hasTank: boolean;
  /** The refill model of a storage tank; then `model` holds the ratio of a filling. */
  readonly tank: DeviceTank | null;
  readonly flow: PourFlow | null;
  readonly findings: readonly Finding[];
}

/**
 * Every device in every state that concerns water, in the order of devices.csv: standard,
 * flush-off where a rule can be switched off, and those of variants.csv.
 */
export function deviceDrains(bench: Bench, flows: readonly PourFlow[]): DeviceDrain[] {
  return bench.tables.devices.flatMap((device) =>
    drainVariants(bench, device.values.device).map((variant) =>
      deviceDrain(bench, device, variant, flows),
    ),
  );
}

function drainVariants(bench: Bench, device: string): string[] {
  const isSwitchable = bench.tables.flushRules.some(
    (row) => row.values.device === device && row.values.switchable === 'yes',
  );
  const named = bench.tables.variants.flatMap((row) =>
    row.values.device === device ? row.values.variant : [],
  );
  return [...new Set([STANDARD, ...(isSwitchable ? [FLUSH_OFF] : []), ...named])];
}

/** Rules that are off in a variant: as variants.csv says, else every switchable one. */
function rulesOff(bench: Bench, device: string, variant: string): string[] {
  if (variant === STANDARD) return [];
  const row = bench.tables.variants.find(
    ({ values }) => values.device === device && values.variant === variant,
  );
  if (row !== undefined && row.values.rules_off !== null) return [...row.values.rules_off];
  if (variant !== FLUSH_OFF) return [];
  return bench.tables.flushRules.flatMap(({ values }) =>
    values.device === device && values.switchable === 'yes' ? values.rule : [],
  );
}

function deviceDrain(
  bench: Bench,
  device: DeviceRow,
  variant: string,
  flows: readonly PourFlow[],
): DeviceDrain {
  const name = device.values.device;
  const off = rulesOff(bench, name, variant);
  const rules = bench.tables.flushRules.filter(
    ({ values }) => values.device === name && !off.includes(values.rule),
  );
  const flow =
    flows.find((item) => item.device === name && item.variant === variant) ??
    flows.find((item) => item.device === name && item.variant === STANDARD) ??
    null;
  const common = { device, variant, rulesOff: off, flow };
  if (device.values.drain_line === 'no') {
    return {
      ...common,
      model: { drainRatio: 0, flushRules: [], ...flowOf(flow) },
      fit: null,
      flushVolumes: [],
      hasTank: false,
      tank: null,
      findings: [],
    };
  }
  const { fit, findings: fitFindings } = fitDrain(bench, name, variant);
  const { tank, findings: tankFindings } = deviceTank(bench, device);
  const volumes = rules.map((rule) => flushVolume(bench, rule));
  const known = volumes.filter((volume) => volume !== null);
  const findings = [
    ...fitFindings,
    ...tankFindings,
    ...(tank === null ? [] : tankAgainstRuns(tank, fit)),
    ...known.flatMap((volume) => volume.findings),
  ];
  if (fit === null && tank === null) findings.push(runsMissing(device));
  const isComplete = known.length === volumes.length;
  const rest = {
    ...flowOf(flow),
    flushRules: known.map((volume) => flushRule(volume.rule, volume.volumeL)),
  };
  return {
    ...common,
    model: isComplete ? drainModel(fit, tank, rest) : null,
    fit,
    flushVolumes: known,
    hasTank: device.values.tank === 'yes' && tank === null,
    tank,
    findings,
  };
}

function drainModel(
  fit: DrainFit | null,
  tank: DeviceTank | null,
  rest: Omit<DrainDevice, 'drainRatio' | 'perStartL'>,
): DrainDevice | null {
  if (tank !== null) return tankDrainModel(tank, rest);
  return fit === null ? null : { ...rest, drainRatio: fit.ratio, perStartL: fit.perStartL };
}

function flowOf(flow: PourFlow | null): { readonly cleanFlowLPerMin?: number } {
  return flow === null ? {} : { cleanFlowLPerMin: flow.flowLPerMin };
}

function flushRule(row: BenchRow<'flushRules'>, volumeL: number): FlushRule {
  const { rule, trigger, after, water, drain_fraction, repeat, anchor, min_interval } = row.values;
  const { quiet, quiet_mode } = row.values;
  const isVolume = after?.dimension === 'volume';
  return {
    rule,
    trigger,
    volumeL,
    ...(after === null ? {} : isVolume ? { afterL: after.value } : { afterS: after.value }),
    ...(water === null ? {} : { water }),
    ...(drain_fraction === null ? {} : { drainFraction: drain_fraction }),
    ...(repeat === null ? {} : { repeat: repeat === 'yes' }),
    ...(anchor === null ? {} : { anchor }),
    ...(min_interval === null ? {} : { minIntervalS: min_interval.value }),
    ...(quiet === null
      ? {}
      : { quiet: { fromS: quiet.fromS, toS: quiet.toS, mode: quiet_mode ?? 'skip' } }),
  };
}

function runsMissing(device: DeviceRow): Finding {
  const rated = device.values.rated_drain_ratio;
  return finding(
    'drain-runs-missing',
    `${device.values.device} has a drain line and no measured run that counts` +
      (rated === null ? '' : '; its rated ratio never replaces a measured one'),
    'measure a run for drain-runs.csv; until then its drain is not tested',
    cellPlace(device, 'device'),
  );
}
