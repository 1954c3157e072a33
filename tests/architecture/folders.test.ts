import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { brokenRules } from './folder-rules.ts';

const SRC = fileURLToPath(new URL('../../src', import.meta.url));
const DOOR = '// Takes: a.\n// Gives: b.\n// Never does c.\n';

const made: string[] = [];

/** Rules broken by a made-up source tree. */
function brokenBy(files: Readonly<Record<string, string>>): string[] {
  const root = mkdtempSync(path.join(tmpdir(), 'folders-'));
  made.push(root);
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  }
  return brokenRules(root);
}

/** The door, and another file, of each folder named; so that only what a test adds is broken. */
function folders(...names: string[]): Record<string, string> {
  return Object.fromEntries(
    names.flatMap((name) => [
      [`${name}/${name === 'cli' ? 'main' : 'index'}.ts`, DOOR],
      [`${name}/thing.ts`, 'export const thing = 1;\n'],
    ]),
  );
}

afterEach(() => {
  for (const root of made.splice(0)) rmSync(root, { recursive: true, force: true });
});

describe('the folders of src', () => {
  it('keep every rule', () => {
    expect(brokenRules(SRC)).toEqual([]);
  });
});

describe('the check of the folders', () => {
  it('finds nothing in a tree that keeps the rules', () => {
    const tree = {
      ...folders('findings', 'read', 'analyse', 'report', 'commands', 'cli'),
      'index.ts': `${DOOR}export { run } from './commands/check.ts';\n`,
      'read/files.ts':
        "import fs from 'node:fs';\nexport const at = [fs, process.cwd(), Date.now()];\n",
      'analyse/thing.ts': "import { thing } from '../findings/index.ts';\nexport { thing };\n",
      'report/write-output.ts': "import fs from 'node:fs/promises';\nexport { fs };\n",
      'commands/check.ts': "import { thing } from '../read/thing.ts';\nexport const run = thing;\n",
      'cli/run.ts':
        "import { Command } from 'commander';\nimport type { T } from '../commands/check.ts';\n" +
        "export const load = (): Promise<T> => import('../commands/check.ts');\nexport { Command };\n",
    };
    expect(brokenBy(tree)).toEqual([]);
  });

  it('finds an import of a folder to the right, however the path is spelled', () => {
    const tree = {
      ...folders('findings', 'analyse', 'report'),
      'analyse/a.ts': "import { thing } from '../report/thing.ts';\nexport { thing };\n",
      'analyse/b.ts': "export { thing } from './../analyse/../report/thing.ts';\n",
      'analyse/c.ts': "export const c = () => import('../report/thing.ts');\n",
      'analyse/d.ts':
        "/* one\n two */\nimport type {\n  T,\n} from '../report/thing.ts';\nexport type U = T;\n",
      'findings/e.ts': "import '../analyse/thing.ts';\n",
    };
    expect(brokenBy(tree)).toEqual([
      expect.stringMatching(
        /^src\/analyse\/a\.ts:1: imports src\/report\/thing\.ts: analyse\/ imports only folders to its left \(findings, statistics, .*normalise\)$/,
      ),
      expect.stringMatching(/^src\/analyse\/b\.ts:1: imports src\/report\/thing\.ts: /),
      expect.stringMatching(/^src\/analyse\/c\.ts:1: imports src\/report\/thing\.ts: /),
      expect.stringMatching(/^src\/analyse\/d\.ts:3: imports src\/report\/thing\.ts: /),
      expect.stringMatching(
        /^src\/findings\/e\.ts:1: imports src\/analyse\/thing\.ts: .*\(none\)$/,
      ),
    ]);
  });

  it('lets only commands/ import what was read', () => {
    const tree = {
      ...folders('read', 'normalise', 'analyse', 'cli'),
      'index.ts': `${DOOR}export { thing } from './read/thing.ts';\n`,
      'normalise/a.ts': "export { thing } from '../read/thing.ts';\n",
      'analyse/a.ts': "export { thing } from '../normalise/thing.ts';\n",
      'cli/a.ts': "export const a = () => import('../read/thing.ts');\n",
    };
    expect(brokenBy(tree)).toEqual([
      'src/analyse/a.ts:1: imports src/normalise/thing.ts: only commands/ imports normalise/',
      'src/cli/a.ts:1: imports src/read/thing.ts: only commands/ imports read/',
      expect.stringMatching(/^src\/index\.ts:4: imports src\/read\/thing\.ts: /),
      'src/normalise/a.ts:1: imports src/read/thing.ts: only commands/ imports read/',
    ]);
  });

  it('lets cli/ statically import commander, builtins, types and itself, and nothing else', () => {
    const tree = {
      ...folders('findings', 'cli'),
      'cli/a.ts':
        "import chalk from 'chalk';\nimport { thing } from '../findings/index.ts';\n" +
        "import fs from 'node:fs';\nimport { thing as own } from './thing.ts';\n" +
        "import { type T } from '../findings/thing.ts';\nexport { chalk, fs, own, thing, type T };\n",
    };
    expect(brokenBy(tree)).toEqual([
      expect.stringMatching(/^src\/cli\/a\.ts:1: imports chalk statically: /),
      expect.stringMatching(/^src\/cli\/a\.ts:2: imports src\/findings\/index\.ts statically: /),
      expect.stringMatching(/^src\/cli\/a\.ts:5: imports src\/findings\/thing\.ts statically: /),
    ]);
  });

  it('finds the outside world in a pure folder, and not in its comments and texts', () => {
    const tree = {
      ...folders('statistics', 'report'),
      'statistics/a.ts': `import { readFileSync } from 'node:fs';
// process.cwd() and console.log are not used
export const a = 'console.log(Date.now())' + \`Math.random() \${Math.random()} process.x\`;
export const b = [new Date(), Date.now(), new Date(Date.UTC(2026, 0, 1)), /console.log/];
export const c = () => console.log(process.env, readFileSync);
`,
      'report/other.ts': "import fs from 'node:fs/promises';\nexport { fs };\n",
      'report/order.ts': 'export const o = (a: string, b: string) => a.localeCompare(b);\n',
    };
    expect(brokenBy(tree)).toEqual([
      'src/report/order.ts:1: report/ is pure: no .localeCompare (the locale of the machine)',
      'src/report/other.ts:1: report/ is pure: no node:fs/promises',
      'src/statistics/a.ts:1: statistics/ is pure: no node:fs',
      'src/statistics/a.ts:5: statistics/ is pure: no process. (the process)',
      'src/statistics/a.ts:5: statistics/ is pure: no console. (the console)',
      'src/statistics/a.ts:4: statistics/ is pure: no Date.now (the clock)',
      'src/statistics/a.ts:4: statistics/ is pure: no new Date() (the clock)',
      'src/statistics/a.ts:3: statistics/ is pure: no Math.random (chance without a seed)',
    ]);
  });

  it('finds a folder without a door, a door without its three lines and a stray file', () => {
    const tree = {
      'model/thing.ts': 'export const thing = 1;\n',
      'findings/index.ts': '// Takes: a.\n// Gives: b.\nexport {};\n',
      'stray.ts': 'export {};\n',
      'extra/index.ts': DOOR,
    };
    expect(brokenBy(tree)).toEqual([
      'src/findings/index.ts: a door opens with three comment lines: takes, gives, never does',
      'src/model/index.ts: the folder has no door',
      "src/stray.ts: only the library's door stands outside the folders",
      'src/extra/index.ts: extra/ is not one of the folders',
    ]);
  });

  it('finds a file that is too long, ill named, or exports a default', () => {
    const tree = {
      ...folders('model', 'reference'),
      'model/long.ts': 'export {};\n'.repeat(301),
      'model/fits.ts': 'export {};\n'.repeat(300),
      'model/catalogue.ts': 'export {};\n'.repeat(400),
      'reference/tables/levels.ts': 'export {};\n'.repeat(400),
      'model/utils.ts': 'export default 1;\n',
      'model/twoWords.ts': 'export {};\n',
    };
    expect(brokenBy(tree)).toEqual([
      'src/model/long.ts: 301 lines; 300 at most, unless it is a table',
      'src/model/twoWords.ts: a file has a kebab-case name',
      'src/model/utils.ts: a file is named for what it computes',
      'src/model/utils.ts: exports are named',
    ]);
  });

  it('finds a path that is computed, leads nowhere, or leads out of src', () => {
    const tree = {
      ...folders('report'),
      'report/a.ts':
        "const name = './thing.ts';\nexport const a = () => import(name);\n" +
        "export const b = () => import('./gone.ts');\nexport const c = () => import('../../tests/x.ts');\n",
    };
    expect(brokenBy(tree)).toEqual([
      'src/report/a.ts:2: imports a computed path, which nobody can check',
      'src/report/a.ts:3: imports src/report/gone.ts: there is no such file',
      'src/report/a.ts:4: imports ../../tests/x.ts: it lies outside src',
    ]);
  });
});
