import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { labOpener } from '../../../src/commands/read-bench.ts';
import type { Finding } from '../../../src/findings/index.ts';
import {
  intervalOf,
  type LabFile,
  type LabLayoutFile,
  type LabResult,
  labLayoutSchema,
  type ResultTable,
  resultAt,
} from '../../../src/model/index.ts';
import { readLabFiles } from '../../../src/normalise/lab-files/read-lab-files.ts';
import { ResultTableBuilder } from '../../../src/normalise/result-table-builder.ts';
import { analyteIndex, type ExtraAnalyte } from '../../../src/reference/index.ts';

export interface LabReading {
  readonly table: ResultTable;
  readonly file: LabFile;
  readonly findings: readonly Finding[];
  /** Lab numbers, or names where there is no number, in the order met. */
  readonly samples: readonly string[];
  readonly results: readonly ReadResult[];
}

export interface ReadResult {
  readonly sample: string;
  readonly analyte: string;
  readonly line: number;
  readonly result: LabResult;
  readonly low: number;
  readonly high: number;
}

/** Reads one lab file with every sample accepted, as a bench would that lists them all. */
export function readLab(
  bytes: Uint8Array,
  path: string,
  sidecar: LabLayoutFile | null = null,
  extra: readonly ExtraAnalyte[] = [],
): LabReading {
  const samples: string[] = [];
  const sampleOf = (labSample: string, clientSample: string): number => {
    const name = labSample === '' ? clientSample : labSample;
    const known = samples.indexOf(name);
    return known === -1 ? samples.push(name) - 1 : known;
  };
  const builder = new ResultTableBuilder();
  const findings = readLabFiles(
    [
      {
        path,
        stem: path.replace(/^lab\//, '').replace(/\.[^.]*$/, ''),
        open: labOpener(path, bytes),
        sidecar: sidecar === null ? null : labLayoutSchema.parse(sidecar),
        sidecarPath: sidecar === null ? null : path.replace(/\.[^.]*$/, '.layout.json'),
      },
    ],
    { analytes: analyteIndex(extra), samplesOf: () => sampleOf },
    builder,
  );
  const table = builder.build();
  const file = table.files[0];
  if (file === undefined) throw new Error(findings.map(({ message }) => message).join('; '));
  const results = Array.from({ length: table.length }, (_, row): ReadResult => {
    const result = resultAt(table, row);
    const interval = intervalOf(result, 'detection');
    return {
      sample: samples[table.sample[row] ?? -1] ?? '',
      analyte: table.analytes[table.analyte[row] ?? -1]?.key ?? '',
      line: table.line[row] ?? 0,
      result,
      low: interval?.low ?? Number.NaN,
      high: interval?.high ?? Number.NaN,
    };
  });
  return { table, file, findings, samples, results };
}

/** The bytes of a file of this folder. */
export function bytesOf(name: string): Uint8Array {
  return readFileSync(fileURLToPath(new URL(name, import.meta.url)));
}

/** Rows left out, by reason. */
export function leftOut(file: LabFile): Record<string, number> {
  return Object.fromEntries(file.leftOut.map(({ reason, count }) => [reason, count]));
}

/** Counts of findings by code. */
export function codes(findings: readonly Finding[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { code } of findings) counts[code] = (counts[code] ?? 0) + 1;
  return counts;
}
