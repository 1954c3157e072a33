import * as fs from 'node:fs/promises';
import path from 'node:path';
import { BenchError, place } from '../findings/index.ts';
import { type FolderMarker, filesWithMarker, listedFiles, sha256 } from './output-folder.ts';

/**
 * The only code that writes to disk. What it writes appears whole or not at all: it is made beside
 * its place under a passing name and moved there by a rename, and nothing is left behind when that
 * fails.
 */

export interface WriteFolderOptions {
  /**
   * Says which files of a folder the tool wrote. Null for a folder that belongs to its user from
   * then on, such as a new bench: it has to be empty or missing.
   */
  readonly marker: FolderMarker | null;
  /** Write although the folder holds files of others, or own files that were changed since. */
  readonly force?: boolean;
  /** Folders and files that must stay as they are, such as the bench. */
  readonly protect?: readonly string[];
}

/**
 * Writes a text file, replacing one that is there. A device or pipe, such as `/dev/stdout`, is
 * written to. Missing folders above it are made.
 *
 * @param protect files that must stay as they are: the inputs
 * @throws {BenchError} output-exists: the path is a folder or protected; output-unwritable
 */
export async function writeFile(
  target: string,
  text: string,
  protect: readonly string[] = [],
): Promise<void> {
  await guarded(target, async () => {
    const found = await statOf(target);
    if (found?.isDirectory()) throw refusal(target, 'is a folder', 'name a file for the output');
    if (found !== null && !found.isFile()) {
      await fs.writeFile(target, text);
      return;
    }
    const real = await realPath(target);
    for (const kept of protect) {
      if ((await realPath(kept)) === real) {
        throw refusal(target, 'is an input', 'name another file for the output');
      }
    }
    await inParent(real, async () => {
      const passing = await passingName(real);
      try {
        await fs.writeFile(passing, text, { flag: 'wx' });
        if (found !== null) await fs.chmod(passing, found.mode);
        await fs.rename(passing, real);
      } catch (error) {
        await fs.rm(passing, { force: true });
        throw error;
      }
    });
  });
}

/**
 * Writes a folder of text files, with a marker file that lists them.
 *
 * An empty or missing folder is filled. A folder that carries the marker is written anew: files the
 * marker lists go, all others are kept as they are. Refused without `force`: a folder that holds
 * files and no marker; a listed file that was changed since; a new file in the place of one of
 * somebody else. With `force` such a file is overwritten where a new one has its name; no other
 * file is ever removed. Always refused: a file, the working folder and the folders above it, a
 * protected place and the folders above it.
 *
 * @param files text by path below the folder, with `/`
 * @throws {BenchError} output-exists, output-unwritable
 * @throws {RangeError} a path of `files` leaves the folder, or two differ by case only
 */
export async function writeFolder(
  target: string,
  files: ReadonlyMap<string, string>,
  options: WriteFolderOptions,
): Promise<void> {
  const wanted = filesWithMarker(files, options.marker);
  await guarded(target, async () => {
    const real = await realPath(target);
    for (const kept of [process.cwd(), ...(options.protect ?? [])]) {
      if (`${await realPath(kept)}${path.sep}`.startsWith(endedBySeparator(real))) {
        throw refusal(target, `is or holds ${kept}`, 'name a folder of its own for the output');
      }
    }
    const found = await statOf(real);
    if (found !== null && !found.isDirectory()) {
      throw refusal(target, 'is a file', 'name a folder for the output');
    }
    const kept = found === null ? [] : await entriesToKeep(target, real, wanted, options);
    await inParent(real, async () => {
      const fresh = await passingName(real);
      try {
        await fs.mkdir(fresh);
        for (const entry of kept) await copyEntry(path.join(real, entry), path.join(fresh, entry));
        for (const [name, text] of wanted) await fillFile(path.join(fresh, name), text);
        if (found !== null) await fs.chmod(fresh, found.mode);
        await moveIn(fresh, real, found !== null);
      } catch (error) {
        await fs.rm(fresh, { recursive: true, force: true });
        throw error;
      }
    });
  });
}

/** Paths below an existing folder that are not the tool's own, so that they outlive it. */
async function entriesToKeep(
  target: string,
  real: string,
  wanted: ReadonlyMap<string, string>,
  options: WriteFolderOptions,
): Promise<string[]> {
  const { marker, force = false } = options;
  const entries = await entriesBelow(real, '');
  const listed =
    marker !== null && entries.includes(marker.file)
      ? listedFiles(await fs.readFile(path.join(real, marker.file), 'utf8'), marker)
      : null;
  if (listed === null && entries.length > 0 && !force) {
    throw refusal(target, 'holds files this tool did not write', WITH_FORCE);
  }
  const kept: string[] = [];
  for (const entry of entries) {
    if (listed !== null && entry === marker?.file) continue;
    const sum = listed?.get(entry);
    if (sum !== undefined && sum === (await sumOf(path.join(real, entry)))) continue;
    if (!wanted.has(entry) && (sum === undefined || force)) {
      kept.push(entry);
    } else if (!force) {
      const what = sum === undefined ? 'was not written by this tool' : 'was changed since';
      throw refusal(path.join(target, entry), what, WITH_FORCE);
    }
  }
  return kept;
}

const WITH_FORCE =
  'name a new or empty folder, or add --force: files with the names of new ones are overwritten, ' +
  'others are kept';

/** Files, links and empty folders below a folder, with `/`. */
async function entriesBelow(folder: string, prefix: string): Promise<string[]> {
  const entries = await fs.readdir(path.join(folder, prefix), { withFileTypes: true });
  const found: string[] = [];
  for (const entry of entries) {
    const name = prefix === '' ? entry.name : `${prefix}/${entry.name}`;
    const below = entry.isDirectory() ? await entriesBelow(folder, name) : [];
    found.push(...(below.length === 0 ? [name] : below));
  }
  return found.sort();
}

/** SHA-256 of a regular file; null for anything else. */
async function sumOf(file: string): Promise<string | null> {
  const found = await fs.lstat(file);
  return found.isFile() ? sha256(await fs.readFile(file)) : null;
}

async function copyEntry(from: string, to: string): Promise<void> {
  const found = await fs.lstat(from);
  if (found.isDirectory()) {
    await fs.mkdir(to, { recursive: true });
    return;
  }
  await fs.mkdir(path.dirname(to), { recursive: true });
  if (found.isSymbolicLink()) {
    await fs.symlink(await fs.readlink(from), to);
  } else if (found.isFile()) {
    await fs.copyFile(from, to);
    await fs.utimes(to, found.atime, found.mtime);
  } else {
    throw refusal(from, 'is neither file, folder nor link', 'move it away, then try again');
  }
}

async function fillFile(file: string, text: string): Promise<void> {
  await fs.mkdir(path.dirname(file), { recursive: true });
  await fs.writeFile(file, text, { flag: 'wx' });
}

/** Moves a finished folder to its place; the old one is put back when that fails. */
async function moveIn(fresh: string, real: string, replaces: boolean): Promise<void> {
  if (!replaces) {
    await fs.rename(fresh, real);
    return;
  }
  const old = await passingName(real);
  await fs.rename(real, old);
  try {
    await fs.rename(fresh, real);
  } catch (error) {
    await fs.rename(old, real);
    throw error;
  }
  await fs.rm(old, { recursive: true, force: true });
}

/** Makes the folders above a path, and takes them away again when the work fails. */
async function inParent(real: string, work: () => Promise<void>): Promise<void> {
  const parent = path.dirname(real);
  const made = await fs.mkdir(parent, { recursive: true });
  try {
    await work();
  } catch (error) {
    if (made !== undefined) await removeEmpty(parent, made);
    throw error;
  }
}

async function removeEmpty(lowest: string, highest: string): Promise<void> {
  try {
    for (let folder = lowest; folder.length >= highest.length; folder = path.dirname(folder)) {
      await fs.rmdir(folder);
    }
  } catch {
    // Somebody has put something there meanwhile: it stays.
  }
}

/** A free name beside a path. */
async function passingName(real: string): Promise<string> {
  const { dir, base } = path.parse(real);
  for (let n = 1; ; n += 1) {
    const name = path.join(dir, `.${base.slice(0, 40)}.${process.pid}.${n}.tmp`);
    if ((await lstatOf(name)) === null) return name;
  }
}

/** The path with links followed, as far as it exists. */
async function realPath(target: string): Promise<string> {
  const full = path.resolve(target);
  try {
    return await fs.realpath(full);
  } catch (error) {
    const parent = path.dirname(full);
    if (!isMissing(error) || parent === full) throw error;
    return path.join(await realPath(parent), path.basename(full));
  }
}

async function statOf(target: string) {
  return fs.stat(target).catch(nullIfMissing);
}

async function lstatOf(target: string) {
  return fs.lstat(target).catch(nullIfMissing);
}

function nullIfMissing(error: unknown): null {
  if (isMissing(error)) return null;
  throw error;
}

function isMissing(error: unknown): boolean {
  return codeOf(error) === 'ENOENT';
}

function endedBySeparator(folder: string): string {
  return folder.endsWith(path.sep) ? folder : `${folder}${path.sep}`;
}

/** The code of a failure of the operating system; null for any other. */
function codeOf(error: unknown): string | null {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string')
    return null;
  return 'syscall' in error ? error.code : null;
}

async function guarded(target: string, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    const code = codeOf(error);
    if (code === null) throw error;
    const why = REASONS[code] ?? `the system says ${code}`;
    const message = `${target} cannot be written: ${why}`;
    const remedy = 'name a place that can be written to';
    throw new BenchError('output-unwritable', message, remedy, place({ file: target }), error);
  }
}

const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'permission is missing',
  EPERM: 'permission is missing',
  EROFS: 'the disk can only be read',
  ENOSPC: 'the disk is full',
  ENOTDIR: 'a part of the path is a file',
  ENAMETOOLONG: 'the name is too long',
};

function refusal(target: string, what: string, remedy: string): BenchError {
  return new BenchError('output-exists', `${target} ${what}`, remedy, place({ file: target }));
}
