import { existsSync } from 'node:fs';
import path from 'node:path';
import { type Finding, hasErrors } from '../findings/index.ts';
import type { Bench, InputFile, ResultTable } from '../model/index.ts';
import { feedSample, readFeedFile } from '../normalise/index.ts';
import { type BenchFile, readBenchFile } from '../read/index.ts';
import { labOpener, readSidecarFile, sidecarOf } from './read-bench.ts';

/** The analysis of a feed that is no sample of a bench, as it was read. */
export interface FeedFile {
  /** As findings and inputs name it: relative to the bench where it lies inside, else its name. */
  readonly path: string;
  /** Name of the sample that is the feed; null where findings ask which one. */
  readonly sample: { readonly name: string; readonly index: number } | null;
  readonly results: ResultTable;
  /** The file, and the sidecar that rules it. */
  readonly inputs: readonly InputFile[];
  /** Look for errors before computing. */
  readonly findings: readonly Finding[];
}

export interface ReadFeedOptions {
  /** Name or lab number of the sample, where the file holds several. */
  readonly sample?: string | null;
  /** Folder of the bench, so that a file inside it is named from there. */
  readonly benchFolder?: string;
}

/**
 * Reads another feed: one file in any layout of a lab export, ruled by a sidecar
 * `NAME.layout.json` beside it where there is one.
 *
 * @param bench names of analytes are those of the bench
 * @param file path of the file
 * @throws {BenchError} file-unreadable
 * @example readFeed(bench, 'hill-town.csv').findings
 */
export function readFeed(bench: Bench, file: string, options: ReadFeedOptions = {}): FeedFile {
  const named = nameOf(bench, file, options.benchFolder ?? null);
  const { sample = null } = options;
  const bytes = readAs(file, named);
  const sidecarFile = sidecarOf(file);
  const sidecar = sidecarFile === file ? null : readBeside(sidecarFile, sidecarOf(named));
  const inputs: InputFile[] = [{ path: named, sha256: bytes.sha256, rows: null }];
  if (sidecar !== null) inputs.push({ path: sidecar.path, sha256: sidecar.sha256, rows: null });
  const ruling = sidecar === null ? null : readSidecarFile(sidecar);
  const stem = path.basename(named).replace(/\.[^.]*$/, '');
  const reading = readFeedFile(
    {
      path: named,
      stem,
      open: labOpener(named, bytes.bytes),
      sidecar: ruling?.sidecar ?? null,
      sidecarPath: sidecar?.path ?? null,
      soleSample: stem,
    },
    bench.analytes,
    sample,
  );
  // A sidecar that cannot be used says all there is to say.
  const isBroken = hasErrors(ruling?.findings ?? []);
  const findings = [...(ruling?.findings ?? []), ...(isBroken ? [] : reading.findings)];
  const rows = reading.results.files[0]?.rowsRead ?? null;
  const read = {
    path: named,
    results: reading.results,
    inputs: inputs.map((input) => (input.path === named ? { ...input, rows } : input)),
  };
  if (hasErrors(findings)) return { ...read, sample: null, findings };
  const index = feedSample(reading, named, sample);
  return typeof index === 'number'
    ? { ...read, sample: { name: reading.samples[index] ?? '', index }, findings }
    : { ...read, sample: null, findings: [...findings, index] };
}

/** What a path is called in outputs, so that they do not depend on where the folders lie. */
function nameOf(bench: Bench, file: string, folder: string | null): string {
  const inside = folder === null ? '' : path.relative(folder, file).split(path.sep).join('/');
  if (inside !== '' && !inside.startsWith('..') && !path.isAbsolute(inside)) return inside;
  const name = path.basename(file);
  return bench.inputs.some((input) => input.path === name) ? `other-feed/${name}` : name;
}

/** @throws {BenchError} file-unreadable */
function readAs(file: string, named: string): BenchFile {
  return { ...readBenchFile('', file), path: named };
}

/** The sidecar beside a file; null where there is none. */
function readBeside(file: string, named: string): BenchFile | null {
  return existsSync(file) ? readAs(file, named) : null;
}
