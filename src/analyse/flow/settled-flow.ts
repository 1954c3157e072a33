import { arithmeticMean, leastSquaresLine, sampleSd } from '../../statistics/index.ts';
import { type Instruments, volumeUncertainty } from '../drain-uncertainty/index.ts';
import type { PourRun } from '../pour-flow.ts';
import { type FigureRange, rangeOf, type SeenScatter } from './flow-range.ts';

const S_PER_MIN = 60;

/** The steady flow of cumulative readings and the time lost before it. */
export interface SettledFlow {
  readonly flowLPerMin: number;
  readonly flow: FigureRange;
  /** Seconds without water at the start, by the line; negative where the start is faster. */
  readonly lagS: number;
  readonly lag: FigureRange;
  readonly readings: number;
}

/** A figure of the line of one run, with what is open in it. */
interface LineFigure {
  readonly value: number;
  /** By the scatter about the line; 0 degrees of freedom never occur: three readings leave one. */
  readonly scatterVariance: number;
  readonly degreesOfFreedom: number;
  readonly ownVariance: number;
  readonly shared: number;
}

/**
 * Slope of cumulative volume against time, by least squares over each run of three or more readings;
 * the mean of the runs.
 *
 * Unlike the last reading over its time it is not moved by a slow or fast start. Every reading has a
 * stop of its own (half the variance of a time with two stops) and a reading of the volume; all share
 * the vessel, and those of a run the start, which moves the lag and not the slope.
 * Source: least squares; errors of stops and readings carried through it.
 * Checked by: tests/outside-checks/measurement/flow-uncertainty.test.ts (MEA-09)
 */
export function settledFlow(
  runs: readonly PourRun[],
  instruments: Instruments,
  confidence: number,
): SettledFlow | null {
  const lines = runs.flatMap((run) => lineOf(run, instruments) ?? []);
  if (lines.length === 0) return null;
  const slopes = lines.map(({ slope }) => slope);
  const lags = lines.map(({ lag }) => lag);
  const perS = arithmeticMean(slopes.map(({ value }) => value));
  const slope = meanRange(slopes, perS, confidence);
  const lagS = arithmeticMean(lags.map(({ value }) => value));
  return {
    flowLPerMin: perS * S_PER_MIN,
    flow: {
      ...slope,
      u: slope.u * S_PER_MIN,
      low: slope.low * S_PER_MIN,
      high: slope.high * S_PER_MIN,
    },
    lagS,
    lag: meanRange(lags, lagS, confidence),
    readings: lines.reduce((sum, { n }) => sum + n, 0),
  };
}

function lineOf(run: PourRun, instruments: Instruments) {
  const readings = run.pours.filter(({ row }) => row.values.reading === 'cumulative');
  const x = readings.map(({ timeS }) => timeS);
  if (new Set(x).size < 3) return null;
  const y = readings.map(({ volume }) => volume.volumeL);
  const line = leastSquaresLine({ x, y });
  const { slope, intercept, uSlope, uIntercept, covariance, n } = line;
  if (!(slope > 0) || uSlope === null || uIntercept === null || covariance === null) return null;
  const lagS = -intercept / slope;
  const mean = arithmeticMean(x);
  const xx = x.reduce((sum, at) => sum + (at - mean) ** 2, 0);
  const stopVariance = instruments.stopwatch_s ** 2 / 2;
  let ownSlope = 0;
  let ownLag = stopVariance;
  let sharedSlope = 0;
  let sharedLag = 0;
  for (const [index, { volume }] of readings.entries()) {
    const { instrumentL, readingL } = volumeUncertainty(volume, instruments);
    const variance = readingL ** 2 + slope ** 2 * stopVariance;
    const onSlope = ((x[index] ?? mean) - mean) / xx;
    const onLag = -(1 / n - onSlope * mean + lagS * onSlope) / slope;
    ownSlope += onSlope ** 2 * variance;
    ownLag += onLag ** 2 * variance;
    sharedSlope += onSlope * instrumentL;
    sharedLag += onLag * instrumentL;
  }
  const lagVariance = (uIntercept ** 2 + (lagS * uSlope) ** 2 + 2 * lagS * covariance) / slope ** 2;
  const degreesOfFreedom = n - 2;
  const slopeFigure: LineFigure = {
    value: slope,
    scatterVariance: uSlope ** 2,
    degreesOfFreedom,
    ownVariance: ownSlope,
    shared: sharedSlope,
  };
  const lagFigure: LineFigure = {
    value: lagS,
    scatterVariance: Math.max(0, lagVariance),
    degreesOfFreedom,
    ownVariance: ownLag,
    shared: sharedLag,
  };
  return { slope: slopeFigure, lag: lagFigure, n };
}

/** Range of the mean over runs: scatter about the lines or between the runs, the larger. */
function meanRange(
  figures: readonly LineFigure[],
  estimate: number,
  confidence: number,
): FigureRange {
  const n = figures.length;
  const sum = (of: (figure: LineFigure) => number) =>
    figures.reduce((all, figure) => all + of(figure), 0);
  const about: SeenScatter = {
    u: Math.sqrt(sum((figure) => figure.scatterVariance)) / n,
    degreesOfFreedom: sum((figure) => figure.degreesOfFreedom),
  };
  const between: SeenScatter | null =
    n < 2
      ? null
      : {
          u: sampleSd(figures.map(({ value }) => value)) / Math.sqrt(n),
          degreesOfFreedom: n - 1,
        };
  return rangeOf(
    estimate,
    {
      scatter: between !== null && between.u > about.u ? between : about,
      own: Math.sqrt(sum((figure) => figure.ownVariance)) / n,
      shared: Math.abs(sum((figure) => figure.shared)) / n,
    },
    confidence,
  );
}
