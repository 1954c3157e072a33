import { describe, expect, it } from 'vitest';
import { nameKey } from './analyte-name.ts';
import { tableAnalytes } from './analyte-table.ts';
import { readUnit, unitNamed } from './read-unit.ts';
import { AMBIGUOUS_ROWS, EXACT_ROWS } from './tables/ambiguous-names.ts';
import { BASIS_MUST_BE_STATED, COUNTED_IN_EQUIVALENTS, ELEMENT_OF } from './tables/basis-rules.ts';
import { COUNTRY_ROWS } from './tables/country-units.ts';
import { ASKED_ROWS, CONTEXT_ROWS, REFUSED_ROWS } from './tables/doubtful-units.ts';
import { LEVEL_ROWS } from './tables/levels.ts';
import { SPELLINGS_FROM_MEMORY, SPELLINGS_SEEN } from './tables/more-spellings.ts';
import { RELATED_CAS_ROWS } from './tables/related-cas.ts';
import { QUIET_UNIT_ROWS, UNIT_ROWS } from './tables/units.ts';
import { tidySpelling } from './unit-spelling.ts';

const keys = new Set(tableAnalytes().map(({ key }) => key));
const spellings = (text: string) => text.split(' | ').filter((spelling) => spelling !== '');

describe('the tables of units', () => {
  it('give no spelling to two units', () => {
    const owners = new Map<string, string>();
    const claims: [string, string][] = [
      ...UNIT_ROWS.flatMap(([name, , , more]) =>
        [name, ...spellings(more)].map((text): [string, string] => [text, name]),
      ),
      ...COUNTRY_ROWS.flatMap((row, i) =>
        spellings(row.spellings).map((text): [string, string] => [text, `country ${i}`]),
      ),
      ...ASKED_ROWS.flatMap(([text]) =>
        spellings(text).map((one): [string, string] => [one, 'asked']),
      ),
      ...REFUSED_ROWS.flatMap(([text]) =>
        spellings(text).map((one): [string, string] => [one, 'refused']),
      ),
    ];
    for (const [text, owner] of claims) {
      const { text: tidy } = tidySpelling(text);
      expect([tidy, owners.get(tidy) ?? owner]).toEqual([tidy, owner]);
      owners.set(tidy, owner);
    }
    for (const [text] of CONTEXT_ROWS) {
      for (const one of spellings(text)) expect(owners.get(tidySpelling(one).text)).toBeUndefined();
    }
  });

  it('name the unit of every spelling read in a context', () => {
    for (const [text, name, dimension] of CONTEXT_ROWS) {
      expect(unitNamed(name)?.dimension).toBe(dimension);
      for (const one of spellings(text)) {
        const reading = readUnit(one, { dimension });
        expect(reading.kind === 'unit' && reading.unit.name).toBe(name);
      }
    }
  });

  it('use ASCII names only once', () => {
    const names = [...UNIT_ROWS, ...QUIET_UNIT_ROWS].map(([name]) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[ -~]+$/);
  });
});

describe('the tables of analytes', () => {
  it('give no name, key or alias to two analytes', () => {
    const owners = new Map<string, string>();
    for (const analyte of tableAnalytes()) {
      for (const name of [analyte.key, analyte.name, ...analyte.aliases]) {
        const key = nameKey(name);
        expect(key).not.toBe('');
        expect([name, owners.get(key) ?? analyte.key]).toEqual([name, analyte.key]);
        owners.set(key, analyte.key);
      }
    }
  });

  it('hold a named unit for every analyte, and members that are analytes', () => {
    for (const analyte of tableAnalytes()) {
      expect([analyte.key, unitNamed(analyte.unit) === undefined]).toEqual([analyte.key, false]);
      for (const member of analyte.members) expect(keys.has(member)).toBe(true);
    }
  });

  it('hold kebab-case keys without repetition, and bases for every alias that fixes one', () => {
    expect(keys.size).toBe(tableAnalytes().length);
    for (const { key, aliases, aliasBasis, bases } of tableAnalytes()) {
      expect(key).toMatch(/^[a-z0-9]+(?:-[a-z0-9]+)*$/);
      for (const [alias, basis] of Object.entries(aliasBasis)) {
        expect(aliases).toContain(alias);
        expect(bases.map((known) => known.basis)).toContain(basis);
      }
    }
  });

  it('name only analytes that exist, in every other table', () => {
    const named = [
      ...SPELLINGS_SEEN.map(([key]) => key),
      ...SPELLINGS_FROM_MEMORY.map(([key]) => key),
      ...AMBIGUOUS_ROWS.flatMap(([, list]) => list.split(' ')),
      ...EXACT_ROWS.flatMap(([, list]) => list.split(' ')),
      ...RELATED_CAS_ROWS.flatMap(([, alone, beside]) => `${alone} ${beside}`.trim().split(/ +/)),
      ...BASIS_MUST_BE_STATED,
      ...COUNTED_IN_EQUIVALENTS,
      ...Object.keys(ELEMENT_OF),
      ...Object.values(LEVEL_ROWS).flatMap((rows) => rows.map(([key]) => key)),
    ];
    for (const key of named) expect([key, keys.has(key)]).toEqual([key, true]);
  });

  it('keep names with two meanings out of the aliases, but for symbols that turn on case', () => {
    const aliases = new Set(tableAnalytes().flatMap((analyte) => analyte.aliases.map(nameKey)));
    const clashing = AMBIGUOUS_ROWS.flatMap(([text]) => spellings(text)).filter((name) =>
      aliases.has(nameKey(name)),
    );
    expect(clashing).toEqual(['NA', 'CU', 'CO']);
  });

  it('name a basis that must be stated only where there are several', () => {
    for (const analyte of tableAnalytes()) {
      if (!BASIS_MUST_BE_STATED.has(analyte.key)) continue;
      expect(analyte.bases.length).toBeGreaterThan(1);
    }
  });
});
