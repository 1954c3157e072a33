import type { Interval, LevelVerdict } from '../model/index.ts';
import { type Analyte, levelsOf } from '../reference/index.ts';

/**
 * A product held against the current reference levels of the chosen jurisdictions.
 *
 * `within`: all that is known lies at or below the level; `above`: all of it lies above;
 * `cannot-say`: the level lies inside what is possible, so the result does not decide.
 * A reference level is no medical advice: kind and jurisdiction are always printed with it.
 */
export function levelVerdicts(
  analyte: Analyte,
  product: Interval,
  jurisdictions: readonly string[],
): LevelVerdict[] {
  return levelsOf(analyte, jurisdictions).flatMap((level) => {
    if (!level.plain || level.canonicalValue === null) return [];
    return {
      jurisdiction: level.jurisdiction,
      kind: level.kind,
      low: level.low,
      value: level.value,
      unit: level.unit,
      basis: level.basis,
      verdict: verdictOf(product, level.canonicalValue),
      source: level.source,
      verified: level.verified,
    };
  });
}

/** A level given as a range of upper limits is met below its upper end. */
function verdictOf(product: Interval, high: number): LevelVerdict['verdict'] {
  if (product.low > high) return 'above';
  return product.high <= high ? 'within' : 'cannot-say';
}
