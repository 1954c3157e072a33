import type { UncertainSide } from '../../../src/analyse/index.ts';
import type { NondetectBound } from '../../../src/model/index.ts';

/** Reporting limit of the simulated lab; every concentration counts in it. */
export const RL = 1;

/** Ratio of a reporting limit (minimum level) to the detection limit in US EPA methods, memory. */
const RL_PER_MDL = 3.18;
export const MDL = RL / RL_PER_MDL;

/** Standard deviation at low concentration behind a detection limit from seven replicates. */
const LOW_SD = MDL / 3.14;

/** `normal`: all errors normal. `lognormal`: the relative part lognormal with the same spread. */
export type ErrorShape = 'normal' | 'lognormal';

/** Two standard normal numbers a call, from a stream of fractions (Box and Muller 1958). */
export function normalPair(nextFraction: () => number): readonly [number, number] {
  const radius = Math.sqrt(-2 * Math.log(1 - nextFraction()));
  const angle = 2 * Math.PI * nextFraction();
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

/** What the instrument reads of a true concentration; may be negative. */
export function reading(
  truth: number,
  relative: number,
  shape: ErrorShape,
  nextFraction: () => number,
): number {
  const [first, second] = normalPair(nextFraction);
  if (shape === 'normal') return truth + Math.hypot(LOW_SD, relative * truth) * first;
  const spread = Math.sqrt(Math.log1p(relative * relative));
  return truth * Math.exp(spread * first - (spread * spread) / 2) + LOW_SD * second;
}

/**
 * What the lab reports of a reading, as a side of a reduction: a figure from the reporting limit
 * upward, "detected, not quantified" between the limits, else "not detected". The lab states its
 * relative uncertainty; the additive part follows from the detection limit.
 */
export function reported(read: number, relative: number, bound: NondetectBound): UncertainSide {
  const uncertainty = {
    relative,
    additive: LOW_SD,
    counting: 0,
    from: 'stated',
    degreesOfFreedom: Number.POSITIVE_INFINITY,
  } as const;
  if (read >= RL) {
    const point = { low: read, high: read };
    return {
      interval: point,
      readings: point,
      state: 'quantified',
      estimate: read,
      uncertainty,
      isDecisionBound: false,
    };
  }
  const isTrace = read >= MDL;
  const high = isTrace || bound === 'reporting' ? RL : MDL;
  return {
    interval: { low: isTrace ? MDL : 0, high },
    readings: isTrace ? { low: MDL, high: RL } : { low: 0, high: MDL },
    state: isTrace ? 'between' : 'notDetected',
    estimate: null,
    uncertainty,
    isDecisionBound: !isTrace && bound === 'detection',
  };
}
