import type { Interval, LabResult } from '../../model/index.ts';

/**
 * What the lab can have read behind a result, whatever it then printed.
 *
 * A lab that lists a detection limit reports what lies between its limits, so "not detected" is a
 * reading below the detection limit; without one it is a reading below the only limit there is. A
 * count of none is a reading of 0.
 * @throws {RangeError} for a missing result
 */
export function readingsOf(result: LabResult, isCount = false): Interval {
  switch (result.kind) {
    case 'quantified':
      return { low: result.value, high: result.value };
    case 'notDetected':
      return {
        low: 0,
        high: isCount ? 0 : (result.mdl ?? result.rl ?? Number.POSITIVE_INFINITY),
      };
    case 'notQuantified':
      return { low: result.mdl ?? 0, high: result.rl ?? Number.POSITIVE_INFINITY };
    case 'aboveRange':
      return { low: result.limit, high: Number.POSITIVE_INFINITY };
    case 'mostProbable':
      return { low: result.low, high: result.high };
    case 'missing':
      throw new RangeError('a missing result has no reading');
    default:
      return result satisfies never;
  }
}
