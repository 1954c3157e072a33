import type { BenchSettings } from '../../model/index.ts';
import { cylinderTolerance } from '../../reference/index.ts';
import type { DeviceTank } from '../tank/index.ts';
import type { Scatter } from './run-scatter.ts';

/** What is open in the figures of a storage tank: standard uncertainties but for the osmotic range. */
export interface TankUncertainty {
  /** Of the gauge: it moves all pressures of the tank by one amount. */
  readonly gaugeKPa: number;
  /** Of the reading of one pressure. */
  readonly readingKPa: number;
  readonly shellL: number;
  readonly permeateLPerMin: number;
  readonly rejectLPerMin: number;
  /** The osmotic pressure lies anywhere between these multiples of what the solids give. */
  readonly osmotic: { readonly low: number; readonly high: number };
}

/** A half-width within which every error is as likely makes a standard uncertainty of a / √3. */
const UNIFORM = Math.sqrt(3);

/** Half of a division of 1 psi, kPa; common practice, no source. */
const READING_HALF_WIDTH_KPA = 3.447;

/** A flow is taken to have been caught for a minute, so that its volume is that of a minute. */
const CAUGHT_S = 60;

/**
 * The expression for the osmotic pressure is that of sodium chloride: 4 % too low at 500 mg/L, and 10
 * to 30 % too high for bicarbonate tap waters.
 */
const OSMOTIC = { low: 0.7, high: 1.04 } as const;

/**
 * What gauge, vessel and clock leave open in a tank of tanks.csv.
 *
 * A pressure was read from one gauge of `instruments.gauge_kpa`; a shell volume is printed and not
 * measured, and good to `water_use.stated_tank_spread`; a flow is a volume caught for a minute, in the
 * vessels of the bench. The drain flow also differs from run to run as the runs of the bench do.
 * @param runs scatter of single runs, pooled over the bench
 * Source: a / √3 from JCGM 100:2008 (GUM), 4.3.7; the default of the gauge is 2 % of a span of 100
 *   psi, the middle half of grade B of ASME B40.100, from memory.
 */
export function tankUncertainty(
  { tank }: DeviceTank,
  settings: Pick<BenchSettings, 'instruments' | 'water_use'>,
  runs: Scatter,
): TankUncertainty {
  const { instruments, water_use } = settings;
  const caughtRelative = (flowLPerMin: number): number => {
    const litres = (flowLPerMin * CAUGHT_S) / 60;
    const clock = (Math.SQRT2 * instruments.stopwatch_s) / CAUGHT_S;
    if (instruments.vessel_tolerance !== undefined) {
      return Math.hypot(instruments.vessel_tolerance / UNIFORM, clock);
    }
    const { vesselL, readingL } = cylinderTolerance(litres, instruments.cylinder);
    return litres > 0 ? Math.hypot(Math.hypot(vesselL, readingL) / UNIFORM / litres, clock) : 0;
  };
  const { openFlowLPerMin, rejectFlowLPerMin } = tank;
  return {
    gaugeKPa: instruments.gauge_kpa / UNIFORM,
    readingKPa: READING_HALF_WIDTH_KPA / UNIFORM,
    shellL: water_use.stated_tank_spread * tank.shellL,
    permeateLPerMin: caughtRelative(openFlowLPerMin) * openFlowLPerMin,
    rejectLPerMin:
      Math.hypot(caughtRelative(rejectFlowLPerMin), runs.relativeSd) * rejectFlowLPerMin,
    osmotic: OSMOTIC,
  };
}
