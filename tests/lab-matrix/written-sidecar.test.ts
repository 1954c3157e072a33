import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { run } from '../../src/commands/check.ts';
import type { Call } from '../../src/commands/command.ts';
import { readBench } from '../../src/commands/read-bench.ts';

const SAMPLE = fileURLToPath(new URL('../../samples/first-bench', import.meta.url));
const made: string[] = [];

function benchWith(edit: (lab: string) => string): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'sidecar-'));
  made.push(folder);
  cpSync(SAMPLE, folder, { recursive: true });
  const lab = path.join(folder, 'lab', 'results.csv');
  writeFileSync(lab, edit(readFileSync(lab, 'utf8')));
  return folder;
}

async function check(folder: string, writeLayouts: boolean) {
  const options = { writeLayouts, against: null } as unknown as Call['options'];
  return run({ args: [folder], options, io: { progress: async () => {} }, version: '0' });
}

const errors = (folder: string) =>
  readBench(folder)
    .findings.filter(({ level }) => level === 'error')
    .map(({ code }) => code);

afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

describe('check --write-layouts', () => {
  it('writes a sidecar that reads the bench as before and is an input of it', async () => {
    const folder = benchWith((lab) => lab);
    const before = readBench(folder);
    const { written } = await check(folder, true);
    expect(written.map((file) => path.basename(file))).toEqual(['results.layout.json']);
    const after = readBench(folder);
    expect(errors(folder)).toEqual([]);
    expect(after.results.distinct).toEqual(before.results.distinct);
    expect(after.inputs.map((input) => input.path)).toContain('lab/results.layout.json');
    expect(after.fingerprint).not.toBe(before.fingerprint);
  });

  it('writes nothing without the option, and never over a sidecar that is there', async () => {
    const folder = benchWith((lab) => lab);
    await check(folder, false);
    expect(readdirSync(path.join(folder, 'lab'))).toEqual(['results.csv']);
    const sidecar = path.join(folder, 'lab', 'results.layout.json');
    writeFileSync(sidecar, '{ "layout": "long" }');
    expect((await check(folder, true)).written).toEqual([]);
    expect(readFileSync(sidecar, 'utf8')).toBe('{ "layout": "long" }');
    expect(errors(folder)).toContain('key-missing');
  });

  it('writes one while the order of dates is open, and the answer in it settles the question', async () => {
    const folder = benchWith((lab) => lab.replaceAll('2026-06-08', '06/08/2026'));
    expect(errors(folder)).toEqual(['date-order-unclear']);
    const { written } = await check(folder, true);
    const [sidecar = ''] = written;
    const text = readFileSync(sidecar, 'utf8');
    expect(text).toContain('"date_order": null');
    expect(errors(folder)).toEqual(['date-order-unclear']);
    writeFileSync(sidecar, text.replace('"date_order": null', '"date_order": "month-first"'));
    expect(errors(folder)).toEqual([]);
    expect([...(readBench(folder).results.files[0]?.collected.values() ?? [])]).toContain(
      '2026-06-08',
    );
  });

  it('shows a ready sidecar for a file that is not certain', async () => {
    const folder = benchWith((lab) => lab.replace('Unit,', 'Whatever,'));
    const { outcome } = await check(folder, false);
    expect(outcome?.views).toHaveLength(2);
    const proposed = outcome?.settings['proposed_layouts'] as Record<string, object>;
    expect(Object.keys(proposed)).toEqual(['lab/results.csv']);
    expect(errors(folder)).toContain('layout-role-missing');
  });

  it('refuses a file whose header changed since', async () => {
    const folder = benchWith((lab) => lab);
    await check(folder, true);
    const lab = path.join(folder, 'lab', 'results.csv');
    writeFileSync(lab, readFileSync(lab, 'utf8').replace('Analyte', 'Parameter'));
    expect(errors(folder)).toContain('layout-header-changed');
  });

  it('warns about a sidecar without a lab file', () => {
    const folder = benchWith((lab) => lab);
    writeFileSync(path.join(folder, 'lab', 'other.layout.json'), '{}');
    const codes = readBench(folder).findings.map(({ code }) => code);
    expect(codes).toContain('layout-unused');
  });
});
