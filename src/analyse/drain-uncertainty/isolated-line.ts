import { type Finding, finding } from '../../findings/index.ts';
import { type Bench, cellPlace } from '../../model/index.ts';
import { normalQuantile } from '../../statistics/index.ts';
import type { DeviceDrain } from '../device-drain.ts';
import type { DrainRun } from '../drain-fit.ts';
import type { DeviceUncertainty } from './device-uncertainty.ts';
import { volumeUncertainty } from './measured-uncertainty.ts';
import { plainRuns, type Scatter } from './run-scatter.ts';

/** Drain of isolated pours with their flush, as a line in the clean volume. */
export interface IsolatedLine {
  /** Drain per clean volume: what the runs without a flush give as drain ratio. */
  readonly slope: number;
  /** Litres per pour: what they give as drain per start, with the flush. */
  readonly interceptL: number;
  readonly uSlope: number;
  readonly uInterceptL: number;
  readonly runs: readonly DrainRun[];
}

/**
 * The second way to a drain ratio and a flush: the line through runs of one start that were collected
 * until after the flush.
 *
 * @param scatter of single runs, pooled over the bench
 * @returns null with fewer than two such runs, or when all hold the same clean volume
 * Source: least squares; the standard errors are carried through it from the scatter of single runs
 *   and the graduation of the vessels, as for the drain fit.
 */
export function isolatedLine(
  bench: Bench,
  { fit }: Pick<DeviceDrain, 'fit'>,
  scatter: Scatter,
): IsolatedLine | null {
  const runs = (fit?.runs ?? []).filter(
    ({ row, refused }) =>
      refused === null &&
      row.values.collected_until === 'after-flush' &&
      (row.values.starts ?? 1) === 1,
  );
  const n = runs.length;
  const mean = (of: (run: DrainRun) => number) => runs.reduce((sum, run) => sum + of(run), 0) / n;
  if (n < 2) return null;
  const cleanMean = mean((run) => run.clean.volumeL);
  const drainMean = mean((run) => run.drain.volumeL);
  let xx = 0;
  let xy = 0;
  for (const { clean, drain } of runs) {
    xx += (clean.volumeL - cleanMean) ** 2;
    xy += (clean.volumeL - cleanMean) * (drain.volumeL - drainMean);
  }
  if (xx === 0) return null;
  const slope = xy / xx;
  let slopeVariance = 0;
  let interceptVariance = 0;
  for (const { clean, drain } of runs) {
    const readingL = volumeUncertainty(drain, bench.settings.instruments).readingL;
    const own = Math.max(scatter.relativeSd * drain.volumeL, readingL) ** 2;
    const weight = (clean.volumeL - cleanMean) / xx;
    slopeVariance += weight * weight * own;
    interceptVariance += (1 / n - weight * cleanMean) ** 2 * own;
  }
  return {
    slope,
    interceptL: drainMean - slope * cleanMean,
    uSlope: Math.sqrt(slopeVariance),
    uInterceptL: Math.sqrt(interceptVariance),
    runs,
  };
}

/**
 * A finding where the two ways disagree: drain ratio against slope, drain per start and flush against
 * intercept, each by more than the confidence allows for.
 *
 * Only where the ratio rests on other runs than the line, so that the two are ways of their own, and
 * where one idle rule alone flushes after a pour.
 */
export function waysDiffer(
  bench: Bench,
  drain: DeviceDrain,
  uncertainty: DeviceUncertainty,
  scatter: Scatter,
): Finding[] {
  const { fit, flushVolumes } = drain;
  const line = isolatedLine(bench, drain, scatter);
  const flush = flushVolumes.find(({ rule }) => rule.values.trigger === 'idle');
  const uFlush = flush === undefined ? undefined : uncertainty.flushes[flushVolumes.indexOf(flush)];
  const place = line?.runs[0]?.row;
  if (line === null || fit === null || uncertainty.fit === null || place === undefined) return [];
  if (flush === undefined || uFlush === undefined) return [];
  // The runs of the line take part in the fit with their flush taken out; what the others give is
  // the way apart.
  const { runs: plain, ratio } = plainRuns(fit);
  if (plain.some((run) => line.runs.includes(run))) return [];
  const drained = flush.volumeL * (flush.rule.values.drain_fraction ?? 1);
  const reach = normalQuantile((1 + bench.settings.confidence) / 2);
  const slopeGap = Math.abs(line.slope - ratio);
  const fixedGap = Math.abs(line.interceptL - fit.perStartL - drained);
  const isSlopeOff = slopeGap > reach * Math.hypot(line.uSlope, uncertainty.fit.uRatio);
  const isFixedOff =
    fixedGap > reach * Math.hypot(line.uInterceptL, uncertainty.fit.uPerStartL, uFlush.uVolumeL);
  if (!isSlopeOff && !isFixedOff) return [];
  const short = (value: number) => Number(value.toPrecision(3));
  return [
    finding(
      'drain-ways-differ',
      `pours of ${drain.device.values.device} collected with their flush make ` +
        `${short(line.slope)} L per clean L and ${short(line.interceptL)} L per pour; the runs ` +
        `without it and the measured flush make ${short(ratio)} and ${short(fit.perStartL + drained)}`,
      'measure again: the flush may have been cut short or caught twice, or its volume changes',
      cellPlace(place, 'drain'),
    ),
  ];
}
