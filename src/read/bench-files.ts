import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { BenchError, place } from '../findings/index.ts';

/** A file of a bench: its path relative to the bench and its raw bytes. */
export interface BenchFile {
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly sha256: string;
}

/**
 * The files of a bench folder: those at its top, in `lab/` and in `usage/`. Hidden files and other
 * folders are left alone.
 * @throws {BenchError} bench-missing, file-unreadable
 */
export function listBenchFiles(folder: string): string[] {
  let isFolder = false;
  try {
    isFolder = statSync(folder).isDirectory();
  } catch {
    isFolder = false;
  }
  if (!isFolder) {
    throw new BenchError(
      'bench-missing',
      `there is no folder ${folder}`,
      'name the folder of a bench, or make one with `pourbench new <folder>`',
      place({ file: folder }),
    );
  }
  const paths = filesIn(folder);
  for (const sub of ['lab', 'usage']) {
    for (const name of filesIn(join(folder, sub))) paths.push(`${sub}/${name}`);
  }
  return paths.sort(compareBytes);
}

function filesIn(folder: string): string[] {
  try {
    return readdirSync(folder, { withFileTypes: true })
      .filter((entry) => !entry.name.startsWith('.') && !entry.isDirectory())
      .map((entry) => entry.name);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw unreadable(folder, error);
  }
}

/** @throws {BenchError} file-unreadable */
export function readBenchFile(folder: string, path: string): BenchFile {
  try {
    const bytes = readFileSync(join(folder, path));
    return { path, bytes, sha256: createHash('sha256').update(bytes).digest('hex') };
  } catch (error) {
    throw unreadable(path, error);
  }
}

function unreadable(path: string, error: unknown): BenchError {
  return new BenchError(
    'file-unreadable',
    `the file cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown reason'})`,
    'check that it is there and that you may read it',
    place({ file: path }),
    error,
  );
}

/** SHA-256 over the lines `path\tsha256\n` of all inputs, sorted by the bytes of the path. */
export function fingerprintOf(
  inputs: readonly { readonly path: string; readonly sha256: string }[],
): string {
  const hash = createHash('sha256');
  for (const input of [...inputs].sort((a, b) => compareBytes(a.path, b.path))) {
    hash.update(`${input.path}\t${input.sha256}\n`);
  }
  return `sha256:${hash.digest('hex')}`;
}

function compareBytes(a: string, b: string): number {
  return Buffer.compare(Buffer.from(a), Buffer.from(b));
}
