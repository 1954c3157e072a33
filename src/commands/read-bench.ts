import { qualityFindings, recordedOverlaps } from '../analyse/index.ts';
import {
  BenchError,
  closestWord,
  type Finding,
  finding,
  hasErrors,
  place,
  sortFindings,
} from '../findings/index.ts';
import {
  type Bench,
  type BenchSettings,
  FILES,
  type FileName,
  type InputFile,
  type RawTable,
} from '../model/index.ts';
import {
  accepted,
  buildBench,
  type LabSource,
  type RawBench,
  readSettings,
  readSidecar,
} from '../normalise/index.ts';
import {
  type BenchFile,
  type DecodedText,
  decodeText,
  fingerprintOf,
  forEachRecord,
  listBenchFiles,
  readBenchFile,
  readJson,
  readTable,
  sniffDelimiter,
} from '../read/index.ts';

const SETTINGS = 'bench.json';

/**
 * Reads a bench folder: all files, all findings at once.
 *
 * @param folder path of the bench
 * @returns the bench; look at its `findings` before computing: an error there means that something
 * could not be read or would mislead
 * @throws {BenchError} bench-missing, and the findings of bench.json, without which nothing else
 * can be judged
 * @example readBench('samples/first-bench').tables.devices.length // 2
 */
export function readBench(folder: string): Bench {
  const paths = listBenchFiles(folder);
  if (!paths.includes(SETTINGS)) {
    throw new BenchError(
      'bench-missing',
      `${folder} holds no bench.json`,
      'name the folder of a bench, or make one with `pourbench new <folder>`',
      place({ file: SETTINGS }),
    );
  }
  const state = new Reading(folder);
  const settings = state.settings();
  for (const path of paths) if (path !== SETTINGS && !isReadme(path)) state.read(path);
  return withQuality(buildBench(state.raw(settings)));
}

/** The bench with what its results and logs say about their own quality. */
function withQuality(bench: Bench): Bench {
  const found = [
    ...accepted(qualityFindings(bench), bench.settings),
    ...(hasErrors(bench.findings) ? [] : recordedOverlaps(bench)),
  ];
  return { ...bench, findings: sortFindings([...bench.findings, ...found]) };
}

class Reading {
  readonly #folder: string;
  readonly #findings: Finding[] = [];
  readonly #inputs: InputFile[] = [];
  readonly #tables = new Map<FileName, RawTable>();
  readonly #recordings: RawTable[] = [];
  readonly #labFiles: LabFileRead[] = [];
  readonly #sidecars = new Map<string, LabSource['sidecar']>();

  constructor(folder: string) {
    this.#folder = folder;
  }

  /** @throws {BenchError} when bench.json cannot be used */
  settings(): BenchSettings {
    const file = readBenchFile(this.#folder, SETTINGS);
    const json = readJson(file.bytes, SETTINGS);
    this.#findings.push(...json.findings);
    this.#inputs.push({ path: SETTINGS, sha256: file.sha256, rows: null });
    const reading = hasErrors(json.findings)
      ? { settings: null, findings: [] }
      : readSettings(json.value, json.placeOf);
    this.#findings.push(...reading.findings);
    if (reading.settings === null) throw new SettingsError(this.#findings);
    return reading.settings;
  }

  read(path: string): void {
    const target = targetOf(path);
    if (target === null) {
      this.#findings.push(unknownFile(path));
      return;
    }
    try {
      const file = readBenchFile(this.#folder, path);
      if (target === 'lab') this.#readLab(file);
      else if (target === 'sidecar') this.#readSidecar(file);
      else this.#readTable(file, target);
    } catch (error) {
      if (!(error instanceof BenchError)) throw error;
      this.#findings.push(error.finding);
    }
  }

  raw(settings: BenchSettings): RawBench {
    for (const [name, spec] of Object.entries(FILES)) {
      const wasTried = this.#findings.some((item) => item.place.file === spec.path);
      if (spec.required && !this.#tables.has(name as FileName) && !wasTried) {
        this.#findings.push(
          finding(
            'file-missing',
            `the bench has no ${spec.path}`,
            `add ${spec.path}: one row is ${spec.row}`,
            place({ file: spec.path }),
          ),
        );
      }
    }
    this.#reportUnusedSidecars();
    const inputs = [...this.#inputs].sort((a, b) => (a.path < b.path ? -1 : 1));
    return {
      settings,
      tables: this.#tables,
      recordings: this.#recordings,
      labFiles: this.#labSources(),
      inputs,
      fingerprint: fingerprintOf(inputs),
      findings: this.#findings,
    };
  }

  #readTable(file: BenchFile, name: FileName): void {
    const { table, findings } = readTable(file.bytes, file.path, FILES[name].comments);
    this.#findings.push(...findings);
    this.#inputs.push({ path: file.path, sha256: file.sha256, rows: table.rows.length });
    if (name === 'usage') this.#recordings.push(table);
    else this.#tables.set(name, table);
  }

  #readLab(file: BenchFile): void {
    this.#inputs.push({ path: file.path, sha256: file.sha256, rows: null });
    this.#labFiles.push({ path: file.path, bytes: file.bytes });
  }

  #readSidecar(file: BenchFile): void {
    this.#inputs.push({ path: file.path, sha256: file.sha256, rows: null });
    const { sidecar, findings } = readSidecarFile(file);
    this.#findings.push(...findings);
    this.#sidecars.set(file.path, sidecar);
  }

  #labSources(): LabSource[] {
    return this.#labFiles.map(({ path, bytes }) => {
      const sidecarPath = sidecarOf(path);
      const hasSidecar = this.#sidecars.has(sidecarPath);
      return {
        path,
        stem: path.replace(/^lab\//, '').replace(/\.[^.]*$/, ''),
        open: labOpener(path, bytes),
        sidecar: this.#sidecars.get(sidecarPath) ?? null,
        sidecarPath: hasSidecar ? sidecarPath : null,
      };
    });
  }

  #reportUnusedSidecars(): void {
    const used = new Set(this.#labFiles.map(({ path }) => sidecarOf(path)));
    for (const path of this.#sidecars.keys()) {
      if (used.has(path)) continue;
      this.#findings.push(
        finding(
          'layout-unused',
          'no lab file has the name of this sidecar',
          'name it like its lab file: lab/july.layout.json beside lab/july.csv',
          place({ file: path }),
        ),
      );
    }
  }
}

interface LabFileRead {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** A sidecar and what is wrong with it; null where it cannot be used. */
export function readSidecarFile(file: BenchFile): {
  readonly sidecar: LabSource['sidecar'];
  readonly findings: readonly Finding[];
} {
  const json = readJson(file.bytes, file.path);
  if (hasErrors(json.findings)) return { sidecar: null, findings: json.findings };
  const { sidecar, findings } = readSidecar(json.value, json.placeOf);
  return { sidecar, findings: [...json.findings, ...findings] };
}

/** The sidecar that would rule a lab file. */
export function sidecarOf(labPath: string): string {
  return labPath.replace(/\.[^.]*$/, '.layout.json');
}

/** Opens a lab file at any delimiter; its bytes are decoded once for each encoding asked for. */
export function labOpener(path: string, bytes: Uint8Array): LabSource['open'] {
  let decoded: { readonly stated: string | null; readonly text: DecodedText } | null = null;
  return (encoding, delimiter) => {
    if (decoded === null || decoded.stated !== encoding) {
      decoded = { stated: encoding, text: decodeText(bytes, path, encoding) };
    }
    const { text } = decoded;
    const split = delimiter ?? sniffDelimiter(text.text, path, false);
    const options = { path, delimiter: split, comments: false };
    return {
      encoding: text.encoding,
      delimiter: split,
      findings: text.findings,
      records: (onRecord) => forEachRecord(text.text, options, onRecord),
    };
  };
}

/** Thrown when bench.json cannot be used; it carries every finding of the file. */
export class SettingsError extends BenchError {
  readonly findings: readonly Finding[];

  constructor(findings: readonly Finding[]) {
    const first = findings.find((item) => item.level === 'error');
    if (first === undefined) throw new RangeError('no error among the findings');
    super(first.code, first.message, first.remedy, first.place);
    this.findings = findings;
  }
}

const NAMES = Object.entries(FILES).map(([name, spec]) => [spec.path, name as FileName] as const);

/** Notes to readers may lie anywhere in a bench; they are no data. */
function isReadme(path: string): boolean {
  return /\.md$/i.test(path);
}

/** What a path of a bench folder is; null when the bench does not use it. */
function targetOf(path: string): FileName | 'lab' | 'sidecar' | null {
  if (/^lab\/.+\.layout\.json$/i.test(path)) return 'sidecar';
  if (path.startsWith('lab/')) return /\.(?:csv|txt|tsv|xls)$/i.test(path) ? 'lab' : null;
  if (path.startsWith('usage/')) return /\.csv$/i.test(path) ? 'usage' : null;
  return NAMES.find(([known]) => known === path)?.[1] ?? null;
}

function unknownFile(path: string): Finding {
  const near = closestWord(
    path,
    NAMES.map(([known]) => known),
  );
  return finding(
    'file-unknown',
    'the file was not read: a bench does not use this name',
    near === null ? 'move it out of the bench folder' : `did you mean ${near}?`,
    place({ file: path }),
  );
}
