import { cpSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { notes } from '../../src/commands/notes.ts';
import { readBench } from '../../src/commands/read-bench.ts';
import { hasErrors } from '../../src/findings/index.ts';
import type { NotesRow } from '../../src/model/index.ts';
import { scratchFolder, VERSION } from './bench-folder.ts';
import { unfoundNumbers } from './number-tokens.ts';

const scratch = scratchFolder();
const SAMPLE = 'samples/fourteen-devices';
/** Few devices, analytes and draws: quick, and every subject is there. */
const SHOWN = {
  devices: ['tankless-a', 'tankless-c', 'tank-a', 'tank-c', 'pitcher-a'],
  scenarios: ['family'],
  analytes: ['calcium', 'magnesium', 'sodium', 'lead', 'total-dissolved-solids'],
  draws: 20,
};

/** Flushes name rules, and the state without them is that of a variant that other files name. */
const FLUSHES = [
  'flushes.csv',
  'flush-rules.csv',
  'variants.csv',
  'idle-tds.csv',
  'pours.csv',
  'samples.csv',
  'bottles.csv',
  'lab',
  'spikes.csv',
];

/** Files that may be absent; some go together, as one names what the other holds. */
const ABSENT: Readonly<Record<string, readonly string[]>> = {
  'samples.csv': ['bottles.csv', 'lab', 'spikes.csv'],
  lab: ['bottles.csv'],
  'bottles.csv': ['lab'],
  'spikes.csv': [],
  'variants.csv': [],
  'pours.csv': [],
  'drain-runs.csv': [],
  'flushes.csv': FLUSHES,
  'flush-rules.csv': FLUSHES,
  'tanks.csv': [],
  'idle-tds.csv': [],
  'scenarios.csv': [],
  usage: [],
  'energy.csv': [],
  'parts.csv': [],
  'claims.csv': [],
  'panel.csv': [],
  'observations.csv': [],
};

/** Heading of the part that a file alone carries. */
const HEADINGS: Readonly<Record<string, string>> = {
  'samples.csv': '## Reductions',
  lab: '## Reductions',
  'pours.csv': '## Flow and filling times',
  'idle-tds.csv': '## The first water after a pause',
  'claims.csv': '## Claims and certificates',
  'panel.csv': '## Taste',
};

/** What is said of it in the part on what was not tested. */
const SAID: Readonly<Record<string, RegExp>> = {
  'samples.csv': /Reductions: no device has a product sample/,
  'pours.csv': /so they are not tested: [^.]*\bflow\b/,
  'drain-runs.csv': /so they are not tested: [^.]*\bdrain while producing\b/,
  'tanks.csv': /so they are not tested: [^.]*\bfilling of storage tanks\b/,
  'idle-tds.csv': /so they are not tested: [^.]*\bdissolved solids after a pause\b/,
  'energy.csv': /so they are not tested: [^.]*\bpower\b/,
  'parts.csv': /so they are not tested: [^.]*\breplacement parts\b/,
  'claims.csv': /so they are not tested: [^.]*\bclaims and certificates\b/,
  'panel.csv': /so they are not tested: [^.]*\btaste\b/,
};

async function notesWithout(files: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const folder = path.join(scratch.path, files[0] ?? 'whole');
  cpSync(SAMPLE, folder, { recursive: true });
  for (const file of new Set(files)) rmSync(path.join(folder, file), { recursive: true });
  const bench = readBench(folder);
  expect(hasErrors(bench.findings), files.join(', ')).toBe(false);
  const isScenario = bench.tables.scenarios.length > 0;
  const { scenarios, analytes, ...shown } = SHOWN;
  // A filter asks for what the bench holds.
  const isTested = bench.results.length > 0;
  return notes(bench, {
    version: VERSION,
    ...shown,
    ...(isScenario ? { scenarios } : {}),
    ...(isTested ? { analytes } : {}),
  });
}

function rowsOf(files: ReadonlyMap<string, string>): NotesRow[] {
  return (JSON.parse(files.get('data/notes.json') ?? '{}') as { rows: NotesRow[] }).rows;
}

/** Headings with nothing behind them but another heading of the same or a higher rank. */
function emptyHeadings(text: string): string[] {
  const lines = text.split('\n').filter((line) => line !== '');
  return lines.filter((line, at) => {
    const rank = /^#+ /.exec(line)?.[0].length;
    const next = lines[at + 1];
    if (rank === undefined) return false;
    const nextRank = next === undefined ? 0 : /^#+ /.exec(next)?.[0].length;
    return nextRank !== undefined && nextRank <= rank;
  });
}

let whole: ReadonlyMap<string, string> = new Map();

beforeAll(async () => {
  whole = await notesWithout([]);
}, 60_000);

afterAll(() => scratch.remove());

describe('a bench that holds only some of the files', () => {
  it('covers every file of the sample that may be absent', () => {
    const optional = readdirSync(SAMPLE).filter(
      (file) => file !== 'bench.json' && file !== 'devices.csv',
    );
    expect(Object.keys(ABSENT).sort()).toEqual(optional.sort());
  });

  it('whole has every part, each behind its heading', () => {
    const text = whole.get('index.md') ?? '';
    for (const heading of Object.values(HEADINGS)) expect(text).toContain(`\n${heading}\n`);
    for (const heading of ['What the water keeps of its minerals', 'Costs', 'Water to drain']) {
      expect(text).toContain(`\n## ${heading}\n`);
    }
    expect(text).not.toContain('not evaluated');
    expect(emptyHeadings(text)).toEqual([]);
  });

  it.each(Object.entries(ABSENT))(
    'without %s says so in one place and leaves no heading empty',
    async (file, together) => {
      const files = await notesWithout([file, ...together]);
      const text = files.get('index.md') ?? '';
      const untested = text.split('## What was not tested')[1]?.split('\n## ')[0] ?? '';
      const heading = HEADINGS[file];
      if (heading !== undefined) expect(text).not.toContain(`\n${heading}\n`);
      const said = SAID[file];
      if (said !== undefined) expect(untested).toMatch(said);
      for (const [name, page] of files) {
        if (name.endsWith('.md')) expect(emptyHeadings(page), name).toEqual([]);
      }
      expect(unfoundNumbers(text, rowsOf(files))).toEqual([]);
      for (const [, target = ''] of text.matchAll(/(?<!\\)\]\(([^)#]+)[^)]*\)/g)) {
        expect(files.has(target), target).toBe(true);
      }
      for (const [, anchor = ''] of text.matchAll(/(?<!\\)\]\(#([^)]+)\)/g)) {
        expect(anchorsOf(text), anchor).toContain(anchor);
      }
      const [prose = ''] = text.split('\n## Provenance');
      expect(prose).not.toMatch(/\b(?:NaN|undefined|null|Infinity)\b/);
    },
    60_000,
  );

  it('without drain runs claims no saving of a drain that is not known', async () => {
    const text = (await notesWithout(['drain-runs.csv'])).get('index.md') ?? '';
    expect(text).toContain('its drain is not known, and the mean of its water goes from');
    expect(text).not.toContain('drains 0 L');
  }, 60_000);

  it('with a single device compares nothing and stays whole', async () => {
    const folder = path.join(scratch.path, 'single');
    cpSync(SAMPLE, folder, { recursive: true });
    const bench = readBench(folder);
    const files = await notes(bench, { version: VERSION, devices: ['tankless-a'], draws: 20 });
    const text = files.get('index.md') ?? '';
    expect(text).not.toContain('### Which drains least where');
    expect(text).not.toContain('### Which devices are told apart');
    expect(emptyHeadings(text)).toEqual([]);
    expect(unfoundNumbers(text, rowsOf(files))).toEqual([]);
  }, 60_000);

  it('with nothing but devices holds no empty heading', async () => {
    const folder = path.join(scratch.path, 'devices-only');
    cpSync(SAMPLE, folder, { recursive: true });
    for (const file of readdirSync(folder)) {
      if (file !== 'bench.json' && file !== 'devices.csv') {
        rmSync(path.join(folder, file), { recursive: true });
      }
    }
    writeFileSync(path.join(folder, 'bench.json'), '{ "title": "Devices only" }\n');
    const files = await notes(readBench(folder), { version: VERSION, draws: 20 });
    for (const [name, page] of files) {
      if (name.endsWith('.md')) expect(emptyHeadings(page), name).toEqual([]);
    }
  });
});

function anchorsOf(text: string): string[] {
  return [...text.matchAll(/^#+ (.*)$/gm)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N} -]/gu, '')
      .replaceAll(' ', '-'),
  );
}
