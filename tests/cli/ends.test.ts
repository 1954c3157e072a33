import { spawnSync } from 'node:child_process';
import {
  closeSync,
  existsSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  ensureBuilt,
  FAKE_PROGRAM,
  type RunOptions,
  runProgram,
  temporaryFolder,
} from './built-program.ts';

let folder: string;

beforeAll(() => {
  ensureBuilt();
  folder = temporaryFolder();
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (call: string, options: RunOptions = {}) =>
  runProgram(call.split(' '), { program: FAKE_PROGRAM, cwd: folder, ...options });

describe('the end of a call', () => {
  it('is 0 with data on stdout and findings below an error on stderr', async () => {
    for (const level of ['none', 'note', 'warning']) {
      const { code, stdout, stderr } = await run(`data ${level} --format csv`);
      expect([code, stderr === '']).toEqual([0, level === 'none']);
      expect(stdout).toContain('lead');
      expect(stderr).not.toContain('lead');
    }
  });

  it('is 2 without data when the data hold an error', async () => {
    const { code, stdout, stderr } = await run('data error --format json');
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(
      /^pours\.csv:4:3: error unit-missing: "250" has no unit\n {2}remedy: write 250 ml\n/,
    );
  });

  it('is 2 with data when the findings are the data', async () => {
    const { code, stdout, stderr } = await run('check error --format json');
    expect([code, stderr]).toEqual([2, '']);
    expect(JSON.parse(stdout)).toMatchObject({
      schema: 'findings/1',
      rows: [{ level: 'error', code: 'unit-missing', place: { line: 4, column: 3 } }],
      findings: [],
    });
  });

  it('is 1, with data, when a finding reaches --fail-on, and 2 all the same for an error', async () => {
    const cases: [string, number][] = [
      ['data warning --fail-on warning', 1],
      ['data warning --fail-on note', 1],
      ['data note --fail-on warning', 0],
      ['data note --fail-on note', 1],
      ['data none --fail-on note', 0],
      ['data error --fail-on note', 2],
      ['check warning --fail-on warning', 1],
    ];
    for (const [call, wanted] of cases) {
      const { code, stdout } = await run(call);
      expect([call, code, stdout !== '']).toEqual([call, wanted, wanted !== 2]);
    }
  });

  it('is 1 when a published number moved', async () => {
    expect((await run('moved x')).code).toBe(1);
  });

  it('is 2 and printed like a finding when work cannot go on, with a stack on demand', async () => {
    const plain = await run('fail bench');
    expect([plain.code, plain.stdout]).toEqual([2, '']);
    expect(plain.stderr).toBe(
      'pours.csv:4:3: error file-missing: it is gone\n  remedy: put it back\n',
    );
    const debugged = await run('fail bench --debug');
    expect([debugged.code, debugged.stdout]).toEqual([2, '']);
    expect(debugged.stderr).toContain(plain.stderr);
    expect(debugged.stderr).toMatch(/\n {4}at .*fake-program\.mjs/);
  });

  it('is 2 with every finding that an error stands for', async () => {
    const { code, stdout, stderr } = await run('fail findings');
    expect([code, stdout]).toEqual([2, '']);
    for (const part of ['error unit-missing', 'warning file-unknown', '2 findings (']) {
      expect(stderr).toContain(part);
    }
  });

  it('is 70 and one line for a defect of the tool, with a stack on demand', async () => {
    const plain = await run('fail defect');
    expect([plain.code, plain.stdout]).toEqual([70, '']);
    expect(plain.stderr).toBe(
      'pourbench: a defect of the tool, please report it with the call: x is not a function\n',
    );
    const debugged = await run('fail defect --debug');
    expect([debugged.code, debugged.stdout]).toEqual([70, '']);
    expect(debugged.stderr).toMatch(/\n {4}at .*fake-program\.mjs/);
  });

  it('is 70 for an error that nobody waits for', async () => {
    const { code, stdout, stderr } = await run('stray x');
    expect([code, stdout]).toEqual([70, '']);
    expect(stderr).toMatch(/^pourbench: a defect of the tool.*nobody waits for this\n$/);
  });

  it('is 130 when interrupted, with nothing on stdout and nothing written', async () => {
    const call = run('slow x --out late.json', { signalOnMessage: 'SIGINT' });
    const { code, signal, stdout, stderr } = await call;
    expect([code, signal, stdout, stderr]).toEqual([130, null, '', 'started\n']);
    expect(existsSync(path.join(folder, 'late.json'))).toBe(false);
  });
});

describe('findings beside other data', () => {
  it('are the first twenty and the count, and an error never hides among them', async () => {
    const many = await run('data many');
    expect(many.stderr.match(/remedy:/g)).toHaveLength(20);
    expect(many.stderr).toContain('30 findings (30 warnings); 20 shown');
    const mixed = await run('data mixed');
    expect(mixed.stderr.match(/remedy:/g)).toHaveLength(20);
    expect(mixed.stderr).toContain('error unit-missing');
  });

  it('are all printed where they are the data', async () => {
    expect((await run('check many')).stdout.match(/remedy:/g)).toHaveLength(30);
  });

  it('are only errors with --quiet', async () => {
    expect(await run('data warning --quiet')).toMatchObject({ code: 0, stderr: '' });
    const mixed = await run('data mixed --quiet');
    expect(mixed.code).toBe(2);
    expect(mixed.stderr.match(/remedy:/g)).toHaveLength(1);
    expect(mixed.stderr).toContain('error unit-missing');
    expect(await run('write x --quiet')).toMatchObject({ code: 0, stdout: '', stderr: '' });
  });

  it('leave stdout to the data, as files that were written do', async () => {
    expect(await run('write x')).toMatchObject({
      code: 0,
      stdout: '',
      stderr: 'wrote notes/index.md\n',
    });
  });
});

describe('the data', () => {
  it('arrive whole through a slow pipe, far beyond what a pipe holds', async () => {
    const { code, stdout } = await run('big 40000 --format json', { slowReader: 3 });
    expect(code).toBe(0);
    expect(stdout.length).toBeGreaterThan(1_000_000);
    expect(JSON.parse(stdout).rows).toHaveLength(40_000);
  });

  it('end quietly with 0 when the reader goes away', async () => {
    const end = await run('big 40000 --format json', { closeAfterFirst: true });
    expect(end).toMatchObject({ code: 0, signal: null, stderr: '' });
    expect(end.stdout.length).toBeLessThan(1_000_000);
  });

  it.runIf(existsSync('/dev/full'))('end with 2 and a reason when the disk is full', () => {
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = spawnSync(process.execPath, [FAKE_PROGRAM, 'data', 'none'], {
      stdio: ['ignore', full, 'pipe'],
    });
    closeSync(full);
    expect([status, String(stderr)]).toEqual([
      2,
      'error output-unwritable: standard output cannot be written (ENOSPC)\n' +
        '  remedy: make room, or write to another place with --out\n',
    ]);
  });

  it('go whole into the file of --out, and nothing to stdout', async () => {
    const { stdout: wanted } = await run('data note --format json');
    const { code, stdout, stderr } = await run('data note --format json -o out/data.json');
    expect([code, stdout]).toEqual([0, '']);
    expect(stderr).toContain('wrote out/data.json\n');
    expect(readFileSync(path.join(folder, 'out/data.json'), 'utf8')).toBe(wanted);
    expect(readdirSync(path.join(folder, 'out'))).toEqual(['data.json']);
  });

  it('are not written where a file cannot be, or is an input, and the call ends with 2', async () => {
    writeFileSync(path.join(folder, 'file'), 'kept');
    writeFileSync(path.join(folder, 'input.csv'), 'kept');
    for (const out of ['file/below.json', '.', 'input.csv']) {
      const { code, stdout, stderr } = await run(`data . --format json --out ${out}`);
      expect([out, code, stdout]).toEqual([out, 2, '']);
      expect(stderr).toMatch(/error output-(unwritable|exists): .*\n {2}remedy: /);
    }
    expect(readFileSync(path.join(folder, 'file'), 'utf8')).toBe('kept');
    expect(readFileSync(path.join(folder, 'input.csv'), 'utf8')).toBe('kept');
  });

  it('are not written when they hold an error', async () => {
    expect((await run('data error -o none.txt')).code).toBe(2);
    expect(existsSync(path.join(folder, 'none.txt'))).toBe(false);
  });
});

describe('colour', () => {
  const ESCAPE = '\u001b[';

  it('is never in a pipe unless it is asked for', async () => {
    const { stdout, stderr } = await run('data warning');
    expect(stdout + stderr).not.toContain(ESCAPE);
  });

  it('follows the flag, then NO_COLOR, then FORCE_COLOR, on both streams', async () => {
    const cases: [string, Record<string, string>, boolean][] = [
      ['--color always', {}, true],
      ['--color always', { NO_COLOR: '1' }, true],
      ['--color never', { FORCE_COLOR: '1' }, false],
      ['--color auto', { FORCE_COLOR: '1' }, true],
      ['--color auto', { FORCE_COLOR: '1', NO_COLOR: '1' }, false],
      ['--color auto', { FORCE_COLOR: '1', NO_COLOR: '' }, true],
      ['--color auto', { FORCE_COLOR: '0' }, false],
    ];
    for (const [flag, env, wanted] of cases) {
      const { stdout, stderr } = await run(`check warning ${flag}`, { env });
      expect([flag, env, stdout.includes(ESCAPE), stderr]).toEqual([flag, env, wanted, '']);
      const other = await run(`data warning ${flag}`, { env });
      expect([flag, env, other.stderr.includes(ESCAPE)]).toEqual([flag, env, wanted]);
    }
  });

  it('never reaches a file or a format for machines', async () => {
    await run('check warning --color always -o plain.txt');
    expect(readFileSync(path.join(folder, 'plain.txt'), 'utf8')).not.toContain(ESCAPE);
    for (const format of ['csv', 'json', 'md']) {
      const { stdout } = await run(`check warning --color always --format ${format}`);
      expect(stdout).not.toContain(ESCAPE);
    }
  });
});

describe('the options of a call', () => {
  it('reach the command, repeated ones in their order', async () => {
    const call = 'echo -- --format json --device a --device=b --seed 7 --pour 250ml';
    const { stdout } = await run(call.replace('-- ', 'x '));
    expect(JSON.parse(stdout).rows[0]).toEqual({
      args: ['x'],
      options: {
        devices: ['a', 'b'],
        variants: [],
        analytes: [],
        scenarios: [],
        seed: 7,
        draws: null,
        pours: ['250ml'],
        poursPerDay: [],
        randomPours: false,
        sweeps: [],
        curve: true,
        regions: false,
        inputs: false,
        breakEven: false,
        sums: false,
        filterLife: false,
        log10: false,
        spikes: false,
        toldApart: false,
        groups: false,
        margin: null,
        idleRise: false,
        above: null,
        feed: null,
        feedSample: null,
        throughput: null,
        plan: false,
        packages: false,
        prices: null,
        wanted: [],
        power: null,
        tellers: null,
        budget: null,
        events: null,
        replicates: null,
        writeLayouts: false,
        against: null,
        folder: null,
        force: false,
      },
    });
  });

  it('take what follows -- as an argument', async () => {
    const { stdout } = await run('echo --format json -- --device');
    expect(JSON.parse(stdout).rows[0].args).toEqual(['--device']);
  });

  it('are told of where they have no bearing, and are accepted', async () => {
    const { code, stderr } = await run('data none --scenario family --seed 3');
    expect(code).toBe(0);
    expect(stderr).toBe('--scenario has no bearing on data\n--seed has no bearing on data\n');
    expect((await run('data none --scenario family --quiet')).stderr).toBe('');
  });
});
