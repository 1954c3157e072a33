import { readdirSync } from 'node:fs';
import { BenchError, place } from '../findings/index.ts';
import { type Column, FILES } from '../model/index.ts';
import { writeFolder } from '../report/index.ts';
import { argument, type Call, type CommandResult } from './command.ts';

/**
 * The files of a blank bench: every file of the catalogue with its header, each column explained
 * in a `#` line, and the folders for lab exports and recordings.
 *
 * @returns text by path
 */
export function blankBench(): Map<string, string> {
  const files = new Map<string, string>();
  files.set('bench.json', `${JSON.stringify(BLANK_SETTINGS, null, 2)}\n`);
  for (const spec of Object.values(FILES)) {
    if (spec.path.includes('*')) continue;
    files.set(spec.path, blankTable(spec.path, spec.row, spec.columns));
  }
  files.set('lab/README.md', LAB_README);
  files.set('usage/README.md', usageReadme());
  return files;
}

/** Settings a new bench starts from: those with a default, said openly. */
const BLANK_SETTINGS = {
  title: 'Untitled bench',
  edition: '1',
  reference_levels: [],
  confidence: 0.95,
  seed: 1,
  nondetect_bound: 'reporting',
  scenario_days: 365,
};

function blankTable(
  path: string,
  row: string,
  columns: Readonly<Record<string, Column<unknown>>>,
): string {
  const lines = [`# ${path}: one row is ${row}. Lines that start with # are comments.`];
  for (const [name, column] of Object.entries(columns)) {
    lines.push(`# ${name}${column.required ? ' (required)' : ''}: ${explained(column)}`);
  }
  lines.push(Object.keys(columns).join(','));
  return `${lines.join('\n')}\n`;
}

function explained({ about, example, kind }: Column<unknown>): string {
  if (kind.type === 'choice') return `${about}; one of ${kind.words.join(', ')}`;
  return `${about}; for example ${example}`;
}

const LAB_README = `# Lab exports

Put the lab's CSV files here as they came. Nothing in them has to be edited.
The number a lab gave to a sample leads to samples.csv, by way of bottles.csv where the two differ.
`;

function usageReadme(): string {
  const lines = [
    '# Recorded usage',
    '',
    'One CSV file is one recording; its name is the scenario.',
    '',
  ];
  for (const [name, column] of Object.entries(FILES.usage.columns)) {
    lines.push(`- \`${name}\`${column.required ? ' (required)' : ''}: ${explained(column)}`);
  }
  return `${lines.join('\n')}\n`;
}

export async function run(call: Call): Promise<CommandResult> {
  const folder = argument(call, 0);
  refuseFilled(folder);
  await writeFolder(folder, blankBench(), { marker: null });
  return { outcome: null, findings: [], written: [folder], end: 'done' };
}

function refuseFilled(folder: string): void {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return;
    throw new BenchError(
      'output-unwritable',
      `the folder cannot be used (${code ?? 'unknown reason'})`,
      'name another folder',
      place({ file: folder }),
      error,
    );
  }
  if (names.length > 0) {
    throw new BenchError(
      'folder-not-empty',
      'the folder already holds files',
      'name a folder that does not exist yet',
      place({ file: folder }),
    );
  }
}
