import { randomStream, tankCycleRatio } from '../../simulate/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import type { BenchUncertainty } from './device-uncertainty.ts';
import { normals, streamNumber } from './named-streams.ts';
import { type TankDraws, tankCount, tankDraws } from './tank-draws.ts';

/** The figures of a device drawn many times: one column a figure, one entry a draw. */
export interface DeviceDraws {
  /** Drain per clean litre while producing; of a tank that of a filling from restart to stop. */
  readonly ratio: Float64Array;
  readonly perStartL: Float64Array;
  /** Litres of one flush, by rule in the order of the device's flush volumes. */
  readonly flushL: readonly Float64Array[];
  /** Null without the refill model of a tank. */
  readonly tank: TankDraws | null;
}

/** How much wider than its estimate a scatter may be: one factor a draw, shared by the bench. */
export interface ScatterDraws {
  readonly runs: Float64Array;
  readonly flushes: Float64Array;
}

/** Beyond this many degrees of freedom a Student t is a normal distribution for our purposes. */
const MANY = 200;

/**
 * Draws of the factor √(ν / χ²) by which a normal error becomes a Student t error: the pooled
 * scatter is itself only an estimate.
 */
export function scatterDraws(
  uncertainty: BenchUncertainty,
  draws: number,
  seed: number,
): ScatterDraws {
  const factors = (degreesOfFreedom: number, name: string): Float64Array => {
    const column = new Float64Array(draws).fill(1);
    if (degreesOfFreedom === 0 || degreesOfFreedom > MANY) return column;
    const normal = normals(randomStream(seed, streamNumber(name)));
    for (let draw = 0; draw < draws; draw++) {
      let chiSquare = 0;
      for (let k = 0; k < degreesOfFreedom; k++) chiSquare += normal() ** 2;
      column[draw] = Math.sqrt(degreesOfFreedom / chiSquare);
    }
    return column;
  };
  return {
    runs: factors(uncertainty.runs.degreesOfFreedom, 'scatter of the runs'),
    flushes: factors(uncertainty.flushes.degreesOfFreedom, 'scatter of the flushes'),
  };
}

/**
 * Draws the drain ratio, the drain per start and the flush volumes of a device from what is open in
 * them. A figure below 0 is drawn as 0.
 *
 * Each device has streams of its own, named by its id and the rule: what it gets does not depend on
 * the other devices, and its variants share the errors of the runs and flushes they share.
 * Source: JCGM 101:2008, propagation of distributions by a Monte Carlo method.
 */
export function deviceDraws(
  drain: DeviceDrain,
  uncertainty: BenchUncertainty,
  scatter: ScatterDraws,
  seed: number,
): DeviceDraws {
  const device = drain.device.values.device;
  const { fit, flushes, tank: openTank } = uncertainty.of(drain);
  const draws = scatter.runs.length;
  const count = tankCount(draws, uncertainty.years);
  const tank =
    drain.tank === null || openTank === null
      ? null
      : tankDraws(drain.tank, device, openTank, { draws, count, seed });
  const ratio = new Float64Array(draws).fill(drain.model?.drainRatio ?? 0);
  const perStartL = new Float64Array(draws).fill(drain.model?.perStartL ?? 0);
  if (tank !== null) {
    const cycles = tank.tanks.map(tankCycleRatio);
    for (let draw = 0; draw < draws; draw++) {
      ratio[draw] = (cycles[draw % count] as number) * (tank.rejectFactor[draw] as number);
    }
  } else if (fit !== null) {
    const normal = normals(randomStream(seed, streamNumber(`runs of ${device}`)));
    const { ratioVariance, perStartVariance, covariance } = fit.scatter;
    const own = Math.sqrt(ratioVariance);
    const shared = own > 0 ? covariance / own : 0;
    const rest = Math.sqrt(Math.max(0, perStartVariance - shared * shared));
    for (let draw = 0; draw < draws; draw++) {
      const drained = 1 + fit.drainRelative * normal();
      const cleaned = 1 + fit.cleanRelative * normal();
      const factor = scatter.runs[draw] as number;
      const first = normal() * factor;
      const second = normal() * factor;
      ratio[draw] = atLeastZero(((ratio[draw] as number) * drained) / cleaned + own * first);
      perStartL[draw] = atLeastZero(
        (perStartL[draw] as number) * drained + shared * first + rest * second,
      );
    }
  }
  const flushL = drain.flushVolumes.map(({ rule, volumeL }, index) => {
    const column = new Float64Array(draws).fill(volumeL);
    const open = flushes[index];
    if (open === undefined) return column;
    const normal = normals(
      randomStream(seed, streamNumber(`flush ${rule.values.rule} of ${device}`)),
    );
    for (let draw = 0; draw < draws; draw++) {
      const own = open.scatterL * (scatter.flushes[draw] as number) * normal();
      column[draw] = atLeastZero(volumeL + open.sharedL * normal() + own);
    }
    return column;
  });
  return { ratio, perStartL, flushL, tank };
}

function atLeastZero(value: number): number {
  return Math.max(0, value);
}
