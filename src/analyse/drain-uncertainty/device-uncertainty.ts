import type { Finding } from '../../findings/index.ts';
import { type Bench, STANDARD } from '../../model/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import type { DrainFit } from '../drain-fit.ts';
import type { FlushVolume } from '../flush-volumes.ts';
import { type FitUncertainty, fitUncertainty } from './fit-uncertainty.ts';
import { type FlushUncertainty, flushScatter, flushUncertainty } from './flush-uncertainty.ts';
import { waysDiffer } from './isolated-line.ts';
import { fitScatter, pooledScatter, type Scatter } from './run-scatter.ts';
import { type TankUncertainty, tankUncertainty } from './tank-uncertainty.ts';

/** What is open in the figures a device is played with. */
export interface DeviceUncertainty {
  /** Null without a fit: nothing drains, or it is not known. */
  readonly fit: FitUncertainty | null;
  /** In the order of the device's flush volumes. */
  readonly flushes: readonly FlushUncertainty[];
  /** Null without the refill model of a tank. */
  readonly tank: TankUncertainty | null;
}

export interface BenchUncertainty {
  /** Scatter of single runs, and of single flushes, pooled over the devices of the bench. */
  readonly runs: Scatter;
  readonly flushes: Scatter;
  /** Years played of a scenario with random pours. */
  readonly years: number;
  of(drain: DeviceDrain): DeviceUncertainty;
  /** Devices whose two ways to a drain ratio and a flush disagree; variants of one device once. */
  readonly findings: readonly Finding[];
}

/**
 * Standard uncertainties of every drain ratio, drain per start and flush volume of a bench.
 *
 * Runs and flushes that serve several variants count once in the pooled scatter. Devices with a tank
 * stay out of it: their drain follows the filling of the tank.
 */
export function benchUncertainty(bench: Bench, drains: readonly DeviceDrain[]): BenchUncertainty {
  const { instruments, water_use } = bench.settings;
  const fits = new Map<unknown, DrainFit>();
  const volumes = new Map<unknown, FlushVolume>();
  for (const { fit, flushVolumes, device } of drains) {
    if (fit !== null && device.values.tank !== 'yes') fits.set(fit.runs[0]?.row, fit);
    for (const volume of flushVolumes) volumes.set(volume.rule, volume);
  }
  const runs = pooledScatter([...fits.values()].map(fitScatter));
  const flushes = pooledScatter([...volumes.values()].map(flushScatter));
  const of = ({ fit, flushVolumes, tank }: DeviceDrain): DeviceUncertainty => ({
    fit: fit === null ? null : fitUncertainty(fit, runs, instruments),
    flushes: flushVolumes.map((volume) =>
      flushUncertainty(volume, flushes, instruments, water_use.stated_flush_spread),
    ),
    tank: tank === null ? null : tankUncertainty(tank, bench.settings, runs),
  });
  const findings = drains
    .filter(({ variant, device }) => variant === STANDARD && device.values.tank !== 'yes')
    .flatMap((drain) => waysDiffer(bench, drain, of(drain), runs));
  return { runs, flushes, years: water_use.years, of, findings };
}
