import { describe, expect, it } from 'vitest';
import { duplicateVerdict } from '../../../src/analyse/quality/index.ts';
import { benchSettingsSchema } from '../../../src/model/index.ts';
import { APRIL, baseBench, labNumber } from '../../planted-faults/base-bench.ts';
import { readJson } from '../statistics/read-fixture.ts';
import { readCsv } from './read-fixture.ts';

interface Pair {
  readonly id: string;
  readonly x1: number | string;
  readonly x2: number | string;
  readonly RL: number;
  readonly expected: { readonly rule: string; readonly passes: boolean };
}

const { cases } = readJson<{ cases: Pair[] }>('duplicate-cases.json');
const criteria = readCsv<'kind' | 'rule' | 'limit' | 'source' | 'seen_or_memory'>(
  'duplicate-blank-criteria.csv',
);
const { quality } = benchSettingsSchema.parse({ title: 'defaults' });

function interval(result: number | string): { low: number; high: number } {
  if (typeof result === 'number') return { low: result, high: result };
  return { low: 0, high: Number(result.replace('<', '')) };
}

const RULES: Readonly<Record<string, string>> = {
  'RPD<=20': 'percent',
  'absdiff<=RL': 'limit',
  'absdiff bounds': 'limit',
  'not calculable': 'none',
};

describe('USEPA National Functional Guidelines (from memory): duplicates in two stages', () => {
  for (const { id, x1, x2, RL, expected } of cases) {
    it(`derived: ${id}, ${x1} and ${x2} at a limit of ${RL}`, () => {
      const verdict = duplicateVerdict(interval(x1), interval(x2), RL, 20);
      expect(verdict.rule).toBe(RULES[expected.rule]);
      expect(verdict.agrees).toBe(expected.passes);
    });
  }
});

describe('Published relative percent differences of duplicates can be set', () => {
  const percents = criteria.filter(({ rule }) => rule.startsWith('RPD'));

  it('the list holds criteria from 10 to 100 %', () => {
    expect(percents.length).toBeGreaterThanOrEqual(7);
  });

  for (const [at, { kind, limit, source, seen_or_memory }] of percents.entries()) {
    it(`${source} (${seen_or_memory}): ${kind}, ${limit}, case ${at + 1}`, () => {
      const percent = Number.parseFloat(limit);
      // x and x (2 + p) / (2 - p) lie p apart, p as a fraction; both far above the limit.
      const apart = (fraction: number): number => (100 * (2 + fraction)) / (2 - fraction);
      const inside = duplicateVerdict(
        interval(100),
        interval(apart(percent / 100 - 1e-6)),
        1,
        percent,
      );
      const outside = duplicateVerdict(
        interval(100),
        interval(apart(percent / 100 + 1e-6)),
        1,
        percent,
      );
      expect([inside.agrees, outside.agrees]).toEqual([true, false]);
    });
  }

  it('USEPA National Functional Guidelines (from memory): 20 % is the default', () => {
    expect(quality.duplicate_rpd).toBe(20);
  });
});

describe('USEPA National Functional Guidelines, organic data review (from memory): blanks', () => {
  const field = criteria.find(({ kind }) => kind === 'field or trip blank');

  it('five times the blank is the default, as printed in the list', () => {
    expect(field?.limit).toBe('5x / 10x');
    expect(quality.blank_factor).toBe(5);
  });

  /** Codes about a blank that holds so much of an analyte, where the feed of its event holds 10. */
  function codes(analyte: string, blank: string, factor?: number): string[] {
    const bench = baseBench();
    if (factor !== undefined) bench.settings['quality'] = { blank_factor: factor };
    const row = { Analyte: analyte, CAS: '', Units: 'ug/L', MDL: '0.1', RL: '0.5' };
    const add = (sample: string, result: string): void => {
      bench.append(APRIL, { ...row, 'Sample ID': labNumber(sample), Result: result }, 'Result');
    };
    add('a-feed', '10.0');
    add('a-blank', blank);
    return bench.read().findings.flatMap(({ code }) => (code.startsWith('blank') ? code : []));
  }

  it('a result at five times the blank is clear, one below is not', () => {
    expect(codes('Nickel', '2.0')).toEqual(['blank-detection']);
    expect(codes('Nickel', '2.1')).toEqual(['blank-contaminated']);
  });

  it('a common laboratory contaminant counts up to ten times the blank', () => {
    expect(codes('Acetone', '1.0')).toEqual(['blank-detection']);
    expect(codes('Acetone', '1.1')).toEqual(['blank-contaminated']);
  });

  it('the factor can be set, and an empty blank says nothing', () => {
    expect(codes('Nickel', '2.1', 3)).toEqual(['blank-detection']);
    expect(codes('Nickel', '<0.5')).toEqual([]);
  });
});
