import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { COMMAND_TABLE } from '../../src/cli/command-table.ts';
import { requestedHelp } from '../../src/cli/help.ts';
import { ensureBuilt, ROOT, runProgram } from './built-program.ts';

beforeAll(ensureBuilt);

const run = (call: string) => runProgram(call === '' ? [] : call.split(' '));

describe('a call for help or for the version', () => {
  it('lists every command of the table, once, and ends with 0', async () => {
    for (const call of ['--help', '-h', 'help', '--quiet --help']) {
      const { code, stdout, stderr } = await run(call);
      expect([call, code, stderr]).toEqual([call, 0, '']);
      const commands = stdout.split('\n\n').find((part) => part.startsWith('Commands\n')) ?? '';
      const listed = [...commands.matchAll(/^ {2}([a-z-]+) </gm)].map((match) => match[1]);
      expect(listed).toEqual(COMMAND_TABLE.map((entry) => entry.name));
      expect(stdout).toBe(requestedHelp(['--help'], COMMAND_TABLE));
      for (const exit of [0, 1, 2, 70, 130]) expect(stdout).toMatch(RegExp(`^ {2}${exit} `, 'm'));
    }
  });

  it('is answered for a command however it is asked', async () => {
    const wanted = requestedHelp(['check', '--help'], COMMAND_TABLE);
    for (const call of ['check --help', 'check -h', 'help check', 'check some-bench --help']) {
      const { code, stdout, stderr } = await run(call);
      expect([call, code, stdout, stderr]).toEqual([call, 0, wanted, '']);
    }
  });

  it('gives the version of package.json', async () => {
    const text = readFileSync(path.join(ROOT, 'package.json'), 'utf8');
    const { version } = JSON.parse(text) as { version: string };
    for (const call of ['--version', '-V']) {
      expect(await run(call)).toMatchObject({ code: 0, stdout: `${version}\n`, stderr: '' });
    }
  });

  it('ends quietly when the reader goes away', async () => {
    expect(await runProgram(['--help'], { closeAfterFirst: true })).toMatchObject({
      code: 0,
      signal: null,
      stderr: '',
    });
  });
});

describe('a wrong call', () => {
  const wrong: [string, string, string][] = [
    ['', 'argument-missing: no command is given', 'name one; see pourbench --help'],
    ['chekc x', "option-unknown: unknown command 'chekc'", 'did you mean check?'],
    ['help chekc', "option-unknown: unknown command 'chekc'", 'did you mean check?'],
    ['chekc --help', "option-unknown: unknown command 'chekc'", 'did you mean check?'],
    ['check', "argument-missing: missing required argument 'bench'", 'see pourbench check --help'],
    ['check a b', "option-unknown: too many arguments for 'check'", 'see pourbench check --help'],
    ['check a --fromat csv', "option-unknown: unknown option '--fromat'", 'did you mean --format?'],
    ['check a --force', "option-unknown: unknown option '--force'", 'pourbench check --help'],
    ['--quiet check a', "option-unknown: unknown option '--quiet'", 'options stand behind'],
    [
      'check a --format xml',
      'option-unknown: "xml" is not a value of --format',
      'table, csv, json',
    ],
    ['check a --format', "argument-missing: option '--format <format>' argument", 'see pourbench'],
    ['check a --color red', 'option-unknown: "red" is not a value of --color', 'auto, always'],
    ['check a --fail-on error', 'option-unknown: "error" is not a value of', 'warning, note'],
    ['check a --seed -1', 'option-unknown: "-1" is not a value of --seed', 'integer from 0 to'],
    ['check a --seed 1.5', 'option-unknown: "1.5" is not a value of --seed', 'integer from 0 to'],
    ['check a --seed 4294967296', 'option-unknown: "4294967296" is not a value', 'to 4294967295'],
    ['water-use a --curve --break-even', 'option-clash:', 'see pourbench water-use --help'],
    ['water-use a --pour 1L --break-even', 'option-clash:', 'see pourbench water-use --help'],
  ];

  it.each(wrong)('`%s` says what is wrong and what to do, and ends with 2', async (...row) => {
    const [call, message, remedy] = row;
    const { code, stdout, stderr } = await run(call);
    expect([code, stdout]).toEqual([2, '']);
    const [first = '', second = '', ...rest] = stderr.split('\n');
    expect(first.startsWith(`error ${message}`), stderr).toBe(true);
    expect(second).toMatch(/^ {2}remedy: /);
    expect(second).toContain(remedy);
    expect(rest).toEqual(['']);
  });

  it('shows no stack unless asked', async () => {
    expect((await run('chekc')).stderr).not.toMatch(/\n {4}at /);
    expect((await run('chekc --debug')).stderr).toMatch(/\n {4}at /);
  });
});
