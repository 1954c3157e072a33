import { type AnalyteIndex, readUnit } from '../../reference/index.ts';
import { isNumericTwin, normalHeader, roleWord } from './header-roles.ts';
import type { SeriesRole } from './layout-plan.ts';
import { BENCH_DIMENSIONS } from './resolve-unit.ts';

/** What the head of a column of a wide file says. */
export type ColumnTitle =
  | { readonly kind: 'analyte'; readonly name: string; readonly unit: string | null }
  | { readonly kind: 'beside'; readonly role: SeriesRole; readonly of: string | null }
  | { readonly kind: 'verdict' }
  | { readonly kind: 'role' }
  /** A name with a unit that is no analyte of the tables: figures nobody can place. */
  | { readonly kind: 'unknown-analyte'; readonly name: string; readonly unit: string }
  | { readonly kind: 'other' };

const VERDICT = /within|standards?\b|complian|verdict|exceed|assessment|pass.?fail/i;
const BESIDE: readonly (readonly [SeriesRole, RegExp])[] = [
  ['sign', /(?:^|[ _.-])(?:remark ?code|sign|censor(?:ing)?)[ _.-]*\d*$/i],
  ['qualifier', /(?:^|[ _.-])(?:qual(?:ifier)?s?|flags?|q)[ _.-]*\d*$/i],
  ['mdl', /(?:^|[ _.-])(?:mdl|lod|detection limit)[ _.-]*\d*$/i],
  ['rl', /(?:^|[ _.-])(?:m?rl|pql|loq|reporting limit)[ _.-]*\d*$/i],
];
/** Units whose slash or bracket a program turned into points or underscores. */
const MANGLED =
  /[ ._]+\(?(mg|ug|µg|ng|g|mg\/l|us|ms|cfu|mpn|count|ppm|ppb|ntu|fnu|bq|pci|meq|mmol)(?:[ ._/]+(l|cm|100ml|ml))?[ ._)]*$/i;

/** Reads the head of a column; line breaks in it are blanks. */
export function readColumnTitle(header: string, analytes: AnalyteIndex): ColumnTitle {
  const text = header.replace(/\s+/g, ' ').trim();
  if (text === '' || isNumericTwin(text)) return { kind: 'other' };
  const beside = besideOf(text, analytes);
  if (beside !== null) return beside;
  if (VERDICT.test(text.replace(/_/g, ' '))) return { kind: 'verdict' };
  const direct = splits(text).find(({ name }) => isAnalyte(name, analytes));
  if (roleWord(text) !== null && direct?.unit === undefined) return { kind: 'role' };
  if (direct !== undefined) {
    return { kind: 'analyte', name: direct.name, unit: direct.unit ?? null };
  }
  if (roleWord(text) !== null) return { kind: 'role' };
  const withUnit = splits(text).find(({ unit }) => unit !== undefined);
  return withUnit?.unit === undefined
    ? { kind: 'other' }
    : { kind: 'unknown-analyte', name: withUnit.name, unit: withUnit.unit };
}

interface Split {
  readonly name: string;
  readonly unit?: string;
}

/** The ways to take a unit off a title, the surest first. */
function splits(text: string): Split[] {
  const found: Split[] = [];
  const bracket = /^(.+?)\s*[([]([^()[\]]*)[)\]]\s*$/.exec(text);
  if (bracket !== null) {
    const [, name = '', unit = ''] = bracket;
    if (isConcentrationUnit(unit)) {
      found.push({ name, unit });
      const bare = name.replace(/\s*[([][^()[\]]*[)\]]\s*$/, '');
      if (bare !== name) found.push({ name: bare, unit });
    }
  }
  const last = /^(.+?)[,;:]?\s+-?\s*(\S+)$/.exec(text);
  if (last !== null && isConcentrationUnit(last[2] ?? '')) {
    found.push({ name: last[1] ?? '', unit: last[2] ?? '' });
  }
  const mangled = MANGLED.exec(text);
  if (mangled !== null) {
    const [whole, mass = '', volume] = mangled;
    const unit = volume === undefined ? mass : `${mass}/${volume}`;
    const name = text
      .slice(0, text.length - whole.length)
      .replace(/[._]+/g, ' ')
      .trim();
    if (name !== '' && (volume !== undefined || /^(?:ppm|ppb|ntu|fnu)$/i.test(mass))) {
      found.push({ name, unit });
    }
  }
  found.push({ name: text }, { name: text.replace(/[._]+/g, ' ').trim() });
  found.push({ name: text.replace(/[ _.]*\d+$/, '') });
  return found.flatMap((split) => [split, ...withoutMeasureWord(split)]);
}

/** `Lead Amount`, `Iron concentration`: the word behind says nothing about the analyte. */
function withoutMeasureWord(split: Split): Split[] {
  const name = split.name.replace(/[ _.]+(?:amount|value|level|conc(?:entration)?|result)s?$/i, '');
  return name === split.name ? [] : [{ ...split, name }];
}

function isConcentrationUnit(text: string): boolean {
  const reading = readUnit(text, {});
  if (reading.kind === 'unit') return !BENCH_DIMENSIONS.has(reading.unit.dimension);
  // ppm is a unit all the same; which one, is asked at the figures.
  return reading.problem === 'ambiguous' && text.length > 2;
}

function isAnalyte(name: string, analytes: AnalyteIndex): boolean {
  if (name.length < 2 || /^\d/.test(name)) return false;
  const reading = analytes.resolve(name, null);
  return reading.kind === 'found' || reading.kind === 'ambiguous';
}

function besideOf(text: string, analytes: AnalyteIndex): ColumnTitle | null {
  for (const [role, pattern] of BESIDE) {
    const match = pattern.exec(text);
    if (match === null) continue;
    const name = text.slice(0, match.index).replace(/[._]+/g, ' ').trim();
    if (name === '') return { kind: 'beside', role, of: null };
    const { name: of } = splits(name).find((split) => isAnalyte(split.name, analytes)) ?? {};
    if (of !== undefined) return { kind: 'beside', role, of: normalHeader(of) };
  }
  return null;
}
