import type { DrainFit } from '../drain-fit.ts';
import { type Instruments, sharedRelative, volumeUncertainty } from './measured-uncertainty.ts';
import { expectedDrainL, fitScatter, type Scatter, usedRuns } from './run-scatter.ts';

/** What the runs and the instruments leave open in a drain ratio and a drain per start. */
export interface FitUncertainty {
  /** Standard uncertainties in all: scatter of the runs and instruments. */
  readonly uRatio: number;
  readonly uPerStartL: number;
  /** The part of the scatter: variances and covariance of ratio and per-start. */
  readonly scatter: {
    readonly ratioVariance: number;
    readonly perStartVariance: number;
    readonly covariance: number;
    readonly degreesOfFreedom: number;
  };
  /** The part of the instruments: relative, of all drain and of all clean water. */
  readonly drainRelative: number;
  readonly cleanRelative: number;
}

/**
 * Standard errors of a drain fit.
 *
 * The scatter of a single run is that of all devices of the bench pooled, or the device's own where
 * that is larger, and at least what the graduation of the vessels leaves open. It is taken as a share
 * of the drain of the run, and carried through the same least squares that gave the figures
 * (a sandwich: (X'X)⁻¹ X' diag(s²) X (X'X)⁻¹). The errors of the vessels themselves do not show in
 * the scatter: they move all drain, or all clean water, by one factor.
 * @param bench scatter pooled over the fits of the bench
 * Source: JCGM 100:2008 (GUM), 5.1.2 and 5.2.2; the sandwich is derived from y = Xb + e.
 * Checked by: tests/outside-checks/measurement/ (MEA-05), and a simulation of fits in its unit tests
 */
export function fitUncertainty(
  fit: DrainFit,
  bench: Scatter,
  instruments: Instruments,
): FitUncertainty {
  const runs = usedRuns(fit);
  const relative = Math.max(bench.relativeSd, fitScatter(fit).relativeSd);
  let cc = 0;
  let cs = 0;
  let ss = 0;
  let ccv = 0;
  let csv = 0;
  let ssv = 0;
  let cleanL = 0;
  let variances = 0;
  for (const run of runs) {
    const clean = run.clean.volumeL;
    const starts = run.row.values.starts ?? 0;
    const readingL = Math.hypot(
      volumeUncertainty(run.drain, instruments).readingL,
      fit.ratio * volumeUncertainty(run.clean, instruments).readingL,
    );
    const variance = Math.max(relative * expectedDrainL(fit, run), readingL) ** 2;
    cc += clean * clean;
    cs += clean * starts;
    ss += starts * starts;
    ccv += clean * clean * variance;
    csv += clean * starts * variance;
    ssv += starts * starts * variance;
    cleanL += clean;
    variances += variance;
  }
  const scatter = { ratioVariance: variances / cleanL ** 2, perStartVariance: 0, covariance: 0 };
  if (fit.method !== 'pooled') {
    // Rows of (X'X)⁻¹.
    const determinant = cc * ss - cs * cs;
    const [a, b, d] = [ss / determinant, -cs / determinant, cc / determinant];
    scatter.ratioVariance = a * a * ccv + 2 * a * b * csv + b * b * ssv;
    scatter.perStartVariance = b * b * ccv + 2 * b * d * csv + d * d * ssv;
    scatter.covariance = a * b * ccv + (a * d + b * b) * csv + b * d * ssv;
  }
  const drainRelative = sharedRelative(
    runs.map((run) => run.drain),
    instruments,
  );
  const cleanRelative = sharedRelative(
    runs.map((run) => run.clean),
    instruments,
  );
  return {
    uRatio: Math.hypot(
      Math.sqrt(scatter.ratioVariance),
      fit.ratio * Math.hypot(drainRelative, cleanRelative),
    ),
    uPerStartL: Math.hypot(Math.sqrt(scatter.perStartVariance), fit.perStartL * drainRelative),
    scatter: { ...scatter, degreesOfFreedom: bench.degreesOfFreedom },
    drainRelative,
    cleanRelative,
  };
}
