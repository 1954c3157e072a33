import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt, ROOT, temporaryFolder } from './built-program.ts';

interface Lock {
  packages: Record<string, { dev?: boolean; optional?: boolean }>;
}

let folder: string;
let files: string[];

/** A project that has the packed package and its production dependencies, and nothing else. */
beforeAll(() => {
  ensureBuilt();
  folder = temporaryFolder();
  const packed = execFileSync(
    'npm',
    ['pack', '--json', '--ignore-scripts', '--pack-destination', folder],
    { cwd: ROOT, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] },
  );
  const [tarball] = JSON.parse(packed) as { filename: string; files: { path: string }[] }[];
  if (tarball === undefined) throw new Error('npm pack made nothing');
  files = tarball.files.map((file) => file.path);
  const modules = path.join(folder, 'node_modules');
  const installed = path.join(modules, 'pourbench');
  mkdirSync(path.join(modules, '.bin'), { recursive: true });
  execFileSync('tar', ['-xzf', path.join(folder, tarball.filename), '-C', folder]);
  cpSync(path.join(folder, 'package'), installed, { recursive: true });
  linkProductionDependencies(modules);
  symlinkSync('../pourbench/bin/pourbench.js', path.join(modules, '.bin/pourbench'));
  cpSync(path.join(installed, 'samples'), path.join(folder, 'samples'), { recursive: true });
  writeFileSync(path.join(folder, 'package.json'), '{ "type": "module", "private": true }\n');
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Links what the lock file says a user gets, so that a development package cannot be leant on. */
function linkProductionDependencies(modules: string): void {
  const lock = JSON.parse(readFileSync(path.join(ROOT, 'package-lock.json'), 'utf8')) as Lock;
  for (const [place, about] of Object.entries(lock.packages)) {
    const name = /^node_modules\/((?:@[^/]+\/)?[^/]+)$/.exec(place)?.[1];
    if (name === undefined || about.dev === true || about.optional === true) continue;
    mkdirSync(path.dirname(path.join(modules, name)), { recursive: true });
    symlinkSync(path.join(ROOT, place), path.join(modules, name));
  }
}

function run(command: string, args: readonly string[]) {
  const { PATH = '' } = process.env;
  return spawnSync(command, args, { cwd: folder, encoding: 'utf8', env: { PATH } });
}

describe('the packed package', () => {
  it('holds the program, its licence and its samples, and no source, test or map of them', () => {
    expect(files).toEqual(
      expect.arrayContaining([
        'LICENSE',
        'bin/pourbench.js',
        'dist/index.d.ts',
        'dist/index.js',
        'dist/simulate/index.js',
        'dist/statistics/index.js',
        'package.json',
        'samples/first-bench/bench.json',
      ]),
    );
    expect(files.filter((file) => /^(src|tests|scripts|notes)\/|\.test\./.test(file))).toEqual([]);
    expect(files.filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))).toEqual([]);
  });

  it('installs a program that runs on the samples', () => {
    const program = path.join(folder, 'node_modules/.bin/pourbench');
    const { status, stdout, stderr } = run(program, [
      'reductions',
      'samples/first-bench',
      '--format',
      'json',
      '--quiet',
    ]);
    expect([status, stderr]).toEqual([0, '']);
    const { schema, rows } = JSON.parse(stdout) as { schema: string; rows: unknown[] };
    expect([schema, rows.length > 0]).toEqual(['reductions/1', true]);
  });

  it('is a library with two numeric subpaths', () => {
    writeFileSync(
      path.join(folder, 'use.js'),
      `import { readBench, reductions } from 'pourbench';
import { binomialTest, fieller } from 'pourbench/statistics';
import { simulateDrain } from 'pourbench/simulate';
const drain = simulateDrain(
  { drainRatio: 2, flushRules: [] },
  { atS: [0], volumeL: [1.5] },
  { endS: 86400 },
);
const all = [readBench, reductions, binomialTest, fieller].map((each) => typeof each);
console.log(JSON.stringify([all, drain.totalDrainL, fieller({
  numerator: 1, denominator: 4, uNumerator: 0, uDenominator: 0, multiplier: 2,
}).ratio]));
`,
    );
    const { status, stdout, stderr } = run(process.execPath, ['use.js']);
    expect([status, stderr]).toEqual([0, '']);
    expect(JSON.parse(stdout)).toEqual([Array(4).fill('function'), 3, 0.25]);
  });

  it('type-checks a consumer, and refuses one that is wrong', () => {
    const compiler = path.join(ROOT, 'node_modules/typescript/bin/tsc');
    const check = (source: string) => {
      writeFileSync(path.join(folder, 'consumer.ts'), source);
      return run(process.execPath, [
        compiler,
        ...['--noEmit', '--strict', '--module', 'nodenext', '--target', 'es2023'],
        ...['--types', '', 'consumer.ts'],
      ]);
    };
    const good = check(`import { readBench, reductions } from 'pourbench';
import { simulateDrain } from 'pourbench/simulate';
export const rows: readonly object[] = reductions(readBench('samples/first-bench')).rows;
export const ratio: number | null = simulateDrain(
  { drainRatio: 1, flushRules: [] }, { atS: [], volumeL: [] }, { endS: 1 }).totalDrainRatio;
`);
    expect([good.status, good.stdout]).toEqual([0, '']);
    const bad = check("import { readBench } from 'pourbench';\nexport const n = readBench(7);\n");
    expect(bad.status).not.toBe(0);
    expect(bad.stdout).toContain('consumer.ts');
  });

  it('cannot be entered beside its doors', () => {
    writeFileSync(path.join(folder, 'stray.js'), "import 'pourbench/dist/cli/help.js';\n");
    expect(run(process.execPath, ['stray.js']).stderr).toContain('ERR_PACKAGE_PATH_NOT_EXPORTED');
  });
});
