import type { Analyte } from './analyte.ts';
import { areSiblings } from './dimensions.ts';
import { unitNamed } from './read-unit.ts';
import { COUNTED_IN_EQUIVALENTS } from './tables/basis-rules.ts';
import type { Unit } from './unit.ts';

/** Why a laboratory's figure cannot become the canonical one. */
export interface ConversionProblem {
  readonly kind: 'problem';
  readonly problem: 'dimension' | 'basis-unstated' | 'basis-unknown' | 'no-molar-mass';
  readonly message: string;
  readonly remedy: string;
}

/** A unit and a name that state different bases. */
export function basisClash(inUnit: string, stated: string): ConversionProblem {
  return {
    kind: 'problem',
    problem: 'basis-unknown',
    message: `the unit says ${inUnit} and the name or column says ${stated}`,
    remedy: 'ask the laboratory which of the two holds',
  };
}

/** A mass that could be on either of two bases. */
export function unstated(analyte: Analyte, unit: Unit): ConversionProblem {
  const bases = analyte.bases.map(({ basis }) => basis);
  return {
    kind: 'problem',
    problem: 'basis-unstated',
    message: `${analyte.key} in ${unit.name} can be ${bases.join(' or ')}`,
    remedy: `name the basis beside the unit (${unit.name} ${bases[0]}) or in the lab file's sidecar`,
  };
}

/** A basis the analyte is not reported on. */
export function unknownBasis(analyte: Analyte, basis: string): ConversionProblem {
  const bases = analyte.bases.map((known) => known.basis);
  return {
    kind: 'problem',
    problem: 'basis-unknown',
    message: `${analyte.key} is not reported ${/^as /.test(basis) ? basis : `on the basis ${basis}`}`,
    remedy:
      bases.length === 0
        ? 'take the basis out, or check the name of the analyte'
        : `report it ${bases.join(' or ')}`,
  };
}

/** A unit that counts moles or equivalents, without the mass to weigh them. */
export function noMolarMass(analyte: Analyte, unit: Unit): ConversionProblem {
  const equivalents =
    COUNTED_IN_EQUIVALENTS.has(analyte.key) && unit.dimension === 'amount-concentration';
  return {
    kind: 'problem',
    problem: 'no-molar-mass',
    message: equivalents
      ? `${analyte.key} is counted in equivalents, and ${unit.name} counts moles`
      : `${analyte.key} has no molar mass or charge in the tables, so ${unit.name} cannot be converted`,
    remedy: equivalents ? 'write meq/L, or mg/L with its basis' : `report it in ${analyte.unit}`,
  };
}

/** A unit that measures something else than the analyte's own. */
export function wrongDimension(analyte: Analyte, unit: Unit): ConversionProblem {
  const canonical = unitNamed(analyte.unit);
  const sibling = canonical !== undefined && areSiblings(canonical.dimension, unit.dimension);
  return {
    kind: 'problem',
    problem: 'dimension',
    message: `${analyte.key} is kept in ${analyte.unit}, and ${unit.name} measures something else`,
    remedy: remedyFor(analyte, unit, sibling),
  };
}

function remedyFor(analyte: Analyte, unit: Unit, isSibling: boolean): string {
  if (isSibling) {
    return (
      `${analyte.unit} and ${unit.name} do not convert; to keep this bench in ${unit.name}, give ` +
      `"${analyte.key}" the unit ${unit.name} in analytes.csv`
    );
  }
  if (unit.dimension === 'activity-concentration') {
    return 'a mass and an activity do not convert; name the activity where it was measured';
  }
  return `report it in a unit that converts to ${analyte.unit}, or check the name of the analyte`;
}
