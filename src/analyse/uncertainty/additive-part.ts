import type { LabResult } from '../../model/index.ts';

/**
 * t(0.99) of seven replicates: a detection limit is that many standard deviations of a low sample
 * (40 CFR 136 Appendix B, revision 2). Rounded.
 */
const DETECTION_LIMIT_SDS = 3.14;

/** A quantitation limit is ten standard deviations of a low sample: L. A. Currie (1968), memory. */
const REPORTING_LIMIT_SDS = 10;

/** A figure rounded to a step may lie anywhere in it: step / sqrt(12), as in JCGM 100:2008, F.2.2.1. */
const STEPS_PER_SD = Math.sqrt(12);

const PRINTED = /^\s*(\d+(?:\.(\d*))?)(?:[eE]([-+]?\d+))?/;

/**
 * The scatter that does not shrink with the concentration, canonical unit: what the limits of the lab
 * say, and the rounding of the printed figure. 0 where neither is known.
 */
export function additivePart(result: LabResult): number {
  return Math.hypot(nearLimit(result), rounding(result));
}

function nearLimit({ mdl, rl }: LabResult): number {
  if (mdl !== null) return mdl / DETECTION_LIMIT_SDS;
  return rl === null ? 0 : rl / REPORTING_LIMIT_SDS;
}

/** Two results printed as 62 and 61 may differ by anything from 0 to 2. */
function rounding(result: LabResult): number {
  if (result.kind !== 'quantified') return 0;
  const printed = PRINTED.exec(result.text);
  if (printed === null) return 0;
  const [, digits = '', decimals = '', power = '0'] = printed;
  const number = Number(digits);
  if (!(number > 0)) return 0;
  // The step has the same power and conversion as the number in front of it.
  const scale = result.value / (number * 10 ** Number(power));
  return (scale * 10 ** (Number(power) - decimals.length)) / STEPS_PER_SD;
}
