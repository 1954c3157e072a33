import type { Finding } from '../findings/index.ts';
import type { Bench } from '../model/index.ts';
import type { Outcome, View } from '../report/index.ts';
import { stampOf } from './bench-outcome.ts';
import { argument, type Call, type CommandResult } from './command.ts';
import { movedNumbers } from './moved-numbers.ts';
import { proposedLayouts, proposedLayoutViews, writeLayouts } from './proposed-layouts.ts';
import { readBench, SettingsError } from './read-bench.ts';

/**
 * Every finding of a bench: rows of `findings/1`. Its settings list each lab file with the rows
 * read, the results, and the rows left out by reason.
 */
export function check(bench: Bench): Outcome {
  const { files } = bench.results;
  return {
    schema: 'findings/1',
    bench: stampOf(bench),
    inputs: bench.inputs,
    settings: {
      lab_files: files.map((file) => ({
        path: file.path,
        layout: file.layout,
        rows_read: file.rowsRead,
        results: file.results,
        left_out: Object.fromEntries(file.leftOut.map(({ reason, count }) => [reason, count])),
      })),
      proposed_layouts: proposedLayouts(bench),
    },
    rows: [],
    findings: bench.findings,
    views: files.length === 0 ? [] : [labFilesView(bench), ...proposedLayoutViews(bench)],
  };
}

function labFilesView(bench: Bench): View {
  return {
    caption: 'Lab files as they were read: rows read = results + rows left out',
    columns: [
      { head: 'File', align: 'left' },
      { head: 'Layout', align: 'left' },
      { head: 'Rows read', align: 'right' },
      { head: 'Results', align: 'right' },
      { head: 'Left out, by reason', align: 'left' },
    ],
    rows: bench.results.files.map((file) => [
      file.path,
      file.layout,
      String(file.rowsRead),
      String(file.results),
      file.leftOut.map(({ reason, count }) => `${count} ${reason}`).join(', ') || 'none',
    ]),
    legend: [],
  };
}

export async function run(call: Call): Promise<CommandResult> {
  const folder = argument(call, 0);
  let bench: Bench;
  try {
    bench = readBench(folder);
  } catch (error) {
    if (!(error instanceof SettingsError)) throw error;
    return settingsResult(error.findings);
  }
  const { against } = call.options;
  const moved = against === null ? [] : movedNumbers(bench, readBench(against));
  const outcome = check(bench);
  const findings = [...bench.findings, ...moved];
  const written = call.options.writeLayouts ? await writeLayouts(folder, bench) : [];
  return {
    outcome: { ...outcome, findings },
    findings,
    written,
    end: moved.length > 0 ? 'moved' : 'done',
  };
}

/** bench.json cannot be used: its own findings are all there is. */
function settingsResult(findings: readonly Finding[]): CommandResult {
  return {
    outcome: {
      schema: 'findings/1',
      bench: null,
      inputs: [],
      settings: {},
      rows: [],
      findings,
      views: [],
    },
    findings,
    written: [],
    end: 'done',
  };
}
