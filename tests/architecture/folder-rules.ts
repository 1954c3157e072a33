import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { type Import, importsOf } from './imports-of.ts';
import { maskSource } from './mask-source.ts';

/** The flow of the data: a folder imports only itself and folders to its left. */
const FOLDERS = [
  'findings',
  'statistics',
  'simulate',
  'reference',
  'model',
  'read',
  'normalise',
  'analyse',
  'compare',
  'report',
  'commands',
  'cli',
];

/** Only commands/ joins a bench that was read with what is done with it. */
const BEHIND_COMMANDS = ['read', 'normalise'];

/** These touch the outside world; so does the one writer. */
const EDGES = ['read', 'commands', 'cli'];
const WRITER = 'report/write-output.ts';

/** Builtins that compute and touch nothing; crypto is there for its hashes. */
const HARMLESS_BUILTINS = ['node:crypto'];

/** What a pure folder may not say, and what it would be. */
const IMPURE: readonly (readonly [RegExp, string])[] = [
  [/(?<![\w$.])process\s*[.[]/g, 'the process'],
  [/(?<![\w$.])console\s*[.[]/g, 'the console'],
  [/(?<![\w$.])globalThis\b/g, 'global state'],
  [/(?<![\w$.])(fetch|setTimeout|setInterval|setImmediate)\s*\(/g, 'the network or a timer'],
  [/(?<![\w$.])performance\s*\./g, 'the clock'],
  [/(?<![\w$.])Date\s*\.\s*now\b/g, 'the clock'],
  [/(?<![\w$.])new\s+Date\s*(\(\s*\)|(?!\s*\())/g, 'the clock'],
  [/(?<!new\s+)(?<![\w$.])Date\s*\(/g, 'the clock'],
  [/(?<![\w$.])Math\s*\.\s*random\b/g, 'chance without a seed'],
  [/\b(randomUUID|randomBytes|randomInt|getRandomValues)\b/g, 'chance without a seed'],
  [/\.\s*(toLocale\w*|localeCompare)\b/g, 'the locale of the machine'],
];

const LINE_LIMIT = 300;

/** Files that are one long table, and so may be longer. */
const TABLES = [
  'cli/command-table.ts',
  'cli/option-table.ts',
  'findings/codes.ts',
  'model/catalogue.ts',
  'model/output-schemas.ts',
];
const isTable = (file: string) => TABLES.includes(file) || file.startsWith('reference/tables/');

/** The door of a folder; commands/ has none, since each command is loaded by itself. */
const doorOf = (folder: string) => (folder === 'cli' ? 'main.ts' : 'index.ts');

/**
 * Every rule of the folders that a source tree breaks, each as one line with its place.
 *
 * @param root the folder that stands for `src`; every path is resolved, so that no spelling of a
 *   path slips past
 */
export function brokenRules(root: string): string[] {
  const files = sourceFiles(root);
  return [
    ...files.flatMap((file) => brokenIn(root, file)),
    ...FOLDERS.filter((folder) => folder !== 'commands').flatMap((folder) => {
      const door = `${folder}/${doorOf(folder)}`;
      const isThere = files.some((file) => file.startsWith(`${folder}/`));
      return isThere && !files.includes(door) ? [`src/${door}: the folder has no door`] : [];
    }),
    ...files
      .filter((file) => !file.includes('/') && file !== 'index.ts')
      .map((file) => `src/${file}: only the library's door stands outside the folders`),
    ...files
      .filter((file) => file.includes('/') && !FOLDERS.includes(folderOf(file)))
      .map((file) => `src/${file}: ${folderOf(file)}/ is not one of the folders`),
  ];
}

/** Every source file below the root, with `/`; tests and benchmarks may import what they like. */
function sourceFiles(root: string): string[] {
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .map((file) => file.split(path.sep).join('/'))
    .filter((file) => /\.[cm]?[jt]sx?$/.test(file) && !/\.(test|bench)\.ts$/.test(file))
    .filter((file) => statSync(path.join(root, file)).isFile())
    .sort();
}

function folderOf(file: string): string {
  return file.includes('/') ? file.slice(0, file.indexOf('/')) : '';
}

function brokenIn(root: string, file: string): string[] {
  const source = readFileSync(path.join(root, file), 'utf8');
  const imports = importsOf(source);
  return [
    ...imports.flatMap((each) => {
      const why = brokenByImport(root, file, each);
      return why === null ? [] : [`src/${file}:${each.line}: ${why}`];
    }),
    ...brokenByImpurity(file, source, imports),
    ...brokenByForm(file, source),
  ];
}

/** Why an import is not allowed; null when it is. */
function brokenByImport(root: string, file: string, each: Import): string | null {
  const from = folderOf(file);
  const { specifier, kind } = each;
  if (specifier === null) return 'imports a computed path, which nobody can check';
  if (!specifier.startsWith('.') && !path.isAbsolute(specifier)) {
    const isLight = specifier === 'commander' || specifier.startsWith('node:');
    return from === 'cli' && kind === 'static' && !isLight
      ? `imports ${specifier} statically: cli/ statically imports commander only`
      : null;
  }
  const target = path.resolve(path.dirname(path.join(root, file)), specifier);
  const to = path.relative(root, target).split(path.sep).join('/');
  const said = `imports src/${to}`;
  if (to.startsWith('../')) return `imports ${specifier}: it lies outside src`;
  if (!statSync(target, { throwIfNoEntry: false })?.isFile())
    return `${said}: there is no such file`;
  const folder = folderOf(to);
  if (folder === from) return null;
  if (from === '') {
    return folder === 'cli' || BEHIND_COMMANDS.includes(folder)
      ? `${said}: the library's door imports neither cli/ nor what only commands/ may import`
      : null;
  }
  if (folder === '') return `${said}: nothing inside imports the library's door`;
  if (BEHIND_COMMANDS.includes(folder) && from !== 'commands') {
    return `${said}: only commands/ imports ${folder}/`;
  }
  if (FOLDERS.indexOf(folder) > FOLDERS.indexOf(from)) {
    return `${said}: ${from}/ imports only folders to its left (${leftOf(from)})`;
  }
  if (from === 'cli' && kind === 'static') {
    return `${said} statically: cli/ loads the rest of the tool with await import()`;
  }
  return null;
}

function leftOf(folder: string): string {
  return FOLDERS.slice(0, FOLDERS.indexOf(folder)).join(', ') || 'none';
}

function brokenByImpurity(file: string, source: string, imports: readonly Import[]): string[] {
  const folder = folderOf(file);
  if (EDGES.includes(folder) || file === WRITER || folder === '') return [];
  const builtins = imports
    .filter(({ specifier }) => specifier !== null && isBuiltin(specifier))
    .filter(({ specifier }) => !HARMLESS_BUILTINS.includes(specifier ?? ''))
    .map(({ specifier, line }) => `src/${file}:${line}: ${folder}/ is pure: no ${specifier}`);
  const code = maskSource(source);
  const said = IMPURE.flatMap(([pattern, what]) =>
    [...code.matchAll(pattern)].map((match) => {
      const line = code.slice(0, match.index).split('\n').length;
      return `src/${file}:${line}: ${folder}/ is pure: no ${match[0].trim()} (${what})`;
    }),
  );
  return [...builtins, ...said];
}

function isBuiltin(specifier: string): boolean {
  return /^(node:|(fs|os|process|child_process|worker_threads|timers|http|https|net)(\/|$))/.test(
    specifier,
  );
}

function brokenByForm(file: string, source: string): string[] {
  const broken: string[] = [];
  const lines = source.replace(/\n$/, '').split('\n');
  if (lines.length > LINE_LIMIT && !isTable(file)) {
    broken.push(`src/${file}: ${lines.length} lines; ${LINE_LIMIT} at most, unless it is a table`);
  }
  const name = path.posix.basename(file);
  const isDoor = file === 'index.ts' || file === `${folderOf(file)}/${doorOf(folderOf(file))}`;
  // The door of the library speaks to its users, and so opens with a docstring.
  const opening = file === 'index.ts' ? /^(\/\*\*| \*|\/\/ \S)/ : /^\/\/ \S/;
  if (isDoor && !lines.slice(0, 3).every((line) => opening.test(line))) {
    broken.push(`src/${file}: a door opens with three comment lines: takes, gives, never does`);
  }
  if (!/^[a-z0-9]+(-[a-z0-9]+)*\.ts$/.test(name)) {
    broken.push(`src/${file}: a file has a kebab-case name`);
  }
  if (/^(utils?|helpers?|common|misc)\.ts$/.test(name)) {
    broken.push(`src/${file}: a file is named for what it computes`);
  }
  if (/(?<![\w$.])export\s+default\b/.test(maskSource(source))) {
    broken.push(`src/${file}: exports are named`);
  }
  return broken;
}
