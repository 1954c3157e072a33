import { studentTQuantile, welchSatterthwaite } from '../../statistics/index.ts';

/** What scatters from one measurement to the next, as seen in repeats. */
export interface SeenScatter {
  /** Standard uncertainty of the figure, in its unit. */
  readonly u: number;
  readonly degreesOfFreedom: number;
}

/** What is open in a figure, each part as a standard uncertainty in the unit of the figure. */
export interface OpenParts {
  /** Null where nothing was repeated. */
  readonly scatter: SeenScatter | null;
  /** Readings of vessel and stopwatch: another error each time. */
  readonly own: number;
  /** Vessel, scale, thermometer, gauge: the same error each time, so repeats do not show it. */
  readonly shared: number;
}

export interface FigureRange {
  readonly u: number;
  readonly low: number;
  readonly high: number;
  /** Infinity where the instruments alone decide. */
  readonly degreesOfFreedom: number;
  /** Whether the scatter of repeats exceeds what the readings explain. */
  readonly restsOnScatter: boolean;
}

/**
 * Standard uncertainty and interval of a figure from repeats and instruments.
 *
 * The scatter of repeats holds the errors of the readings, so the larger of the two counts and never
 * both; what all repeats share comes on top.
 * @param confidence two-sided, such as 0.95
 * @returns not cut at 0; low equals high where nothing is open
 * Source: JCGM 100:2008 (GUM), 5.1.2 and G.4.1 (effective degrees of freedom, not cut to an integer).
 * Checked by: tests/outside-checks/measurement/flow-uncertainty.test.ts, with a simulation of coverage
 */
export function rangeOf(estimate: number, open: OpenParts, confidence: number): FigureRange {
  const { scatter, own, shared } = open;
  const restsOnScatter = scatter !== null && scatter.u > own;
  const random = restsOnScatter
    ? { u: scatter.u, degreesOfFreedom: scatter.degreesOfFreedom }
    : { u: own, degreesOfFreedom: Infinity };
  const u = Math.hypot(random.u, shared);
  const degreesOfFreedom = welchSatterthwaite([random, { u: shared, degreesOfFreedom: Infinity }]);
  const reach = studentTQuantile((1 + confidence) / 2, degreesOfFreedom) * u;
  return { u, low: estimate - reach, high: estimate + reach, degreesOfFreedom, restsOnScatter };
}
