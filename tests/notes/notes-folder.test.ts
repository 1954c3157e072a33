import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run as runCheck } from '../../src/commands/check.ts';
import type { Call, CommandResult } from '../../src/commands/command.ts';
import { run as runCompare } from '../../src/commands/compare.ts';
import { run as runCosts } from '../../src/commands/costs.ts';
import { run as runMinerals } from '../../src/commands/minerals.ts';
import { notes, run } from '../../src/commands/notes.ts';
import { run as runPours } from '../../src/commands/pours.ts';
import { readBench } from '../../src/commands/read-bench.ts';
import { run as runReductions } from '../../src/commands/reductions.ts';
import { run as runWaterUse } from '../../src/commands/water-use.ts';
import { envelopeSchema, type SchemaName } from '../../src/model/index.ts';
import { render } from '../../src/report/index.ts';
import {
  callOf,
  DEVICES_ONLY,
  HOSTILE_BENCH,
  scratchFolder,
  VERSION,
  writeFiles,
} from './bench-folder.ts';

const scratch = scratchFolder();
const inScratch = (name: string) => path.join(scratch.path, name);
const FIRST = 'samples/first-bench';
const FOURTEEN = 'samples/fourteen-devices';
/** Files of subjects that a bench may not have: without a row they are not written. */
const OPTIONAL = [
  'sums',
  'log-reductions',
  'filter-life',
  'spikes',
  'drain-regions',
  'drain-regions-under-sink',
  'drain-regions-countertop',
  'told-apart-groups',
  'claims',
  'minerals',
  'idle-rise',
  'panel',
  'costs',
  'cost-over-time',
  'drain-by-pours-a-day',
];
const PARTS = [
  'reductions',
  'sums',
  'log-reductions',
  'filter-life',
  'spikes',
  'water-use',
  'water-curve',
  'drain-by-pours-a-day',
  'break-even',
  'drain-regions',
  'drain-regions-under-sink',
  'drain-regions-countertop',
  'pours',
  'compare',
  'told-apart-groups',
  'claims',
  'minerals',
  'idle-rise',
  'panel',
  'costs',
  'cost-over-time',
];
const all = new Map<string, ReadonlyMap<string, string>>();

const notesOn = (name: string): ReadonlyMap<string, string> => {
  const files = all.get(name);
  if (files === undefined) throw new Error(`no notes on ${name}`);
  return files;
};
const pageOf = (name: string, page = 'index.md') => notesOn(name).get(page) ?? '';
const headingsOf = (text: string): string[] =>
  [...text.matchAll(/^#+ (.*)$/gm)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N} -]/gu, '')
      .replaceAll(' ', '-'),
  );
const NAMES = [FIRST, FOURTEEN, 'hostile', 'devices only'];

beforeAll(async () => {
  writeFiles(inScratch('hostile'), HOSTILE_BENCH);
  writeFiles(inScratch('devices only'), DEVICES_ONLY);
  for (const name of NAMES) {
    const folder = name.startsWith('samples') ? name : inScratch(name);
    all.set(name, await notes(readBench(folder), { version: VERSION }));
  }
}, 120_000);

afterAll(() => scratch.remove());

describe('the folder of notes', () => {
  it.each(NAMES)('of %s holds the notes, a page for each device, tables and data', (name) => {
    const files = notesOn(name);
    const folder = name.startsWith('samples') ? name : inScratch(name);
    const devices = readBench(folder).tables.devices.length;
    const below = (prefix: string) => [...files.keys()].filter((file) => file.startsWith(prefix));
    expect(below('devices/')).toHaveLength(devices);
    const named = (part: string) => !OPTIONAL.includes(part) || files.has(`data/${part}.json`);
    const parts = PARTS.filter(named);
    expect(below('tables/')).toEqual(parts.map((part) => `tables/${part}.csv`));
    expect(below('data/')).toEqual(
      [...parts, 'findings', 'notes'].map((part) => `data/${part}.json`),
    );
    for (const part of parts.filter((each) => OPTIONAL.includes(each))) {
      const { rows } = JSON.parse(files.get(`data/${part}.json`) ?? '') as { rows: unknown[] };
      expect(rows.length, part).toBeGreaterThan(0);
    }
  });

  it.each(NAMES)('of %s has the same bytes twice', async (name) => {
    const folder = name.startsWith('samples') ? name : inScratch(name);
    const again = await notes(readBench(folder), { version: VERSION });
    expect([...again]).toEqual([...notesOn(name)]);
  });

  it.each(NAMES)('of %s holds data that fit their schemas', (name) => {
    for (const [file, text] of notesOn(name)) {
      if (!file.startsWith('data/')) continue;
      const data = JSON.parse(text) as { schema: SchemaName };
      expect(() => envelopeSchema(data.schema).parse(data), file).not.toThrow();
    }
  });

  it.each(NAMES)('of %s has links and pictures that lead to a file or a heading', (name) => {
    const files = notesOn(name);
    for (const [file, text] of files) {
      if (!file.endsWith('.md')) continue;
      const targets = [...text.matchAll(/(?<!\\)\]\(([^)]*)\)/g)].map(([, target = '']) => target);
      expect(targets.length, file).toBeGreaterThan(0);
      for (const target of targets) {
        const [page = '', heading] = target.split('#');
        const full = page === '' ? file : path.posix.join(path.posix.dirname(file), page);
        expect(files.has(full), target).toBe(true);
        if (heading !== undefined) expect(headingsOf(files.get(full) ?? '')).toContain(heading);
      }
    }
  });

  it.each([FIRST, FOURTEEN])('of %s shows each chart once, with a text alternative', (name) => {
    const charts = [...notesOn(name).keys()].filter((file) => file.startsWith('charts/'));
    const shown = [...pageOf(name).matchAll(/!\[(.*)\]\(([^)]*)\)/g)];
    expect(charts.length).toBeGreaterThanOrEqual(5);
    expect(shown.map(([, , target]) => target).sort()).toEqual([...charts].sort());
    for (const [, alternative = ''] of shown) {
      expect((alternative.match(/\d+/g) ?? []).length).toBeGreaterThanOrEqual(2);
      expect(alternative).toMatch(/^Chart\. /);
    }
    for (const chart of charts) {
      const svg = notesOn(name).get(chart) ?? '';
      expect(svg).toContain('<title>');
      expect(svg).toContain('<desc>');
    }
  });
});

describe('data beside the notes', () => {
  const commands: readonly (readonly [string, (call: Call) => Promise<CommandResult>, object])[] = [
    ['reductions', runReductions, {}],
    ['water-use', runWaterUse, {}],
    ['water-curve', runWaterUse, { curve: true }],
    [
      'drain-by-pours-a-day',
      runWaterUse,
      {
        curve: true,
        pours: ['250 ml'],
        poursPerDay: ['1', '2', '4', '8', '16'],
        randomPours: true,
      },
    ],
    ['break-even', runWaterUse, { breakEven: true }],
    ['pours', runPours, {}],
    ['compare', runCompare, {}],
    ['drain-regions', runWaterUse, { regions: true }],
    ['told-apart-groups', runCompare, { groups: true }],
    ['minerals', runMinerals, {}],
    ['costs', runCosts, {}],
    ['findings', runCheck, {}],
  ];

  it.each(commands)('%s are the bytes that the command prints', async (name, command, options) => {
    const { outcome } = await command(callOf([FIRST], options));
    if (outcome === null) throw new Error('no outcome');
    const json = await render(outcome, 'json', { width: 80, version: VERSION });
    expect(notesOn(FIRST).get(`data/${name}.json`)).toBe(json);
    const csv = await render(outcome, 'csv', { width: 80, version: VERSION });
    const table = notesOn(FIRST).get(`tables/${name}.csv`);
    if (table !== undefined) expect(table).toBe(csv);
  });

  it('under a filter hold fewer rows and no other figure', async () => {
    const filters = { devices: ['tankless-a', 'pitcher-a'], scenarios: ['family'] };
    const files = await notes(readBench(FOURTEEN), { version: VERSION, ...filters });
    const rows = (from: ReadonlyMap<string, string>, file: string): string[] =>
      (JSON.parse(from.get(file) ?? '{}') as { rows: unknown[] }).rows.map((row) =>
        JSON.stringify(row),
      );
    for (const file of ['data/reductions.json', 'data/water-use.json', 'data/compare.json']) {
      const whole = new Set(rows(notesOn(FOURTEEN), file));
      const part = rows(files, file);
      expect(part.length).toBeGreaterThan(0);
      expect(part.length).toBeLessThan(whole.size);
      expect(part.every((row) => whole.has(row))).toBe(true);
    }
    expect([...files.keys()].filter((file) => file.startsWith('devices/'))).toEqual([
      'devices/tankless-a.md',
      'devices/pitcher-a.md',
    ]);
    expect(files.get('index.md')).toContain('These notes are limited to');
    expect(files.get('index.md')).toContain('Shown are 2 of the 14 devices of the bench');
    expect(files.get('index.md')).not.toContain('Tankless B');
    const { outcome } = await runReductions(callOf([FOURTEEN], { devices: filters.devices }));
    if (outcome === null) throw new Error('no outcome');
    const json = await render(outcome, 'json', { width: 80, version: VERSION });
    expect(files.get('data/reductions.json')).toBe(json);
  });
});

describe('names that try to become markup or a formula', () => {
  it('stay text on every page', () => {
    for (const [file, text] of notesOn('hostile')) {
      if (!file.endsWith('.md')) continue;
      expect(text, file).not.toMatch(/<(script|img|b|i|u|topic)\b/i);
      expect(text, file).not.toMatch(/(?<!\\)\]\((javascript|y\))/);
      for (const block of text.split('\n\n')) {
        const lines = block.split('\n').filter((line) => line.startsWith('|'));
        const cells = lines.map((line) => line.match(/(?<!\\)\|/g)?.length);
        expect(new Set(cells).size, block).toBeLessThanOrEqual(1);
      }
    }
    expect(pageOf('hostile')).toContain('&lt;script&gt;alert(1)&lt;/script&gt;\\|\\`x\\`');
  });

  it('stay text in the charts', () => {
    const charts = [...notesOn('hostile')].filter(([file]) => file.startsWith('charts/'));
    expect(charts.length).toBeGreaterThan(0);
    for (const [, svg] of charts) {
      expect(svg).not.toMatch(/<script|onerror=y>|<b>/i);
    }
    expect(charts.some(([, svg]) => svg.includes('&lt;script&gt;'))).toBe(true);
  });

  it('are no formulas in the tables', () => {
    const tables = [...notesOn('hostile')].filter(([file]) => file.startsWith('tables/'));
    for (const [file, text] of tables) {
      expect(text, file).not.toMatch(/(^|,|\n)"?[=@](cmd|sum|HYPERLINK)/);
    }
    expect(tables.some(([, text]) => text.includes("'=cmd()"))).toBe(true);
  });

  it('make no path outside the folder, and no two alike', () => {
    const files = [...notesOn('hostile').keys()];
    for (const file of files)
      expect(file).toMatch(/^[a-z0-9-]+(\/[a-z0-9-]+)?\.(md|csv|json|svg)$/);
    expect(new Set(files).size).toBe(files.length);
    expect(files.filter((file) => file.startsWith('devices/'))).toEqual([
      'devices/cmd.md',
      'devices/ta-nk-er.md',
      'devices/tank-er.md',
    ]);
  });

  it('tell devices of one name apart by their key', () => {
    expect(pageOf('hostile')).toContain('Same name \\[TANK-ER\\]');
  });
});

describe('what the notes say', () => {
  it('a bench with devices only is not tested in any way', () => {
    const text = pageOf('devices only');
    for (const said of [
      'No reduction was tested.',
      'No edition is stated.',
      'No water was sampled: reductions are not tested.',
      'Water to drain: one; without a production run that counts the drain is not known, which is not zero',
      'Nothing is logged on these, so they are not tested: flow, drain while producing, ',
      'Reductions: no device has a product sample, so nothing is shown of any analyte.',
      'Whether interests exist is not stated for 2 devices.',
      'The bench holds no general disclosure.',
    ]) {
      expect(text).toContain(said);
    }
    expect([...notesOn('devices only').keys()].some((file) => file.endsWith('.svg'))).toBe(false);
  });

  it('a rise stands with feed, product, occasion, blank and the call for a retest', () => {
    const text = pageOf('hostile').split('## Rises and open points')[1] ?? '';
    expect(text).toMatch(/TANK-ER\\], sodium: apparent rise from 18 mg\/L to 41\.3 mg\/L/);
    expect(text).toMatch(/silver: rise from &lt; 0\.2 ug\/L to 6\.4 ug\/L/);
    expect(text).toContain('No blank was tested for it.');
    expect(text).toContain('retest');
  });

  it('a void sample stands with its reason and its replacement, and enters no figure', () => {
    const text = pageOf('hostile').split('## Void samples')[1] ?? '';
    expect(text).toContain('bottle &lt;broke&gt; \\| cap \\`loose\\` 42');
    expect(text).toContain('replaced by p-2');
    expect(pageOf('hostile')).not.toContain('3.3 ug/L');
  });

  it('a tank device carries its caution where its ratio stands, and has no curve', () => {
    const text = pageOf('hostile');
    expect(text).toContain('the ratio holds for the draw size it was measured at');
    expect(text).toContain('drain depends on how full the tank is');
  });

  it('advertised ratios stand beside the measured ones and are called advertised', () => {
    const text = pageOf(FOURTEEN);
    expect(text).toMatch(/\| Tankless A \| 0\.750 \| 0\.921 \|/);
    expect(text).toContain(
      'where the advertised figure lies inside the range, the two are not told apart',
    );
  });

  it('claims stand word for word, each with what the measurements say of it', () => {
    const text = pageOf(FOURTEEN, 'devices/tankless-a.md');
    expect(text).toContain('“Lead down by 98 % or more”');
    expect(text).toMatch(
      /“Lead down by 98 % or more” \(evidence [^)]*\): supported; reduced by at least/,
    );
    const index = pageOf(FOURTEEN);
    expect(index).toMatch(
      /\| Pitcher A \| “Cuts lead by 99 % [^|]*” \| [^|]* \| \*\*contradicted\*\* \|/,
    );
    expect(index).toContain('is no certification, and says nothing of other specimens');
  });

  it.each([FIRST, FOURTEEN])('of %s never praises, promises or speaks of itself', (name) => {
    for (const [file, text] of notesOn(name)) {
      if (!file.endsWith('.md')) continue;
      // Quotations are the bench's own words.
      const own = text.replace(/“[^”]*”/g, '');
      expect(own, file).not.toMatch(
        /\b(best|worst|safe|pure|eliminat\w*|remov(es|ed)|I|we|our|my|excellent|great)\b/,
      );
      expect(own, file).not.toMatch(/\b100(\.0+)? %|!(?!\[)|ranked/);
    }
  });

  it('says where a group of devices ends: relative statements name it', () => {
    expect(pageOf(FOURTEEN)).toMatch(/\d+ of the \d+ reverse-osmosis devices/);
  });
});

describe('writing', () => {
  it('writes the folder with its marker and says so', async () => {
    const folder = inScratch('out-1');
    const result = await run(callOf([FIRST], { folder }));
    expect(result).toMatchObject({ outcome: null, written: [folder], end: 'done' });
    for (const [file, text] of notesOn(FIRST)) {
      expect(readFileSync(path.join(folder, file), 'utf8'), file).toBe(text);
    }
    expect(existsSync(path.join(folder, '.pourbench-notes'))).toBe(true);
    await expect(run(callOf([FIRST], { folder }))).resolves.toMatchObject({ written: [folder] });
  });

  it('refuses a folder with files of others, and keeps them under --force', async () => {
    const folder = inScratch('out-2');
    mkdirSync(folder);
    writeFileSync(path.join(folder, 'mine.txt'), 'mine');
    await expect(run(callOf([FIRST], { folder }))).rejects.toMatchObject({ code: 'output-exists' });
    expect(existsSync(path.join(folder, 'index.md'))).toBe(false);
    await run(callOf([FIRST], { folder, force: true }));
    expect(readFileSync(path.join(folder, 'mine.txt'), 'utf8')).toBe('mine');
    expect(existsSync(path.join(folder, 'index.md'))).toBe(true);
  });

  it('never writes over the bench', async () => {
    const bench = inScratch('hostile');
    await expect(run(callOf([bench], { folder: bench, force: true }))).rejects.toMatchObject({
      code: 'output-exists',
    });
  });

  it('writes nothing when the bench has an error', async () => {
    const bench = inScratch('broken');
    writeFiles(bench, { ...DEVICES_ONLY, 'pours.csv': 'device,run,volume,time\none,1,250,9 s\n' });
    const folder = inScratch('out-3');
    const result = await run(callOf([bench], { folder }));
    expect(result.written).toEqual([]);
    expect(result.findings.map(({ code }) => code)).toContain('unit-missing');
    expect(existsSync(folder)).toBe(false);
  });

  it('asks for a folder and refuses a filter the bench does not know', async () => {
    await expect(run(callOf([FIRST]))).rejects.toMatchObject({ code: 'argument-missing' });
    const folder = inScratch('out-4');
    await expect(run(callOf([FIRST], { folder, devices: ['no-such'] }))).rejects.toMatchObject({
      code: 'filter-unknown',
    });
    expect(existsSync(folder)).toBe(false);
  });
});
