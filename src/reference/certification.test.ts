import { describe, expect, it } from 'vitest';
import { tableAnalytes } from './analyte-table.ts';
import { challengesOf, standardNamed, standardWithoutChallenge } from './certification.ts';
import { CERTIFICATION_ROWS } from './tables/certification.ts';
import { waterEfficiencyFigures } from './water-efficiency.ts';

const keys = new Set(tableAnalytes().map(({ key }) => key));
const all = Object.keys(CERTIFICATION_ROWS).flatMap((standard) =>
  [...keys].flatMap((key) => challengesOf(standard, key).filter((row) => row.contaminant === key)),
);

describe('the table of certification challenges', () => {
  it('names only analytes of the tables, and every row is found under its own', () => {
    const rows = Object.values(CERTIFICATION_ROWS).flat();
    expect(rows.map(([key]) => key).filter((key) => !keys.has(key))).toEqual([]);
    expect(all).toHaveLength(rows.length);
  });

  it('says of every row how sure it is and how it was verified', () => {
    for (const row of all) {
      expect(['high', 'medium', 'low']).toContain(row.confidence);
      expect(row.verified).toMatch(/^(seen: |from memory)/);
      expect(row.source).toContain(row.standard);
    }
  });

  it('lets the product hold less than the challenge', () => {
    for (const row of all) {
      if (row.maxProduct === null || row.challengeLow === null) continue;
      expect(row.maxProduct, `${row.standard} ${row.contaminant}`).toBeLessThan(row.challengeLow);
    }
  });

  it('agrees with itself where a row states a product limit and a percentage', () => {
    const both = all.filter(
      (row) => row.minReduction !== null && row.maxProduct !== null && row.challengeLow !== null,
    );
    expect(both.length).toBeGreaterThan(0);
    for (const { challengeLow, maxProduct, minReduction, contaminant } of both) {
      const reached = 1 - (maxProduct ?? 0) / (challengeLow ?? 1);
      // A limit of three digits carries half a per mille.
      expect(Math.abs(reached - (minReduction ?? 0)), contaminant).toBeLessThan(0.002);
    }
  });

  it('is in the canonical unit: 0.15 mg/L of lead are 150 ug/L', () => {
    expect(challengesOf('NSF/ANSI 53', 'lead')).toMatchObject([
      { challengeLow: 150, maxProduct: 10, unit: 'ug/L', isSuperseded: true },
      { challengeLow: 150, maxProduct: 5, unit: 'ug/L', isSuperseded: false },
    ]);
    expect(challengesOf('NSF/ANSI 53', 'asbestos')).toMatchObject([
      { challengeLow: 10, challengeHigh: 100, minReduction: 0.99, maxProduct: null },
    ]);
  });

  it('finds the sum under which nitrate is challenged', () => {
    expect(challengesOf('NSF/ANSI 58', 'nitrate')).toMatchObject([
      { contaminant: 'nitrate-nitrite', challengeLow: 30, maxProduct: 10 },
    ]);
  });

  it('says why a figure does not convert: colonies are no most probable number', () => {
    const [row] = challengesOf('NSF P231', 'total-coliform');
    expect(row).toMatchObject({ challengeLow: null, minReduction: 0.999999 });
    expect(row?.notConverted).toContain('CFU/100mL');
  });

  it('holds nothing for an analyte no standard names', () => {
    expect(challengesOf(null, 'silica')).toEqual([]);
    expect(challengesOf('NSF/ANSI 42', 'lead')).toEqual([]);
  });
});

describe('the name of a standard', () => {
  it.each([
    ['NSF/ANSI 53', 'NSF/ANSI 53'],
    ['NSF/ANSI/CAN 58-2022', 'NSF/ANSI 58'],
    ['certified to nsf 401', 'NSF/ANSI 401'],
    ['NSF P231', 'NSF P231'],
    ['ASSE 1086', 'ASSE 1086'],
    ['our own test', null],
    ['NSF', null],
    ['NSF/ANSI 99', null],
    ['', null],
  ])('%s is read as %s', (text, standard) => {
    expect(standardNamed(text)).toBe(standard);
  });

  it('without reduction limits says what it adds', () => {
    expect(standardWithoutChallenge('ASSE 1086')).toContain('water efficiency');
    expect(standardWithoutChallenge('NSF/ANSI 58')).toBeNull();
  });
});

describe('the table of water efficiency', () => {
  it('holds the test conditions of a standard', () => {
    const [pressure] = waterEfficiencyFigures('test condition', 'NSF/ANSI 58');
    expect(pressure).toMatchObject({ metric: 'inlet pressure', value: 50, unit: 'psi' });
  });

  it('keeps efficiency and reject ratio together: e = 1/(1 + r), 2.3 is 30.3 %', () => {
    const ratios = waterEfficiencyFigures('threshold').filter(
      ({ unit }) => unit === 'reject:product',
    );
    expect(ratios).toHaveLength(2);
    for (const { value } of ratios) expect(1 / (1 + (value ?? 0))).toBeCloseTo(0.303, 3);
  });

  it('has a source and a mark for every figure', () => {
    for (const topic of ['threshold', 'typical', 'consumption', 'definition', 'saving'] as const) {
      const figures = waterEfficiencyFigures(topic);
      expect(figures.length).toBeGreaterThan(0);
      for (const { source, verified } of figures) {
        expect(source).not.toBe('');
        expect(verified).toMatch(/^(seen: |from memory)/);
      }
    }
  });
});
