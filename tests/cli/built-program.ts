import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const PROGRAM = path.join(ROOT, 'bin/pourbench.js');
export const FAKE_PROGRAM = fileURLToPath(new URL('./fake-program.mjs', import.meta.url));

const DIST = path.join(ROOT, 'dist');
const LOCK = path.join(ROOT, 'node_modules/.build-lock');
const LOCK_PATIENCE_MS = 110_000;

/**
 * Makes sure that `dist/` is not older than `src/`. Several test files may ask at once; one builds
 * and the others wait. Types are judged by the type check, not here.
 */
export function ensureBuilt(): void {
  const deadline = Date.now() + LOCK_PATIENCE_MS;
  while (!isFresh(Number.POSITIVE_INFINITY)) {
    if (takeLock()) {
      try {
        build();
      } finally {
        rmSync(LOCK, { recursive: true });
      }
      return;
    }
    if (Date.now() > deadline) {
      throw new Error(`another build does not end; if none runs, remove ${LOCK}`);
    }
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100);
  }
}

function build(): void {
  const start = Date.now();
  const compiler = path.join(ROOT, 'node_modules/typescript/bin/tsc');
  const { stdout } = spawnSync(process.execPath, [compiler, '-p', 'tsconfig.build.json'], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  // A source that somebody saves meanwhile is not this build's to have.
  if (!isFresh(start)) throw new Error(`the build left dist/ older than src/\n${stdout}`);
}

function takeLock(): boolean {
  try {
    mkdirSync(LOCK);
    return true;
  } catch {
    return false;
  }
}

/** True when every source last changed before a time has an output that is not older. */
function isFresh(before: number): boolean {
  const src = path.join(ROOT, 'src');
  return readdirSync(src, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !/\.(test|bench)\.ts$/.test(file))
    .every((file) => {
      const changed = statSync(path.join(src, file)).mtimeMs;
      const output = path.join(DIST, file.replace(/\.ts$/, '.js'));
      const built = statSync(output, { throwIfNoEntry: false });
      return changed > before || (built !== undefined && built.mtimeMs >= changed);
    });
}

/** A new empty folder; the caller removes it. */
export function temporaryFolder(): string {
  return mkdtempSync(path.join(tmpdir(), 'pourbench-'));
}

export interface Run {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface RunOptions {
  readonly program?: string;
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
  /** Milliseconds the reader waits after each part it reads. */
  readonly slowReader?: number;
  /** The reader goes away after the first part. */
  readonly closeAfterFirst?: boolean;
  /** A signal to send when the program first says something on stderr. */
  readonly signalOnMessage?: NodeJS.Signals;
}

/** Runs the built program with nothing of this process's environment but the path. */
export function runProgram(args: readonly string[], options: RunOptions = {}): Promise<Run> {
  const { program = PROGRAM, cwd = ROOT, env = {} } = options;
  const { PATH = '' } = process.env;
  const child = spawn(process.execPath, [program, ...args], {
    cwd,
    env: { PATH, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const stdout: Buffer[] = [];
  const stderr: Buffer[] = [];
  child.stdout.on('data', (part: Buffer) => {
    stdout.push(part);
    if (options.closeAfterFirst === true) child.stdout.destroy();
    if (options.slowReader !== undefined) {
      child.stdout.pause();
      setTimeout(() => child.stdout.resume(), options.slowReader);
    }
  });
  child.stderr.on('data', (part: Buffer) => {
    if (stderr.length === 0 && options.signalOnMessage !== undefined) {
      child.kill(options.signalOnMessage);
    }
    stderr.push(part);
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code, signal) => {
      resolve({
        code,
        signal,
        stdout: Buffer.concat(stdout).toString('utf8'),
        stderr: Buffer.concat(stderr).toString('utf8'),
      });
    });
  });
}
