import type { Analyte } from './analyte.ts';
import { nameKey } from './analyte-name.ts';
import { readCas } from './cas.ts';
import { areSiblings } from './dimensions.ts';
import { readUnit, unitNamed } from './read-unit.ts';

/** A row of a bench's analytes.csv. */
export interface ExtraAnalyte {
  readonly key: string;
  readonly name: string | null;
  readonly cas: string | null;
  readonly unit: string | null;
  readonly aliases: readonly string[];
}

/** A row of analytes.csv, or a part of one, that could not be taken. */
export interface AnalyteProblem {
  /** Index of the row in the list given, from 0. */
  readonly row: number;
  readonly problem: 'name-clash' | 'cas' | 'unit-missing' | 'unit-unusable' | 'key-repeated';
  readonly message: string;
  readonly remedy: string;
}

export interface ExtendedAnalytes {
  readonly analytes: readonly Analyte[];
  /** Aliases of the bench by their compared form. */
  readonly ownAliases: ReadonlyMap<string, Analyte>;
  readonly problems: readonly AnalyteProblem[];
}

/**
 * Adds the analytes and aliases of a bench to those of the tables.
 *
 * A known key adds aliases; its `unit` may choose another way of measuring the same thing (CFU/100mL
 * for an analyte kept in MPN/100mL, FNU for NTU) and nothing else. A name that already belongs to
 * another analyte is a problem and is not taken.
 */
export function addExtraAnalytes(
  table: readonly Analyte[],
  extra: readonly ExtraAnalyte[],
): ExtendedAnalytes {
  if (extra.length === 0) return { analytes: table, ownAliases: new Map(), problems: [] };
  const analytes = new Map(table.map((analyte) => [analyte.key, analyte]));
  const owners = new Map<string, string>();
  for (const analyte of table) {
    for (const name of [analyte.key, analyte.name, ...analyte.aliases]) {
      owners.set(nameKey(name), analyte.key);
    }
  }
  const problems: AnalyteProblem[] = [];
  const ownNames = new Map<string, string>();
  const seen = new Set<string>();
  extra.forEach((row, index) => {
    const report = (problem: AnalyteProblem['problem'], message: string, remedy: string) => {
      problems.push({ row: index, problem, message, remedy });
    };
    if (seen.has(row.key)) {
      report('key-repeated', `key "${row.key}" stands twice`, 'write all its aliases in one row');
      return;
    }
    seen.add(row.key);
    const before = analytes.get(row.key);
    const base = before ?? newAnalyte(row, report);
    if (base === null) return;
    if (before === undefined && !claim(nameKey(row.key), row.key, owners)) {
      report(
        'name-clash',
        `key "${row.key}" is a name of "${owners.get(nameKey(row.key))}"`,
        `use the key "${owners.get(nameKey(row.key))}", or choose another`,
      );
      return;
    }
    const taken: string[] = [];
    for (const alias of [...(row.name === null ? [] : [row.name]), ...row.aliases]) {
      const name = nameKey(alias);
      if (claim(name, row.key, owners)) {
        ownNames.set(name, row.key);
        taken.push(alias);
      } else {
        report(
          'name-clash',
          `"${alias}" already means "${owners.get(name)}"`,
          `take the alias out of the row of "${row.key}"`,
        );
      }
    }
    const aliases = [...base.aliases, ...taken.filter((alias) => !base.aliases.includes(alias))];
    const unit = before === undefined ? base.unit : chosenUnit(before, row.unit, report);
    analytes.set(row.key, { ...base, aliases, unit });
  });
  const ownAliases = new Map<string, Analyte>();
  for (const [name, key] of ownNames) {
    const analyte = analytes.get(key);
    if (analyte !== undefined) ownAliases.set(name, analyte);
  }
  return { analytes: [...analytes.values()], ownAliases, problems };
}

type Report = (problem: AnalyteProblem['problem'], message: string, remedy: string) => void;

function claim(name: string, key: string, owners: Map<string, string>): boolean {
  const owner = owners.get(name);
  if (owner !== undefined && owner !== key) return false;
  owners.set(name, key);
  return true;
}

function newAnalyte(row: ExtraAnalyte, report: Report): Analyte | null {
  if (row.unit === null || row.unit.trim() === '') {
    report(
      'unit-missing',
      `"${row.key}" is new and has no unit`,
      'name the unit its results are kept in, such as ug/L',
    );
    return null;
  }
  const reading = readUnit(row.unit, {});
  if (reading.kind === 'problem') {
    report('unit-unusable', reading.message, reading.remedy);
    return null;
  }
  return {
    key: row.key,
    name: row.name ?? row.key,
    cas: checkedCas(row.cas, report),
    group: 'of this bench',
    kind: 'contaminant',
    molarMass: null,
    charge: null,
    unit: reading.unit.name,
    basis: reading.unit.basis,
    bases: reading.unit.basis === null ? [] : [{ basis: reading.unit.basis, gPerMol: null }],
    aliases: [],
    aliasBasis: {},
    members: [],
    note: null,
  };
}

function checkedCas(cas: string | null, report: Report): string | null {
  if (cas === null) return null;
  const reading = readCas(cas);
  if (reading.kind === 'problem') report('cas', reading.message, reading.remedy);
  return reading.kind === 'cas' ? reading.cas : null;
}

function chosenUnit(analyte: Analyte, wanted: string | null, report: Report): string {
  if (wanted === null || wanted.trim() === '') return analyte.unit;
  const reading = readUnit(wanted, {});
  if (reading.kind === 'problem') {
    report('unit-unusable', reading.message, reading.remedy);
    return analyte.unit;
  }
  const canonical = unitNamed(analyte.unit);
  if (reading.unit.name === canonical?.name) return analyte.unit;
  const isSibling =
    canonical !== undefined && areSiblings(canonical.dimension, reading.unit.dimension);
  if (isSibling) return reading.unit.name;
  report(
    'unit-unusable',
    `"${analyte.key}" is kept in ${analyte.unit}, not in ${reading.unit.name}`,
    'leave the unit blank: results in other units are converted',
  );
  return analyte.unit;
}
