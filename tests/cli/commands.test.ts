import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CommandEntry } from '../../src/cli/command-entry.ts';
import { COMMAND_TABLE } from '../../src/cli/command-table.ts';
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
  const words = text.match(/"[^"]*"|\S+/g) ?? [];
  return runProgram(
    words.map((word) => word.replace(/^"(.*)"$/, '$1')),
    { cwd: folder },
  );
}

const givesData = (entry: CommandEntry) => entry.options.includes('format');
const BENCH = /samples\/[a-z-]+/;
const takesBench = (entry: CommandEntry) => entry.args.some((arg) => arg.name === 'bench');

describe.each(COMMAND_TABLE)('pourbench $name', (entry) => {
  const [first, second] = entry.examples;

  it('has help that names its arguments, options, examples and exit codes', async () => {
    const { code, stdout, stderr } = await runProgram([entry.name, '--help']);
    expect([code, stderr]).toEqual([0, '']);
    for (const arg of entry.args) expect(stdout).toContain(`<${arg.name}>`);
    for (const name of [...entry.options, ...ALWAYS]) {
      expect(stdout).toContain(`\n  ${OPTION_TABLE[name].flags} `);
    }
    expect(stdout).toContain(`\n  pourbench ${first}\n  pourbench ${second}\n`);
    expect(stdout).toMatch(/\n {2}130 +interrupted\n/);
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
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

  it('come as table, csv, json and md', async () => {
    const formats = ['table', 'csv', 'json', 'md'];
    const runs = await Promise.all(formats.map((format) => call(`${plain} --format ${format}`)));
    for (const { code, stdout, stderr } of runs) {
      expect([code, stderr, stdout.endsWith('\n')]).toEqual([0, '', true]);
    }
    expect(new Set(runs.map(({ stdout }) => stdout)).size).toBe(formats.length);
    expect(JSON.parse(runs[2]?.stdout ?? '')).toMatchObject({ tool: { name: 'pourbench' } });
  });

  it('are the same in a file and on stdout, wherever and whenever the call is made', async () => {
    const [printed, filed] = await Promise.all([
      call(`${plain} --format json`),
      runProgram([...plain.split(' '), '--format', 'json', '-o', path.join(folder, 'data.json')], {
        cwd: ROOT,
        env: { TZ: 'Pacific/Kiritimati', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' },
      }),
    ]);
    expect([printed.code, filed.code, filed.stdout]).toEqual([0, 0, '']);
    expect(readFileSync(path.join(folder, 'data.json'), 'utf8')).toBe(printed.stdout);
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
    const bad = `bad-${entry.name}`;
    cpSync(path.join(folder, BENCH.exec(example)?.[0] ?? ''), path.join(folder, bad), {
      recursive: true,
    });
    const devices = path.join(folder, bad, 'devices.csv');
    writeFileSync(devices, readFileSync(devices, 'utf8').replace('under-sink', 'in-the-garden'));
    const badCall = example.replace(BENCH, bad).replace(/ -o \S+/, '');
    const written = path.join(folder, `written-${entry.name}`);
    if (givesData(entry)) {
      const { code, stdout, stderr } = await call(badCall);
      expect(code).toBe(2);
      expect(isCheck ? stdout : stderr).toMatch(/devices\.csv:\d+:\d+: error choice-unknown: /);
      expect(isCheck ? stderr : stdout).toBe('');
    }
    const { code, stdout } = await call(`${badCall} -o ${written}`);
    expect([code, stdout]).toEqual([2, '']);
    expect(existsSync(written)).toBe(isCheck);
  });
});
