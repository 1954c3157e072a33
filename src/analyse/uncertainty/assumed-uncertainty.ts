import type { LabResult } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { horwitzThompsonRelativeSd } from '../../statistics/index.ts';
import { additivePart } from './additive-part.ts';
import type { Uncertainty } from './uncertainty.ts';

/** Mass fraction in water of one canonical unit, taking a litre of water as a kilogram (rounded). */
const MASS_FRACTION: Readonly<Record<string, number>> = {
  'mg/L': 1e-6,
  'ug/L': 1e-9,
  'ng/L': 1e-12,
  'pg/L': 1e-15,
};

/** The ceiling of the Horwitz–Thompson rule, for what is no mass fraction. */
const CEILING = 0.22;

const COUNTED = /^(?:CFU|MPN|PFU|count|cysts|oocysts|particles)\//;

/** True where a result is a number of organisms or particles. */
export function isCounted(analyte: Analyte): boolean {
  return COUNTED.test(analyte.unit);
}

/**
 * Uncertainty where neither the lab nor duplicates of the bench say any: a share of what is usual
 * between laboratories, since feed and product share lab and batch.
 *
 * Counts scatter as Poisson counts with the full ceiling beside, since dilution and reading add to
 * the count. Always flagged `assumed`.
 * @param size a figure of the size of the result, canonical unit
 * @param fraction share of the scatter between labs, `uncertainty.repeatability_fraction`
 * Source: M. Thompson (2000), Analyst 125, 385-386, after W. Horwitz (1982), both from memory. A
 * half to two thirds of it within a lab: common practice, from memory.
 */
export function assumedUncertainty(
  analyte: Analyte,
  result: LabResult,
  size: number,
  fraction: number,
): Uncertainty {
  const common = { from: 'assumed', degreesOfFreedom: Number.POSITIVE_INFINITY } as const;
  if (isCounted(analyte)) {
    return { ...common, relative: CEILING, additive: 0, counting: result.rl ?? 1 };
  }
  const perUnit = MASS_FRACTION[analyte.unit];
  const massFraction = perUnit === undefined ? 0 : Math.min(1, size * perUnit);
  const betweenLabs = massFraction > 0 ? horwitzThompsonRelativeSd(massFraction) : CEILING;
  return {
    ...common,
    relative: fraction * betweenLabs,
    additive: additivePart(result),
    counting: 0,
  };
}
