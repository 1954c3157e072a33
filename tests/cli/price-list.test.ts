import { rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt, ROOT, runProgram, temporaryFolder } from './built-program.ts';

let folder: string;

beforeAll(() => {
  ensureBuilt();
  folder = temporaryFolder();
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const BENCH = path.join(ROOT, 'samples', 'first-bench');
const HEADER = 'lab,package,price,analyte,limit';

function call(lines: readonly string[], ...more: string[]) {
  const file = path.join(folder, 'list.csv');
  writeFileSync(file, lines.map((line) => `${line}\n`).join(''));
  return runProgram(['next-tests', BENCH, '--prices', file, '--quiet', ...more], { cwd: folder });
}

describe('a price list that cannot be used ends with 2, no data and one line for each problem', () => {
  it('all of the file at once, each with its place', async () => {
    const { code, stdout, stderr } = await call([
      HEADER,
      'one,a,38 USD,leed,0.5 ug/L',
      'one,b,38,lead,0.5 ug/L',
      'one,c,5 EUR,lead,0.5',
    ]);
    const lines = stderr.split('\n').filter((line) => /^\S+: error /.test(line));
    expect(lines.map((line) => line.split(':').slice(0, 4).join(':'))).toEqual([
      'list.csv:2:4: error analyte-unknown',
      'list.csv:3:3: error currency-missing',
      'list.csv:4:5: error unit-missing',
    ]);
    expect([code, stdout]).toEqual([2, '']);
  });

  it('a file without lines, or without a column', async () => {
    expect((await call([])).stderr).toMatch(/^list\.csv: error file-empty: /);
    expect((await call(['lab,package,price,analyte'])).stderr).toMatch(
      /^list\.csv:1: error column-missing: /,
    );
  });
});

describe('options of next-tests', () => {
  it('that belong to a plan or to packages ask for them, and never for both', async () => {
    const list = [HEADER, 'one,a,38 USD,lead,0.5 ug/L'];
    const schemaOf = async (...more: string[]) =>
      JSON.parse((await call(list, '--format', 'json', ...more)).stdout).schema as string;
    expect(await schemaOf()).toBe('next-tests/1');
    expect(await schemaOf('--power', '90 %')).toBe('test-plan/1');
    expect(await schemaOf('--events', '2')).toBe('test-packages/1');
    const clash = await call(list, '--replicates', '2', '--power', '90 %');
    expect(clash.stderr).toMatch(/^error option-clash: /);
    expect(clash.code).toBe(2);
  });
});
