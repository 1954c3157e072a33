import { type Finding, finding } from '../findings/index.ts';
import { cellPlace } from '../model/index.ts';
import {
  breakEvenPourL,
  type IsolatedPour,
  isolatedPourDrain,
  isolatedPourRatio,
  isolatedTankRatio,
} from '../simulate/index.ts';
import { findRoot } from '../statistics/find-root.ts';
import type { DeviceDrain } from './device-drain.ts';

/** The curve of a device: drain of a pour that stands alone. */
export interface DrainCurve {
  readonly drain: DeviceDrain;
  /**
   * Null where no line can be given: the drain is not known, or follows the refill of a tank. The
   * finding of the device says why.
   */
  readonly isolated: IsolatedPour | null;
}

/**
 * Curves of every device and variant with a drain line.
 *
 * A tank without refill model has none. One with it has a curve that is no line.
 */
export function drainCurves(drains: readonly DeviceDrain[]): {
  readonly curves: readonly DrainCurve[];
  readonly findings: readonly Finding[];
} {
  const findings: Finding[] = [];
  const curves = drains
    .filter((drain) => drain.device.values.drain_line === 'yes')
    .map((drain): DrainCurve => {
      const { model } = drain;
      if (drain.hasTank) findings.push(tankCurve(drain));
      const isLine = model !== null && !drain.hasTank && drain.tank === null;
      return { drain, isolated: isLine ? isolatedPourDrain(model) : null };
    });
  return { curves, findings };
}

function tankCurve({ device }: DeviceDrain): Finding {
  return finding(
    'tank-curve-refused',
    `${device.values.device} has a tank, so its drain depends on how full it is: no curve and no break-even are given`,
    'measure runs at the draw sizes that matter, or describe the tank in tanks.csv',
    cellPlace(device, 'tank'),
  );
}

/** Pour sizes a curve is drawn at when none are asked for, millilitres. */
export const CURVE_POURS_ML = [
  50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 600, 750, 1000, 1250, 1500, 2000, 2500, 3000,
  4000, 5000,
] as const;

/**
 * Total drain ratio of a pour that stands alone; null where no curve can be given.
 *
 * Of a tank with refill model: the refill of the draw, with the flushes of any device.
 */
export function curveRatio(curve: DrainCurve, pourL: number): number | null {
  const { tank, model } = curve.drain;
  if (curve.isolated !== null) return isolatedPourRatio(curve.isolated, pourL);
  if (tank === null || model === null) return null;
  const refill = isolatedTankRatio(tank.tank, pourL);
  const flushes = isolatedPourRatio(isolatedPourDrain(model), pourL) - model.drainRatio;
  return refill === null ? null : refill + flushes;
}

/** True where a curve can be given at some pour size. */
export function hasCurve({ drain, isolated }: DrainCurve): boolean {
  return isolated !== null || (drain.tank !== null && drain.model !== null);
}

/** The largest pour a curve holds for, litres: what a full tank gives. */
export function largestPourL({ drain }: DrainCurve): number {
  return drain.tank?.usableL ?? Number.POSITIVE_INFINITY;
}

/** Sizes between which a crossing of curved lines is looked for; each is so many times the last. */
const SMALLEST_POUR_L = 0.001;
const SIZES = 400;

/**
 * Pour sizes at which two devices drain the same, litres, ascending; none where there is none.
 *
 * Two lines cross once at most. The refill of a tank bends, so a line may cross it twice: the curve is
 * walked from 1 mL to the full tank.
 */
export function breakEvens(a: DrainCurve, b: DrainCurve): number[] {
  if (a.isolated !== null && b.isolated !== null) {
    const pourL = breakEvenPourL(a.isolated, b.isolated);
    return pourL === null ? [] : [pourL];
  }
  if (!hasCurve(a) || !hasCurve(b)) return [];
  const largest = Math.min(largestPourL(a), largestPourL(b));
  const difference = (pourL: number): number => {
    const [ratioA, ratioB] = [curveRatio(a, pourL), curveRatio(b, pourL)];
    return ratioA === null || ratioB === null ? Number.NaN : ratioA - ratioB;
  };
  const found: number[] = [];
  const step = (largest / SMALLEST_POUR_L) ** (1 / SIZES);
  let from = SMALLEST_POUR_L;
  for (let at = 1; at <= SIZES; at++) {
    const to = at === SIZES ? largest : SMALLEST_POUR_L * step ** at;
    if (difference(from) * difference(to) < 0) found.push(findRoot(difference, from, to));
    from = to;
  }
  return found;
}
