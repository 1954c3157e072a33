import { readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, it } from 'vitest';
import { COMMAND_TABLE } from '../../src/cli/command-table.ts';
import { packageVersion } from '../../src/cli/package-version.ts';
import { parseCall } from '../../src/cli/parse-call.ts';
import type { Outcome } from '../../src/report/index.ts';
import { type Format, render } from '../../src/report/render.ts';
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
  ['spikes/1', ['reductions', bench('fourteen-devices'), '--spikes']],
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
  ['other-feed/1', ['other-feed', bench('fourteen-devices'), '--feed', bench('hill-town.csv')]],
  ['minerals/1', ['minerals', bench('fourteen-devices')]],
  ['sheets/1', ['sheets', bench('first-bench')]],
  ['compare/1', ['compare', bench('fourteen-devices')]],
  ['told-apart/1', ['compare', bench('fourteen-devices'), '--told-apart']],
  ['told-apart-groups/1', ['compare', bench('fourteen-devices'), '--groups']],
  ['next-tests/1', ['next-tests', bench('fourteen-devices'), '--prices', bench('lab-prices.csv')]],
  [
    'test-plan/1',
    ['next-tests', bench('fourteen-devices'), '--plan', '--prices', bench('lab-prices.csv')],
  ],
  [
    'test-packages/1',
    ['next-tests', bench('fourteen-devices'), '--packages', '--prices', bench('lab-prices.csv')],
  ],
  ['trace/1', ['trace', bench('first-bench'), 'tankless-one', 'reduction.lead']],
  ['lookup/1', ['lookup', 'nitrate']],
];

const VERSION = packageVersion();
const outcomes = new Map<string, Promise<Outcome>>();

/** What a call gives, computed once, in this process. */
function outcomeOf(args: readonly string[]): Promise<Outcome> {
  const key = JSON.stringify(args);
  const known = outcomes.get(key) ?? runHere(args);
  outcomes.set(key, known);
  return known;
}

async function runHere(argv: readonly string[]): Promise<Outcome> {
  const { entry, args, options } = parseCall(argv, COMMAND_TABLE);
  const command = await entry.load();
  const io = { progress: async () => {} };
  const { outcome } = await command.run({ args, options, io, version: VERSION });
  if (outcome === null) throw new Error(`${argv.join(' ')} gave no data`);
  return outcome;
}

async function textOf(args: readonly string[], format: Format, width = 80): Promise<string> {
  return render(await outcomeOf(args), format, { width, version: VERSION });
}

describe('the JSON of every command', () => {
  it.each(CALLS)('%s satisfies its published schema', async (schema, args) => {
    const text = await textOf(args, 'json');
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
    '%s is the same bytes from the built program in another time zone, language and folder',
    async (_s, args) => {
      const there = await runProgram([...args, '--format', 'json'], {
        env: { TZ: 'Pacific/Chatham', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' },
        cwd: tmpdir(),
      });
      expect(there.stderr).not.toContain('a defect of the tool');
      expect(there.code).toBe(0);
      expect(there.stdout).toBe(await textOf(args, 'json'));
    },
  );

  it('never holds NaN, an infinity or a negative zero', async () => {
    for (const [, args] of CALLS) {
      expect(await textOf(args, 'json')).not.toMatch(/\b(?:NaN|Infinity)\b|[:[,]\s*-0(?![.\d])/);
    }
  });
});

describe('the CSV of every command', () => {
  it.each(CALLS)('%s is rectangular and has one line a row', async (_schema, args) => {
    const rows = parse(await textOf(args, 'csv')) as string[][];
    const json = JSON.parse(await textOf(args, 'json')) as {
      rows: readonly unknown[];
    };
    expect(rows).toHaveLength(json.rows.length + 1);
  });
});

describe('filters', () => {
  it('never change the numbers of what remains', async () => {
    const rowsOf = async (args: readonly string[]) =>
      (
        JSON.parse(await textOf(args, 'json')) as {
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
      const text = await textOf(args, 'table', width);
      for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(width);
    }
  });

  it('are as wide as the terminal says it is', async () => {
    const args = ['reductions', bench('first-bench')];
    const wide = await runProgram(args, { env: { COLUMNS: '120' } });
    expect(wide.stdout).toBe(await textOf(args, 'table', 120));
    expect(wide.stdout).not.toBe(await textOf(args, 'table', 80));
  });
});
