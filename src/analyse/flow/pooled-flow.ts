import type { OpenParts, SeenScatter } from './flow-range.ts';
import type { Stretch } from './run-parts.ts';

const S_PER_MIN = 60;

/** All volume over all time of some stretches, L/min, and what is open in it. */
export interface PooledFlow {
  readonly flowLPerMin: number;
  /** L/min; the part of the readings split further. */
  readonly open: OpenParts & { readonly reading: number; readonly stopwatch: number };
}

/**
 * All volume over all time, with the uncertainty of volumes, times and repeats.
 *
 * The vessel errors of all stretches point one way and add up; readings and stops add in quadrature.
 * The scatter is that of a ratio of two sums: √(n/(n − 1) Σ(V − Q t)²) / Σt. For stretches of equal
 * length it is s/√n of their flows.
 * @returns null without any volume or time
 * Source: relative uncertainties in quadrature, JCGM 100:2008 (GUM), 5.1.6; W. G. Cochran (1977),
 *   Sampling Techniques, 3rd edition, variance of a ratio estimate (from memory).
 * Checked by: tests/outside-checks/measurement/flow-uncertainty.test.ts (MEA-03, MEA-04, MEA-08)
 */
export function pooledFlow(parts: readonly Stretch[]): PooledFlow | null {
  const sum = (of: (part: Stretch) => number) => parts.reduce((all, part) => all + of(part), 0);
  const timeS = sum((part) => part.timeS);
  const volumeL = sum((part) => part.volumeL);
  if (!(timeS > 0 && volumeL > 0)) return null;
  const perS = volumeL / timeS;
  const flowLPerMin = perS * S_PER_MIN;
  const reading = (flowLPerMin * Math.sqrt(sum((part) => part.readingVariance))) / volumeL;
  const stopwatch = (flowLPerMin * Math.sqrt(sum((part) => part.timeVariance))) / timeS;
  return {
    flowLPerMin,
    open: {
      scatter: scatterOf(parts, perS, timeS),
      reading,
      stopwatch,
      own: Math.hypot(reading, stopwatch),
      shared: (flowLPerMin * Math.abs(sum((part) => part.sharedL))) / volumeL,
    },
  };
}

function scatterOf(parts: readonly Stretch[], perS: number, timeS: number): SeenScatter | null {
  const n = parts.length;
  if (n < 2) return null;
  const squares = parts.reduce((all, part) => all + (part.volumeL - perS * part.timeS) ** 2, 0);
  return {
    u: (S_PER_MIN * Math.sqrt((n / (n - 1)) * squares)) / timeS,
    degreesOfFreedom: n - 1,
  };
}
