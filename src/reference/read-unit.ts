import type { Dimension, Measures } from './dimensions.ts';
import { SPECIES } from './tables/species.ts';
import type { Unit } from './unit.ts';
import { type CountryWord, entriesOf, namedUnits, type UnitEntry } from './unit-index.ts';
import { isDamaged, tidySpelling } from './unit-spelling.ts';

/** What the place where the unit stands says about it. */
export interface UnitContext {
  /** The dimension the column takes, where it takes one only. */
  readonly dimension?: Dimension;
  /** Whose cups and gallons the bench uses. */
  readonly measures?: Measures;
  /** True in a column of dissolved solids, where ppm is read as mg/L. */
  readonly ppmIsMgPerL?: boolean;
}

export type UnitReading =
  | { readonly kind: 'unit'; readonly unit: Unit }
  | {
      readonly kind: 'problem';
      readonly problem: 'unknown' | 'ambiguous' | 'refused' | 'measures-missing';
      readonly message: string;
      readonly remedy: string;
    };

const REPAIRED = 'a micro or degree sign was damaged by a wrong encoding and was repaired';

/**
 * The unit a spelling means, or why it cannot be known.
 *
 * What: reads spellings that mean one thing; reads a spelling with several meanings only where the
 * context proves one of them; never guesses. Words whose size depends on the country follow
 * `measures`. A species behind or inside the unit (`mg/L as N`, `mg NO3/L`, `ug/L Pb`) becomes the
 * unit's basis, except `mg/L Pt`, which is a scale of colour.
 * @param spelling the text of the unit alone, as it stands in a cell or a header
 * Edge cases: an empty spelling is unknown, except where a pH or a plain ratio is wanted.
 * Source: the tables of `tables/units.ts`, `tables/country-units.ts`, `tables/doubtful-units.ts`.
 * Checked by: tests/outside-checks/units/
 * @example readUnit('µg/L', {}) // { kind: 'unit', unit: { name: 'ug/L', … } }
 * @example readUnit('cup', { measures: 'us' }) // 236.5882365 mL
 */
export function readUnit(spelling: string, context: UnitContext): UnitReading {
  const { text, repaired } = tidySpelling(spelling);
  if (text === '' && context.dimension !== undefined) return readBlank(context.dimension);
  if (isDamaged(text)) {
    return problem(
      'ambiguous',
      `"${spelling}" holds a character lost by a wrong encoding`,
      'write the unit again, as ug/L or uS/cm',
    );
  }
  const reading =
    readEntries(entriesOf(text), spelling, context) ??
    readCountryQualified(text, context) ??
    readWithBasis(text);
  if (reading === null) {
    return problem(
      'unknown',
      spelling.trim() === '' ? 'no unit is given' : `"${spelling}" is not a known unit`,
      'write a unit such as ug/L, mg/L as N, mL, s or psi',
    );
  }
  if (reading.kind === 'problem') return reading;
  return { kind: 'unit', unit: spelledAs(reading.unit, spelling, repaired) };
}

/** The unit of a canonical ASCII name such as `ug/L` or `MPN/100mL`; undefined if none has it. */
export function unitNamed(name: string): Unit | undefined {
  return namedUnits().get(name === 'C' ? 'degC' : name);
}

function readEntries(
  entries: readonly UnitEntry[],
  spelling: string,
  context: UnitContext,
): UnitReading | null {
  const first = entries[0];
  if (first === undefined) return null;
  for (const entry of entries) {
    if (entry.kind === 'sure') return readSure(entry.unit, spelling, context);
    if (entry.kind === 'context' && entry.dimension === context.dimension) {
      return { kind: 'unit', unit: entry.unit };
    }
  }
  if (first.kind === 'country') return readCountryWord(first.word, spelling, context.measures);
  if (first.kind === 'refused')
    return problem('refused', `"${spelling}" ${first.why}`, first.remedy);
  if (first.kind === 'asked') {
    return problem('ambiguous', `"${spelling}" can mean ${first.meanings}`, first.remedy);
  }
  if (first.kind === 'context') return readOutOfContext(first, spelling, context);
  return null;
}

/** °F in a column of hardness and °f in a column of temperatures are asked about. */
function readSure(unit: Unit, spelling: string, context: UnitContext): UnitReading {
  const clash =
    (unit.name === 'degF' && context.dimension === 'hardness') ||
    (unit.name === 'degfH' && context.dimension === 'temperature');
  return clash
    ? problem(
        'ambiguous',
        `"${spelling}" can mean French degrees or degrees Fahrenheit`,
        'write degfH for hardness, degF for temperature',
      )
    : { kind: 'unit', unit };
}

function readOutOfContext(
  entry: Extract<UnitEntry, { kind: 'context' }>,
  spelling: string,
  context: UnitContext,
): UnitReading {
  if (entry.unit.dimension === 'dose-rate') {
    return problem('refused', `"${spelling}" measures a dose, not water`, entry.otherwise);
  }
  if (entry.unit.name === 'ppm') {
    const milligrams = unitNamed('mg/L');
    return context.ppmIsMgPerL === true && milligrams !== undefined
      ? { kind: 'unit', unit: milligrams }
      : problem(
          'ambiguous',
          `"${spelling}" can mean mg/L or the scale of a meter`,
          "write mg/L, or name the unit in the lab file's sidecar",
        );
  }
  return problem('ambiguous', `"${spelling}" alone does not say what it measures`, entry.otherwise);
}

function readCountryWord(
  word: CountryWord,
  spelling: string,
  measures: Measures | undefined,
): UnitReading {
  const us = word.sizes.get('us');
  if (word.presumedUs && measures !== 'imperial' && us !== undefined) {
    return { kind: 'unit', unit: us };
  }
  const names = [...word.sizes.values()].map((unit) => unit.name).join(' or ');
  if (measures === undefined) {
    return problem(
      'measures-missing',
      `the size of "${spelling}" depends on the country`,
      `write ${names}, or set "measures" in bench.json to us, imperial or metric`,
    );
  }
  if (word.presumedUs) {
    return problem(
      'ambiguous',
      `"${spelling}" is a trade word of the US, and this bench uses imperial measures`,
      `write ${names}`,
    );
  }
  const unit = word.sizes.get(measures);
  return unit === undefined
    ? problem(
        'ambiguous',
        `"${spelling}" has no one size in ${measures} measures`,
        `write ${names}, or the size in L or mL`,
      )
    : { kind: 'unit', unit };
}

const BEFORE = /^(US|U\.S\.?|imperial|imp\.?|UK|U\.K\.?|metric)[ -]?(?:liquid |liq\.? )?(.+)$/i;
const BEHIND = /^(.+?)[ (]+(US|U\.S\.?|imperial|imp\.?|UK|U\.K\.?|metric)\)?$/i;

/** `US gal`, `gal (imp)`, `metric cup`: the words that say their country themselves. */
function readCountryQualified(text: string, context: UnitContext): UnitReading | null {
  const before = BEFORE.exec(text);
  const behind = BEHIND.exec(text);
  const [country, word] = before
    ? [before[1], before[2]]
    : behind
      ? [behind[2], behind[1]]
      : [undefined, undefined];
  if (country === undefined || word === undefined) return null;
  const entry = entriesOf(word).find((known) => known.kind === 'country');
  if (entry === undefined) return null;
  const measures = measuresOf(country);
  const unit = entry.word.sizes.get(measures);
  if (unit !== undefined) return { kind: 'unit', unit };
  return readCountryWord({ ...entry.word, presumedUs: false }, text, context.measures ?? measures);
}

function measuresOf(country: string): Measures {
  const lower = country.toLowerCase();
  if (lower.startsWith('metric')) return 'metric';
  return lower.startsWith('us') || lower.startsWith('u.s') ? 'us' : 'imperial';
}

const INSIDE = /^([munp]?g) ?\(?([A-Za-z0-9-]+?)\)?\/([A-Za-z0-9]+)$/;
const STATED = /^(.+?)[ (]*\b(?:as ?|en )\(?([A-Za-z0-9 -]+?)[+-]?\)?$/;
const BEHIND_UNIT = /^(.+?)(?: ?\(| |-)([A-Za-z0-9-]+?)[+-]?\)?$/;

/** A mass concentration with its species behind it or inside it. */
function readWithBasis(text: string): UnitReading | null {
  const inside = INSIDE.exec(text);
  if (inside !== null) {
    const [, mass = '', species = '', volume = ''] = inside;
    const reading = massOfSpecies(`${mass}/${volume}`, species);
    if (reading !== null) return reading;
  }
  for (const pattern of [STATED, BEHIND_UNIT]) {
    const trailing = pattern.exec(text);
    if (trailing === null) continue;
    const [, unitPart = '', species = ''] = trailing;
    const reading = massOfSpecies(unitPart, species);
    if (reading !== null) return reading;
  }
  return null;
}

function massOfSpecies(unitText: string, speciesText: string): UnitReading | null {
  const species = SPECIES.get(speciesText) ?? SPECIES.get(speciesText.toLowerCase());
  if (species === undefined) return null;
  const entries = entriesOf(unitText);
  // Naming a species rules out the scale of a meter, so ppm is mg/L here.
  const isPpm = entries.some((entry) => entry.kind === 'context' && entry.unit.name === 'ppm');
  const sure = entries.find((entry) => entry.kind === 'sure');
  const unit = isPpm ? unitNamed('mg/L') : sure?.kind === 'sure' ? sure.unit : undefined;
  if (unit === undefined || unit.dimension !== 'mass-concentration') return null;
  return { kind: 'unit', unit: { ...unit, basis: `as ${species}` } };
}

function readBlank(dimension: Dimension): UnitReading {
  const name = dimension === 'ph' ? 'pH' : dimension === 'ratio' ? '1' : null;
  const unit = name === null ? undefined : unitNamed(name);
  return unit === undefined
    ? problem('unknown', 'no unit is given', 'write the unit beside the number or in the header')
    : { kind: 'unit', unit };
}

function spelledAs(unit: Unit, spelling: string, repaired: boolean): Unit {
  const note = repaired ? (unit.note === null ? REPAIRED : `${unit.note}; ${REPAIRED}`) : unit.note;
  return unit.spelling === spelling && note === unit.note ? unit : { ...unit, spelling, note };
}

function problem(
  kind: 'unknown' | 'ambiguous' | 'refused' | 'measures-missing',
  message: string,
  remedy: string,
): UnitReading {
  return { kind: 'problem', problem: kind, message, remedy };
}
