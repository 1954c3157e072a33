import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { notes } from '../../src/commands/notes.ts';
import { readBench } from '../../src/commands/read-bench.ts';
import type { Bench, NotesRow } from '../../src/model/index.ts';
import { DEVICES_ONLY, HOSTILE_BENCH, scratchFolder, VERSION, writeFiles } from './bench-folder.ts';
import { numbersIn, numberTokens, roundsTo, states, unfoundNumbers } from './number-tokens.ts';

interface Written {
  readonly folder: string;
  readonly bench: Bench;
  readonly files: ReadonlyMap<string, string>;
  readonly index: string;
  readonly rows: readonly NotesRow[];
}

const scratch = scratchFolder();
const written = new Map<string, Written>();

async function write(name: string, folder: string, options = {}): Promise<void> {
  const bench = readBench(folder);
  const files = await notes(bench, { version: VERSION, ...options });
  const data = JSON.parse(files.get('data/notes.json') ?? '{}') as { rows: NotesRow[] };
  const index = files.get('index.md') ?? '';
  written.set(name, { folder, bench, files, index, rows: data.rows });
}

function of(name: string): Written {
  const found = written.get(name);
  if (found === undefined) throw new Error(`no notes on ${name}`);
  return found;
}

const NAMES = ['first-bench', 'fourteen-devices', 'one device', 'hostile', 'devices only'];

beforeAll(async () => {
  for (const [name, files] of [
    ['hostile', HOSTILE_BENCH],
    ['devices only', DEVICES_ONLY],
  ] as const) {
    writeFiles(path.join(scratch.path, name), files);
    await write(name, path.join(scratch.path, name));
  }
  await write('first-bench', 'samples/first-bench');
  await write('fourteen-devices', 'samples/fourteen-devices');
  await write('one device', 'samples/fourteen-devices', { devices: ['tankless-a'] });
}, 120_000);

afterAll(() => scratch.remove());

/** Every number of the data files other than that of the notes. */
function commandNumbers(files: ReadonlyMap<string, string>): Set<number> {
  const numbers = new Set<number>();
  const visit = (value: unknown): void => {
    if (typeof value === 'number') numbers.add(value);
    else if (typeof value === 'object' && value !== null) Object.values(value).forEach(visit);
  };
  for (const [name, text] of files) {
    if (name.startsWith('data/') && name !== 'data/notes.json') visit(JSON.parse(text));
  }
  return numbers;
}

describe('every number of index.md stands in the data beside it', () => {
  it.each(NAMES)('on %s each number is stated by a figure of its own section', (name) => {
    const { index, rows } = of(name);
    expect(numberTokens(index).length).toBeGreaterThan(5);
    expect(unfoundNumbers(index, rows)).toEqual([]);
  });

  it.each(NAMES)('on %s each figure prints its own value and nothing else', (name) => {
    for (const row of of(name).rows) {
      if (row.value === null) continue;
      expect(
        numbersIn(row.text).some((text) => states(row, text)),
        JSON.stringify(row),
      ).toBe(true);
      const together = of(name).rows.filter((other) => other.text === row.text);
      for (const text of numbersIn(row.text)) {
        expect(
          together.some((other) => states(other, text)),
          JSON.stringify(row),
        ).toBe(true);
      }
    }
  });

  it.each(NAMES)('on %s a text without a value is found in the bench or in the data', (name) => {
    const { folder, bench, files, rows } = of(name);
    const sources = [
      ...bench.inputs.map((file) => readFileSync(path.join(folder, file.path), 'utf8')),
      ...[...files].flatMap(([file, text]) =>
        file.startsWith('data/') && file !== 'data/notes.json' ? text : [],
      ),
    ].join('\n');
    const solid = sources.replace(/\s/g, '');
    for (const { value, text } of rows) {
      if (value !== null || numbersIn(text).length === 0) continue;
      const inJson = JSON.stringify(text).slice(1, -1);
      const inCsv = text.replaceAll('"', '""');
      // Notes join a device and its variant, and a place, from parts.
      const parts = text.split(/ \(|\)|\[|\]|:\d/).filter((part) => /\d/.test(part));
      const isFound = [text, inJson, inCsv].some((form) => sources.includes(form));
      const isSolid = solid.includes(text.replace(/\s/g, ''));
      expect(isFound || isSolid || parts.every((part) => sources.includes(part)), text).toBe(true);
    }
  });

  it.each(NAMES)('on %s percentages and drain ratios are figures of the commands', (name) => {
    const { files, rows } = of(name);
    const known = [...commandNumbers(files)];
    for (const { id, value, unit } of rows) {
      // Advertised figures are the maker's, yardsticks are published: no command computes them.
      const isOthers = id.includes('advertised') || id.includes('yardstick');
      if (value === null || (unit !== '%' && unit !== 'L/L') || isOthers) continue;
      const wanted = unit === '%' ? value / 100 : value;
      // The last bits may differ by the multiplication with 100.
      const isKnown = known.some((each) => Math.abs(each - wanted) <= 1e-12 * Math.abs(wanted));
      expect(isKnown, id).toBe(true);
    }
  });

  it('counts devices, analytes, results and files as the bench and the data hold them', () => {
    const { bench, files, rows } = of('fourteen-devices');
    const value = (id: string) => rows.find((row) => row.id === id)?.value;
    const reductions = JSON.parse(files.get('data/reductions.json') ?? '') as {
      rows: { analyte: string; outcome: string }[];
    };
    const tested = reductions.rows.filter((row) => row.outcome !== 'untested');
    expect(value('summary.devices')).toBe(14);
    expect(value('summary.analytes')).toBe(new Set(tested.map((row) => row.analyte)).size);
    expect(value('summary.results')).toBe(bench.results.length);
    expect(value('provenance.inputs')).toBe(bench.inputs.length);
    expect(value('open-points.rises')).toBe(
      reductions.rows.filter((row) => row.outcome === 'rise').length,
    );
  });
});

describe('the rule can be broken', () => {
  it.each([
    ['a count', /This bench holds (14) devices/, '13'],
    ['a bound', /reduced by at least (\d+\.\d) %/, '12.7'],
    ['a feed', /the feed held (\d+\.\d) ug\/L/, '777.7'],
    ['an edition', /Edition (2026)-10/, '2027'],
    ['a ratio', /\| Tankless A \| [\d.]+ \| ([\d.]+) \|/, '0.123'],
    ['a number that is not there', /sample is (void)/, 'void 12345'],
  ])('finds a change of %s', (_, pattern, changed) => {
    const { index, rows } = of('fourteen-devices');
    const match = pattern.exec(index);
    expect(match).not.toBeNull();
    const [whole = '', part = ''] = match ?? [];
    const mutant = index.replace(whole, whole.replace(part, changed));
    expect(unfoundNumbers(mutant, rows)).not.toEqual([]);
  });

  it('finds most changes of a single digit anywhere in the notes', () => {
    const { index, rows } = of('first-bench');
    const places = [...index.matchAll(/(?<![\p{L}\d_.(/-])\d+\.\d+(?![\p{L}\d_])/gu)];
    const found = places.filter(({ 0: text, index: at }) => {
      const changed = `${text.slice(0, -1)}${(Number(text.slice(-1)) + 5) % 10}`;
      const mutant = index.slice(0, at) + changed + index.slice(at + text.length);
      return unfoundNumbers(mutant, rows).length > 0;
    });
    expect(places.length).toBeGreaterThan(40);
    // Some changed figures happen to be another figure of their section.
    expect(found.length / places.length).toBeGreaterThan(0.9);
  });

  it('rounds up, down and to the nearest, and not further', () => {
    expect(roundsTo('74.3', 74.285)).toBe(true);
    expect(roundsTo('74.2', 74.285)).toBe(true);
    expect(roundsTo('74.4', 74.285)).toBe(false);
    expect(roundsTo('3180', 3178.4)).toBe(true);
    expect(roundsTo('3180', 3195)).toBe(false);
    expect(roundsTo('14', 15)).toBe(false);
  });
});
