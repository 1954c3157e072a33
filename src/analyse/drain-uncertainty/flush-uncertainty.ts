import { sampleSd } from '../../statistics/index.ts';
import type { FlushVolume } from '../flush-volumes.ts';
import { type Instruments, sharedRelative, volumeUncertainty } from './measured-uncertainty.ts';
import { NO_SCATTER, type Scatter } from './run-scatter.ts';

/** What is open in the volume of one flush of a rule, litres. */
export interface FlushUncertainty {
  /** Standard uncertainty in all. */
  readonly uVolumeL: number;
  /** The part of the scatter of the measured flushes. */
  readonly scatterL: number;
  readonly degreesOfFreedom: number;
  /** The part of the vessel or scale, or of a volume that was only stated. */
  readonly sharedL: number;
  readonly restsOn: 'flushes' | 'stated';
}

/** Scatter of the measured flushes of one rule. */
export function flushScatter({ measured, volumeL }: FlushVolume): Scatter {
  const degreesOfFreedom = measured.length - 1;
  if (degreesOfFreedom <= 0 || volumeL <= 0) return NO_SCATTER;
  const sd = sampleSd(measured.map(({ volume }) => volume.volumeL));
  return { relativeSd: sd / volumeL, degreesOfFreedom };
}

/**
 * Standard uncertainty of a flush volume: that of a mean of measured flushes, or an assumed share of
 * a volume that flush-rules.csv states.
 *
 * @param bench scatter pooled over the flush rules of the bench; the rule's own where it is larger
 * @param statedRelative relative standard uncertainty of a stated volume, an assumption
 * Source: s / √n of a mean, JCGM 100:2008 (GUM), 4.2.3.
 */
export function flushUncertainty(
  flush: FlushVolume,
  bench: Scatter,
  instruments: Instruments,
  statedRelative: number,
): FlushUncertainty {
  const { measured, volumeL } = flush;
  if (measured.length === 0) {
    const sharedL = statedRelative * volumeL;
    return { uVolumeL: sharedL, scatterL: 0, degreesOfFreedom: 0, sharedL, restsOn: 'stated' };
  }
  const volumes = measured.map(({ volume }) => volume);
  const relative = Math.max(bench.relativeSd, flushScatter(flush).relativeSd);
  const readingL = Math.sqrt(
    volumes.reduce((sum, one) => sum + volumeUncertainty(one, instruments).readingL ** 2, 0) /
      volumes.length,
  );
  const scatterL = Math.max(relative * volumeL, readingL) / Math.sqrt(volumes.length);
  const sharedL = sharedRelative(volumes, instruments) * volumeL;
  return {
    uVolumeL: Math.hypot(scatterL, sharedL),
    scatterL,
    degreesOfFreedom: bench.degreesOfFreedom,
    sharedL,
    restsOn: 'flushes',
  };
}
