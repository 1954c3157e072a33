import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CommandEntry } from '../../src/cli/command-entry.ts';
import { COMMAND_TABLE } from '../../src/cli/command-table.ts';
import { requestedHelp } from '../../src/cli/help.ts';
import { ALWAYS, OPTION_TABLE } from '../../src/cli/option-table.ts';
import { ensureBuilt, ROOT, runProgram, temporaryFolder } from './built-program.ts';

let folder: string;

beforeAll(() => {
  ensureBuilt();
  folder = temporaryFolder();
  cpSync(path.join(ROOT, 'samples'), path.join(folder, 'samples'), { recursive: true });
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs a call as it is written for a shell, in a folder that holds `samples/`. */
function call(text: string) {
  return runProgram(wordsOf(text), { cwd: folder });
}

function wordsOf(text: string): string[] {
  return (text.match(/"[^"]*"|\S+/g) ?? []).map((word) => word.replace(/^"(.*)"$/, '$1'));
}

/** A copy of the sample a command's example runs on, with an error in it; its path. */
function badBench({ name, examples }: CommandEntry): string {
  const bad = `bad-${name}`;
  const sample = BENCH.exec(examples[0])?.[0] ?? '';
  cpSync(path.join(folder, sample), path.join(folder, bad), { recursive: true });
  const devices = path.join(folder, bad, 'devices.csv');
  writeFileSync(devices, readFileSync(devices, 'utf8').replace('under-sink', 'in-the-garden'));
  return bad;
}

const givesData = (entry: CommandEntry) => entry.options.includes('format');
const writesFolder = (entry: CommandEntry) => entry.options.includes('folder');
const BENCH = /samples\/[a-z-]+/;
const takesBench = (entry: CommandEntry) => entry.args.some((arg) => arg.name === 'bench');

describe.each(COMMAND_TABLE)('pourbench $name', (entry) => {
  const [first, second] = entry.examples;

  it('has help that names its arguments, options, examples and exit codes', () => {
    const help = requestedHelp([entry.name, '--help'], COMMAND_TABLE) ?? '';
    for (const arg of entry.args) expect(help).toContain(`<${arg.name}>`);
    for (const name of [...entry.options, ...ALWAYS]) {
      expect(help).toContain(`\n  ${OPTION_TABLE[name].flags} `);
    }
    expect(help).toContain(`\n  pourbench ${first}\n  pourbench ${second}\n`);
    expect(help).toMatch(/\n {2}130 +interrupted\n/);
    expect(Math.max(...help.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  it.each([first, second])('runs its example: pourbench %s', async (example) => {
    const { code, stdout, stderr } = await call(example);
    expect([code, stderr.includes('error')], stderr).toEqual([0, false]);
    expect(stdout === '').toBe(!givesData(entry));
    expect(stdout).not.toContain('undefined');
    expect(stdout).not.toContain('NaN');
  });

  it('exports what the table loads', async () => {
    expect(await entry.load()).toMatchObject({ run: expect.any(Function) });
  });
});

describe.each(COMMAND_TABLE.filter(givesData))('the data of pourbench $name', ({ examples }) => {
  const plain = `${examples[0].replace(/ --format \w+/, '')} --quiet`;

  // The table is what the examples print; tests/outputs renders it at two widths.
  it('come as csv, md and json, the same in a file and from wherever it is called', async () => {
    const file = path.join(folder, 'data.json');
    const elsewhere = { TZ: 'Pacific/Kiritimati', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' };
    const formats = ['csv', 'md', 'json'];
    const runs = await Promise.all(formats.map((format) => call(`${plain} --format ${format}`)));
    for (const { code, stdout, stderr } of runs) {
      expect([code, stderr, stdout.endsWith('\n')]).toEqual([0, '', true]);
    }
    expect(new Set(runs.map(({ stdout }) => stdout)).size).toBe(formats.length);
    const filed = await runProgram([...wordsOf(plain), '--format', 'json', '-o', file], {
      cwd: ROOT,
      env: elsewhere,
    });
    expect([filed.code, filed.stdout]).toEqual([0, '']);
    expect(readFileSync(file, 'utf8')).toBe(runs.at(-1)?.stdout);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ tool: { name: 'pourbench' } });
  });
});

describe.each(COMMAND_TABLE.filter(takesBench))('a bad bench given to $name', (entry) => {
  const [example] = entry.examples;
  const isCheck = entry.name === 'check';

  it('that is not there ends with 2 and prints and writes nothing', async () => {
    const { code, stdout, stderr } = await call(example.replace(BENCH, 'no-such-bench'));
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/error bench-missing: .*no-such-bench\n {2}remedy: /);
  });

  it('that holds an error ends with 2 and gives no data, unless findings are the data', async () => {
    const { code, stdout, stderr } = await call(example.replace(BENCH, badBench(entry)));
    expect(code).toBe(2);
    expect(isCheck ? stdout : stderr).toMatch(/devices\.csv:\d+:\d+: error choice-unknown: /);
    expect(isCheck ? stderr : stdout).toBe('');
  });
});

describe.each(COMMAND_TABLE.filter(writesFolder))('the folder of pourbench $name', (entry) => {
  it('is not written for a bench that holds an error', async () => {
    const { code } = await call(`${entry.name} ${badBench(entry)} -o not-written`);
    expect(code).toBe(2);
    expect(existsSync(path.join(folder, 'not-written'))).toBe(false);
  });
});
