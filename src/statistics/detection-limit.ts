import { arithmeticMean, sampleSd } from './mean-and-sd.ts';
import { pooledSd } from './pooled-sd.ts';
import { requireNumbers } from './refuse-input.ts';
import { studentTQuantile } from './student-t.ts';

const LEVEL = 0.99;

export interface DetectionLimitInput {
  /** Results of repeats with a known small amount: one group per batch, two or more in each. */
  readonly spikes: readonly (readonly number[])[];
  /** Results of repeats without any; null where the method gave no number. */
  readonly blanks?: readonly (number | null)[];
}

export interface DetectionLimit {
  readonly fromSpikes: number;
  /** Null when there is no blank, or no blank gave a number. */
  readonly fromBlanks: number | null;
  /** The larger of the two. */
  readonly limit: number;
}

/**
 * Smallest amount that repeats show to be told apart from nothing with 99 % confidence.
 *
 * What: the spread of the spiked repeats times the one-sided Student t factor. From blanks: when all
 * gave a number, their mean (not below zero) plus the factor times their spread; when some did, the
 * highest of them.
 * @returns the unit of the input
 * @throws {BenchError} statistics-input for no group, a group of one, a number that is not finite, or
 * a single blank with a number
 * Source: 40 CFR 136 appendix B, revision 2, section II(4) (factors seen; the rule for blanks from
 * memory).
 * Checked by: tests/outside-checks/statistics/detection-limit.test.ts
 * @example detectionLimit({ spikes: [[2.5, 2.7, 2.2, 2.2, 3.1, 2.6, 2.8]] }).limit // 1.017
 */
export function detectionLimit({ spikes, blanks = [] }: DetectionLimitInput): DetectionLimit {
  const pooled = pooledSd(spikes);
  const fromSpikes = pooled.sd * studentTQuantile(LEVEL, pooled.degreesOfFreedom);
  const fromBlanks = blankLimit(blanks);
  return { fromSpikes, fromBlanks, limit: Math.max(fromSpikes, fromBlanks ?? 0) };
}

function blankLimit(blanks: readonly (number | null)[]): number | null {
  const numbers = blanks.filter((blank) => blank !== null);
  if (numbers.length === 0) return null;
  if (numbers.length < blanks.length) {
    requireNumbers('the blanks', numbers, 1);
    return Math.max(...numbers);
  }
  requireNumbers('the blanks', numbers, 2);
  return (
    Math.max(0, arithmeticMean(numbers)) +
    sampleSd(numbers) * studentTQuantile(LEVEL, numbers.length - 1)
  );
}
