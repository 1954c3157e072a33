import { readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt, ROOT, runProgram } from '../cli/built-program.ts';

beforeAll(ensureBuilt);

const bench = (name: string) => path.join(ROOT, 'samples', name);

/** Calls that give JSON, by the schema they publish. */
const CALLS: readonly (readonly [string, readonly string[]])[] = [
  ['findings/1', ['check', bench('fourteen-devices')]],
  ['reductions/1', ['reductions', bench('fourteen-devices')]],
  ['sums/1', ['reductions', bench('fourteen-devices'), '--sums']],
  ['log-reductions/1', ['reductions', bench('fourteen-devices'), '--log10']],
  ['filter-life/1', ['reductions', bench('fourteen-devices'), '--filter-life']],
  ['claims/1', ['claims', bench('fourteen-devices')]],
  ['water-use/1', ['water-use', bench('fourteen-devices')]],
  ['water-curve/1', ['water-use', bench('fourteen-devices'), '--curve']],
  ['break-even/1', ['water-use', bench('fourteen-devices'), '--break-even']],
  ['water-inputs/1', ['water-use', bench('first-bench'), '--inputs']],
  ['drain-regions/1', ['water-use', bench('fourteen-devices'), '--regions', '--draws', '100']],
  ['sweep/1', ['water-use', bench('first-bench'), '--sweep', 'pour=100 ml..2 L x 3 log']],
  ['pours/1', ['pours', bench('fourteen-devices')]],
  ['idle-rise/1', ['pours', bench('fourteen-devices'), '--above', '50 ppm']],
  ['costs/1', ['costs', bench('fourteen-devices')]],
  ['panel/1', ['panel', bench('fourteen-devices')]],
  ['minerals/1', ['minerals', bench('fourteen-devices')]],
  ['sheets/1', ['sheets', bench('first-bench')]],
  ['compare/1', ['compare', bench('fourteen-devices')]],
  ['told-apart/1', ['compare', bench('fourteen-devices'), '--told-apart']],
  ['told-apart-groups/1', ['compare', bench('fourteen-devices'), '--groups']],
  ['trace/1', ['trace', bench('first-bench'), 'tankless-one', 'reduction.lead']],
  ['lookup/1', ['lookup', 'nitrate']],
];

const outputs = new Map<string, Promise<string>>();

/** The stdout of a call; the same call is run once. */
function outputOf(args: readonly string[], env = {}, cwd = ROOT): Promise<string> {
  const key = JSON.stringify([args, env, cwd]);
  const known = outputs.get(key) ?? run(args, env, cwd);
  outputs.set(key, known);
  return known;
}

async function run(args: readonly string[], env: object, cwd: string): Promise<string> {
  const { code, stdout, stderr } = await runProgram(args, { env: { ...env }, cwd });
  expect(stderr).not.toContain('a defect of the tool');
  expect(code).toBe(0);
  return stdout;
}

describe('the JSON of every command', () => {
  it.each(CALLS)('%s satisfies its published schema', async (schema, args) => {
    const text = await outputOf([...args, '--format', 'json']);
    const file = path.join(ROOT, 'docs/json-schema', `${schema.replace('/', '-')}.json`);
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(
      JSON.parse(readFileSync(file, 'utf8')) as object,
    );
    const value = JSON.parse(text) as { schema: string; rows: readonly unknown[] };
    expect(validate(value), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
    expect(value.schema).toBe(schema);
    expect(value.rows.length).toBeGreaterThan(0);
  });

  it.each(CALLS)(
    '%s is the same bytes in another time zone, language and folder',
    async (_s, args) => {
      const here = await outputOf([...args, '--format', 'json']);
      const there = await outputOf(
        [...args, '--format', 'json'],
        { TZ: 'Pacific/Chatham', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' },
        tmpdir(),
      );
      expect(there).toBe(here);
    },
  );

  it('never holds NaN, an infinity or a negative zero', async () => {
    for (const [, args] of CALLS) {
      expect(await outputOf([...args, '--format', 'json'])).not.toMatch(
        /\b(?:NaN|Infinity)\b|[:[,]\s*-0(?![.\d])/,
      );
    }
  });
});

describe('the CSV of every command', () => {
  it.each(CALLS)('%s is rectangular and has one line a row', async (_schema, args) => {
    const rows = parse(await outputOf([...args, '--format', 'csv'])) as string[][];
    const json = JSON.parse(await outputOf([...args, '--format', 'json'])) as {
      rows: readonly unknown[];
    };
    expect(rows).toHaveLength(json.rows.length + 1);
  });
});

describe('filters', () => {
  it('never change the numbers of what remains', async () => {
    const rowsOf = async (args: readonly string[]) =>
      (
        JSON.parse(await outputOf([...args, '--format', 'json'])) as {
          rows: readonly { device: string }[];
        }
      ).rows;
    for (const command of ['reductions', 'water-use', 'pours', 'compare']) {
      const all = await rowsOf([command, bench('fourteen-devices')]);
      const some = await rowsOf([command, bench('fourteen-devices'), '--device', 'tankless-c']);
      expect(some.length).toBeGreaterThan(0);
      expect(some).toEqual(all.filter((row) => row.device === 'tankless-c'));
    }
  });
});

describe('tables', () => {
  it.each([80, 120])('fit into %i columns', async (width) => {
    // Findings are one line each, whatever the width, so that a search finds them.
    for (const [schema, args] of CALLS) {
      if (schema === 'findings/1') continue;
      const text = await outputOf(args, { COLUMNS: String(width) });
      for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(width);
    }
  });
});
