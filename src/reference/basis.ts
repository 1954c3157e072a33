import { BenchError } from '../findings/index.ts';
import type { Analyte } from './analyte.ts';
import { nameKey } from './analyte-name.ts';
import {
  basisClash,
  type ConversionProblem,
  noMolarMass,
  unknownBasis,
  unstated,
  wrongDimension,
} from './basis-problems.ts';
import {
  divideRatio,
  exactRatio,
  multiplyRatio,
  ONE,
  type Ratio,
  ratioText,
  ratioValue,
  ZERO,
} from './ratio.ts';
import { unitNamed } from './read-unit.ts';
import {
  BASIS_MUST_BE_STATED,
  COUNTED_IN_EQUIVALENTS,
  ELEMENT_OF,
  HARDNESS_CHARGE,
} from './tables/basis-rules.ts';
import { SPECIES } from './tables/species.ts';
import { linearBetween, type Unit } from './unit.ts';

/** How a laboratory's figure becomes the canonical one: value x ratio + offset. */
export interface Conversion {
  readonly kind: 'conversion';
  readonly ratio: Ratio;
  readonly offset: Ratio;
  /** `ratio` as a number, for display. */
  readonly factor: number;
  /** `mg/L as NO3 to mg/L as N: x 14.007/62.005`; empty where nothing changes. */
  readonly steps: readonly string[];
  /** True where a molar mass had a part in it. */
  readonly basisConverted: boolean;
}

interface Step {
  readonly ratio: Ratio;
  readonly text: string;
}

/**
 * The conversion of a laboratory's unit and basis to the canonical unit and basis of an analyte.
 *
 * What: mass, hardness, amount and charge concentrations are converted through the molar mass and
 * the charge; everything else only within its dimension. Where an analyte is reported on two bases
 * about equally often (nitrate as N or as NO3), the basis must be stated by the unit, the name or a
 * column; where one is customary (calcium as Ca, alkalinity as CaCO3), that one is used.
 * @param statedBasis the basis from the name or a column, `as N` or `N`; null where none is stated
 * @returns the conversion, or why there is none
 * Edge cases: a mass and an activity, colonies and most probable numbers, white and infra-red light
 * never convert; a unit and a name that state different bases are a problem.
 * Checked by: tests/outside-checks/analytes/
 * @example conversionTo(nitrate, mgPerL, 'as NO3') // ratio 14007/62005
 */
export function conversionTo(
  analyte: Analyte,
  unit: Unit,
  statedBasis: string | null,
): Conversion | ConversionProblem {
  const canonical = unitNamed(analyte.unit);
  if (canonical === undefined) return wrongDimension(analyte, unit);
  const toMass = canonical.dimension === 'mass-concentration';
  if (toMass && (unit.dimension === 'mass-concentration' || unit.dimension === 'hardness')) {
    return massConversion(analyte, unit, canonical, statedBasis);
  }
  if (unit.dimension === canonical.dimension) return plainConversion(unit, canonical);
  if (toMass && unit.dimension === 'amount-concentration') {
    return countedConversion(analyte, unit, canonical, gramsPerMole(analyte));
  }
  if (toMass && unit.dimension === 'charge-concentration') {
    return countedConversion(analyte, unit, canonical, gramsPerEquivalent(analyte));
  }
  return wrongDimension(analyte, unit);
}

/** The species of a basis as the tables spell it, `as NO3`; null where it is none. */
function tidyBasis(text: string): string | null {
  const species = text.trim().replace(/^as\b\s*/i, '');
  const known = SPECIES.get(species) ?? SPECIES.get(species.toLowerCase());
  return known === undefined ? null : `as ${known}`;
}

function massConversion(
  analyte: Analyte,
  unit: Unit,
  canonical: Unit,
  statedBasis: string | null,
): Conversion | ConversionProblem {
  if (unit.dimension === 'hardness' && !hasBasis(analyte, 'as CaCO3')) {
    return wrongDimension(analyte, unit);
  }
  const given = givenBasis(analyte, unit, statedBasis);
  if (typeof given === 'object' && given !== null) return given;
  const steps: Step[] = [];
  const inBase =
    unit.dimension === 'hardness' ? unit.toBase : linearBetween(unit, canonical)?.ratio;
  const of = given === null ? '' : ` ${given}`;
  if (inBase !== undefined && !isOne(inBase)) {
    steps.push({
      ratio: inBase,
      text: `${unit.name} to ${canonical.name}${of}: ${ratioText(inBase)}`,
    });
  }
  if (given === analyte.basis || given === null) return joined(steps, ZERO, false);
  const from = gramsOf(analyte, given);
  const to = analyte.basis === null ? null : gramsOf(analyte, analyte.basis);
  if (from === null || to === null) return noMolarMass(analyte, unit);
  steps.push({
    ratio: exactRatio(`${to}/${from}`),
    text: `${canonical.name} ${given} to ${canonical.name} ${analyte.basis}: x ${to}/${from}`,
  });
  return joined(steps, ZERO, true);
}

/** The basis a figure is on; null for an analyte that has none. */
function givenBasis(
  analyte: Analyte,
  unit: Unit,
  statedBasis: string | null,
): string | null | ConversionProblem {
  const stated = statedBasis === null ? null : (tidyBasis(statedBasis) ?? statedBasis);
  if (unit.basis !== null && stated !== null && unit.basis !== stated) {
    return basisClash(unit.basis, stated);
  }
  const given = unit.basis ?? stated;
  if (given === null) {
    return BASIS_MUST_BE_STATED.has(analyte.key) ? unstated(analyte, unit) : analyte.basis;
  }
  if (analyte.basis === null && isOwnSymbol(analyte, given)) return null;
  // A name such as "hardness (mmol/L)" names a unit, which a mass concentration contradicts.
  const isSpecies = given.startsWith('as ') && hasBasis(analyte, given);
  return isSpecies ? given : unknownBasis(analyte, given);
}

function plainConversion(unit: Unit, canonical: Unit): Conversion {
  const between = linearBetween(unit, canonical);
  if (between === null) throw notExact(`${unit.name} to ${canonical.name}`);
  const { ratio, offset } = between;
  if (isOne(ratio) && offset.num === 0) return joined([], ZERO, false);
  const shift = offset.num === 0 ? null : divideRatio(offset, ratio);
  const parts = [
    ...(shift === null ? [] : [`${shift.num < 0 ? 'minus' : 'plus'} ${sizeText(shift)}`]),
    ...(isOne(ratio) ? [] : [ratioText(ratio)]),
  ];
  const text = `${unit.name} to ${canonical.name}: ${parts.join(', then ')}`;
  return joined([{ ratio, text }], offset, false);
}

function countedConversion(
  analyte: Analyte,
  unit: Unit,
  canonical: Unit,
  grams: { readonly ratio: Ratio; readonly text: string } | null,
): Conversion | ConversionProblem {
  const base = unitNamed(unit.dimension === 'amount-concentration' ? 'mmol/L' : 'meq/L');
  const milligrams = unitNamed('mg/L');
  if (grams === null || base === undefined || milligrams === undefined) {
    return noMolarMass(analyte, unit);
  }
  const of = analyte.basis === null ? '' : ` ${analyte.basis}`;
  const steps: Step[] = [];
  if (unit.name !== base.name) {
    const text = `${unit.name} to ${base.name}: ${ratioText(unit.toBase)}`;
    steps.push({ ratio: unit.toBase, text });
  }
  steps.push({ ratio: grams.ratio, text: `${base.name} to mg/L${of}: x ${grams.text}` });
  const onward = linearBetween(milligrams, canonical)?.ratio;
  if (onward !== undefined && !isOne(onward)) {
    steps.push({ ratio: onward, text: `mg/L to ${canonical.name}${of}: ${ratioText(onward)}` });
  }
  return joined(steps, ZERO, true);
}

/** Grams of the canonical basis in one mole; null for what is counted in equivalents. */
function gramsPerMole(analyte: Analyte): { ratio: Ratio; text: string } | null {
  if (COUNTED_IN_EQUIVALENTS.has(analyte.key)) return null;
  const grams = analyte.basis === null ? analyte.molarMass : gramsOf(analyte, analyte.basis);
  return grams === null ? null : { ratio: exactRatio(String(grams)), text: `${grams} g/mol` };
}

function gramsPerEquivalent(analyte: Analyte): { ratio: Ratio; text: string } | null {
  const grams = analyte.basis === null ? analyte.molarMass : gramsOf(analyte, analyte.basis);
  if (grams === null) return null;
  if (COUNTED_IN_EQUIVALENTS.has(analyte.key)) {
    return { ratio: exactRatio(String(grams)), text: `${grams} g/eq` };
  }
  const charge = analyte.key === 'total-hardness' ? HARDNESS_CHARGE : Math.abs(analyte.charge ?? 0);
  return charge === 0
    ? null
    : { ratio: exactRatio(`${grams}/${charge}`), text: `${grams}/${charge} g/eq` };
}

function joined(steps: readonly Step[], offset: Ratio, basisConverted: boolean): Conversion {
  let ratio = ONE;
  for (const step of steps) {
    const product = multiplyRatio(ratio, step.ratio);
    if (product === null) throw notExact(steps.map(({ text }) => text).join('; '));
    ratio = product;
  }
  return {
    kind: 'conversion',
    ratio,
    offset,
    factor: ratioValue(ratio),
    steps: steps.map(({ text }) => text),
    basisConverted,
  };
}

function hasBasis(analyte: Analyte, basis: string): boolean {
  return analyte.bases.some((known) => known.basis === basis);
}

function gramsOf(analyte: Analyte, basis: string): number | null {
  return analyte.bases.find((known) => known.basis === basis)?.gPerMol ?? null;
}

/** `as Pb` behind a result of lead says nothing new. */
function isOwnSymbol(analyte: Analyte, basis: string): boolean {
  const symbol = basis.replace(/^as /, '');
  if (ELEMENT_OF[analyte.key] === symbol) return true;
  const key = nameKey(symbol);
  return analyte.aliases.some((alias) => nameKey(alias) === key);
}

function isOne(ratio: Ratio): boolean {
  return ratio.num === 1 && ratio.den === 1;
}

function sizeText(ratio: Ratio): string {
  return String(Math.abs(ratioValue(ratio)));
}

function notExact(steps: string): BenchError {
  return new BenchError(
    'number-unreadable',
    `the factor of "${steps}" does not fit into whole numbers`,
    'shorten a molar mass or factor in the tables',
  );
}
