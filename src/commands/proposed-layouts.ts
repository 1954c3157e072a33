import path from 'node:path';
import type { Bench, LabFile, LabLayoutFile } from '../model/index.ts';
import { type View, writeFile } from '../report/index.ts';
import { sidecarOf } from './read-bench.ts';

/** The text of a sidecar as it is written: one key a line, lists of headers one a line. */
export function layoutText(layout: LabLayoutFile): string {
  return `${JSON.stringify(layout, null, 2)}\n`;
}

/**
 * Writes a sidecar beside each lab file that has none, also where a question is open: the sidecar
 * then holds the question.
 * @returns the paths written
 * @throws {BenchError} output-unwritable
 */
export async function writeLayouts(folder: string, bench: Bench): Promise<string[]> {
  const written: string[] = [];
  for (const file of bench.results.files) {
    if (file.proposal === null) continue;
    const target = path.join(folder, sidecarOf(file.path));
    await writeFile(target, layoutText(file.proposal));
    written.push(target);
  }
  return written;
}

/** A ready sidecar for each lab file whose reading is not certain. */
export function proposedLayoutViews(bench: Bench): View[] {
  return uncertain(bench).flatMap((file) => {
    if (file.proposal === null) return [];
    return [
      {
        caption:
          `What ${sidecarOf(file.path)} could say; answer its questions, then take them out ` +
          '(`--write-layouts` writes it)',
        columns: [{ head: sidecarOf(file.path), align: 'left' as const }],
        rows: layoutText(file.proposal)
          .trimEnd()
          .split('\n')
          .map((line) => [line]),
        legend: [],
      },
    ];
  });
}

/** Proposals for the settings of `findings/1`, by lab file; only where something is open. */
export function proposedLayouts(bench: Bench): Record<string, LabLayoutFile> {
  const entries = uncertain(bench).flatMap((file) =>
    file.proposal === null ? [] : [[file.path, file.proposal] as const],
  );
  return Object.fromEntries(entries);
}

function uncertain(bench: Bench): LabFile[] {
  const asked = new Set(
    bench.findings
      .filter(({ level, code }) => level === 'error' && OPEN.has(code))
      .map(({ place }) => place.file),
  );
  return bench.results.files.filter(
    (file) => file.layout === 'not certain' || asked.has(file.path),
  );
}

/** Questions that a sidecar answers. */
const OPEN: ReadonlySet<string> = new Set([
  'date-order-unclear',
  'decimal-unclear',
  'layout-unclear',
  'layout-role-ambiguous',
  'layout-role-missing',
]);
