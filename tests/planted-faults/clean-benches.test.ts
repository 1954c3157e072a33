import { describe, expect, it } from 'vitest';
import { readBench } from '../../src/commands/read-bench.ts';
import { CLEAN_BENCHES } from './clean-benches.ts';

describe('a bench without a fault raises nothing above a note', () => {
  it('in ten benches or more, no two alike', () => {
    const prints = CLEAN_BENCHES.map(({ bench }) => bench().read().fingerprint);
    expect(prints.length).toBeGreaterThanOrEqual(10);
    expect(new Set(prints).size).toBe(prints.length);
  });

  for (const { name, bench } of CLEAN_BENCHES) {
    it(name, () => {
      const read = bench().read();
      expect(read.findings.filter(({ level }) => level !== 'note')).toEqual([]);
    });
  }

  it('with results in every bench that has a lab file', () => {
    for (const { bench } of CLEAN_BENCHES) {
      const { results } = bench().read();
      expect(results.length > 0).toBe(results.files.length > 0);
    }
  });

  for (const folder of ['first-bench', 'fourteen-devices']) {
    it(`the sample bench ${folder}`, () => {
      const { findings } = readBench(new URL(`../../samples/${folder}`, import.meta.url).pathname);
      expect(findings.filter(({ level }) => level !== 'note')).toEqual([]);
    });
  }
});
