import { type Finding, finding, place, sortFindings } from '../findings/index.ts';
import {
  type Bench,
  type BenchRow,
  type BenchSettings,
  FILES,
  type FileName,
  type InputFile,
  type RawTable,
  type Recording,
} from '../model/index.ts';
import type { Measures } from '../reference/index.ts';
import { readRows } from './bench-rows.ts';
import { type BenchTables, checkReferences } from './cross-references.ts';
import { withExtraAnalytes } from './extra-analytes.ts';
import type { LabSource } from './lab-files/lab-source.ts';
import { readLabFiles } from './lab-files/read-lab-files.ts';
import { ResultTableBuilder } from './result-table-builder.ts';
import { checkDeviceRows } from './row-checks.ts';
import { checkSamples } from './sample-checks.ts';
import { sampleLookup } from './sample-lookup.ts';
import { checkSpikes } from './spike-checks.ts';
import { addTubeResults } from './tube-results.ts';

/** What reading the folder gave, before any meaning. */
export interface RawBench {
  readonly settings: BenchSettings;
  readonly tables: ReadonlyMap<FileName, RawTable>;
  readonly recordings: readonly RawTable[];
  readonly labFiles: readonly LabSource[];
  readonly inputs: readonly InputFile[];
  readonly fingerprint: string;
  /** Findings of the reading itself. */
  readonly findings: readonly Finding[];
}

/**
 * The bench of a folder, with every finding of every file.
 *
 * Errors do not stop the reading: all problems are found at once. Whoever computes on the bench
 * has to look at `findings` first.
 */
export function buildBench(raw: RawBench): Bench {
  const findings: Finding[] = [...raw.findings];
  const measures = raw.settings.measures ?? null;
  const tables = readTables(raw, measures, findings);
  const recordings = readRecordings(raw.recordings, measures, findings);
  const extra = withExtraAnalytes(tables.analytes);
  findings.push(
    ...extra.findings,
    ...checkReferences(tables),
    ...checkSpikes(tables, extra.index),
    ...checkDeviceRows(tables, recordings),
  );
  const builder = new ResultTableBuilder();
  const rows = new Map<string, number>();
  const samplesOf = (stem: string) => sampleLookup(stem, tables.samples, tables.bottles);
  findings.push(...readLabFiles(raw.labFiles, { analytes: extra.index, samplesOf }, builder));
  findings.push(...addTubeResults(tables, extra.index, raw.settings.confidence, builder));
  const results = builder.build();
  for (const file of results.files) rows.set(file.path, file.rowsRead);
  findings.push(...checkSamples(tables.samples, results), ...unknownLabs(tables, results.files));
  return {
    settings: raw.settings,
    tables,
    recordings,
    analytes: extra.index,
    results,
    inputs: raw.inputs.map((input) => ({ ...input, rows: rows.get(input.path) ?? input.rows })),
    fingerprint: raw.fingerprint,
    findings: sortFindings(accepted(findings, raw.settings)),
  };
}

function readTables(raw: RawBench, measures: Measures | null, findings: Finding[]): BenchTables {
  const read = <F extends FileName>(file: F): readonly BenchRow<F>[] => {
    const table = raw.tables.get(file);
    if (table === undefined) return [];
    const reading = readRows(file, table, measures);
    findings.push(...reading.findings);
    return reading.rows;
  };
  return {
    devices: read('devices'),
    variants: read('variants'),
    samples: read('samples'),
    bottles: read('bottles'),
    spikes: read('spikes'),
    tubes: read('tubes'),
    analytes: read('analytes'),
    pours: read('pours'),
    drainRuns: read('drainRuns'),
    flushes: read('flushes'),
    flushRules: read('flushRules'),
    tanks: read('tanks'),
    idleTds: read('idleTds'),
    scenarios: read('scenarios'),
    energy: read('energy'),
    parts: read('parts'),
    claims: read('claims'),
    panel: read('panel'),
    observations: read('observations'),
  };
}

function readRecordings(
  tables: readonly RawTable[],
  measures: Measures | null,
  findings: Finding[],
): Recording[] {
  return tables.map((table) => {
    const reading = readRows('usage', table, measures);
    findings.push(...reading.findings);
    return {
      scenario: table.path.replace(/^usage\//, '').replace(/\.csv$/i, ''),
      path: table.path,
      rows: reading.rows,
    };
  });
}

function unknownLabs(
  tables: BenchTables,
  files: readonly { readonly stem: string; readonly path: string }[],
): Finding[] {
  const stems = new Set(files.map((file) => file.stem));
  const missing = new Map<string, BenchRow<'bottles'>>();
  for (const row of tables.bottles) {
    if (!stems.has(row.values.lab) && !missing.has(row.values.lab))
      missing.set(row.values.lab, row);
  }
  return [...missing].map(([lab, row]) =>
    finding(
      'file-missing',
      `bottles.csv names the lab file "${lab}" and there is no lab/${lab}.csv`,
      'put the export into lab/ under that name, or correct the name',
      place({
        file: FILES.bottles.path,
        line: row.line,
        column: (row.source.fieldIndex.get('lab') ?? 0) + 1,
        field: 'lab',
        cell: lab,
      }),
    ),
  );
}

/** Warnings that were looked at become notes that carry the reason; errors cannot be accepted. */
export function accepted(findings: readonly Finding[], settings: BenchSettings): Finding[] {
  const rules = settings.accepted_findings ?? [];
  return findings.map((item) => {
    if (item.level !== 'warning') return item;
    const rule = rules.find(
      (candidate) =>
        candidate.code === item.code &&
        (candidate.file === undefined || candidate.file === item.place.file) &&
        (candidate.line === undefined || candidate.line === item.place.line),
    );
    if (rule === undefined) return item;
    return { ...item, level: 'note', message: `${item.message} (accepted: ${rule.reason})` };
  });
}
