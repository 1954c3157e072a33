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

/** Calls other-feed with a file of these lines; null: with none. */
function call(lines: readonly string[] | null, ...more: string[]) {
  const file = path.join(folder, 'town.csv');
  if (lines !== null) writeFileSync(file, `${lines.join('\n')}\n`);
  const feed = lines === null ? [] : ['--feed', file];
  return runProgram(['other-feed', BENCH, ...feed, ...more], { cwd: folder });
}

describe('a feed file that cannot be used ends with 2, no data and one clear error', () => {
  it.each<[string, readonly string[] | null, string[], RegExp]>([
    ['none named', null, [], /^error argument-missing: .*--feed/],
    ['not there', null, ['--feed', 'none.csv'], /^none\.csv: error file-unreadable: /],
    ['unknown layout', ['one,two', '1,2'], [], /^town\.csv:1: error layout-unclear: /],
    ['empty', [], [], /^town\.csv(?::1)?: error (?:file-empty|layout-unclear): /],
    [
      'unknown unit',
      ['analyte,result,unit', 'lead,2,blobs/L'],
      [],
      /^town\.csv:2:3: error unit-unknown: "blobs\/L"/,
    ],
    [
      'nothing in common',
      ['analyte,result,unit', 'benzene,2,ug/L'],
      [],
      /^town\.csv: error feed-not-common: /,
    ],
    [
      'several waters',
      ['Sample,Analyte,Result,Units', 'one,Lead,2,ug/L', 'two,Lead,3,ug/L'],
      [],
      /^town\.csv: error feed-sample-unclear: the file holds 2 samples: "one", "two"/,
    ],
    [
      'a volume that is none',
      ['analyte,result,unit', 'lead,2,ug/L'],
      ['--throughput', '3 apples'],
      /^error unit-unknown: --throughput: /,
    ],
  ])('%s', async (_what, lines, more, message) => {
    const { code, stdout, stderr } = await call(lines, ...more);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(message);
    expect(stderr.match(/ error |^error /gm)).toHaveLength(1);
    expect(stderr).toContain('\n  remedy: ');
  });
});
