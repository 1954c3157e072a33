import { describe, expect, it } from 'vitest';
import { challengesOf, waterEfficiencyFigures } from '../../../src/reference/index.ts';

const current = (standard: string, analyte: string) =>
  challengesOf(standard, analyte).filter(({ isSuperseded }) => !isSuperseded);

describe('figures of certification standards, as read in secondary sources', () => {
  it.each(['NSF/ANSI 53', 'NSF/ANSI 58'])(
    'trade-press notes (February 2020) on %s: lead challenge 150 ppb, limit moved from 10 to 5 ppb',
    (standard) => {
      // Exact: the notes print whole parts per billion, which are ug/L in water.
      expect(challengesOf(standard, 'lead').map(({ maxProduct }) => maxProduct)).toEqual([10, 5]);
      expect(current(standard, 'lead')).toMatchObject([{ challengeLow: 150, maxProduct: 5 }]);
    },
  );

  it('literature statement of NSF/ANSI 58: 27 mg/L nitrate plus 3 mg/L nitrite, both as N', () => {
    // Exact: 27 + 3.
    expect(current('NSF/ANSI 58', 'nitrate-nitrite')).toMatchObject([{ challengeLow: 30 }]);
    expect(current('NSF/ANSI 58', 'nitrite')).toMatchObject([{ challengeLow: 3 }]);
  });

  it('literature statement of NSF/ANSI 58: pentavalent arsenic at 0.30 and 0.050 mg/L', () => {
    // Exact: printed values in mg/L, kept in ug/L.
    expect(current('NSF/ANSI 58', 'arsenic-v').map(({ challengeLow }) => challengeLow)).toEqual([
      300, 50,
    ]);
  });

  it('trade press (2019) on NSF/ANSI 53 and 58: PFOA plus PFOS at most 70 ng/L', () => {
    for (const standard of ['NSF/ANSI 53', 'NSF/ANSI 58']) {
      // Exact: a printed whole number.
      expect(current(standard, 'pfoa-pfos-sum')).toMatchObject([{ maxProduct: 70 }]);
    }
  });

  it('secondary technical note on NSF/ANSI 53: 99.95 % of cysts, 99 % of asbestos, chloroform 300 to 15 ug/L', () => {
    // Exact: printed percentages and whole micrograms.
    expect(current('NSF/ANSI 53', 'cysts')).toMatchObject([{ minReduction: 0.9995 }]);
    expect(current('NSF/ANSI 53', 'asbestos')).toMatchObject([{ minReduction: 0.99 }]);
    expect(current('NSF/ANSI 53', 'chloroform')).toMatchObject([
      { challengeLow: 300, maxProduct: 15, minReduction: 0.95 },
    ]);
  });

  it('explanation of NSF/ANSI 401 in a trade blog: atenolol from 200 to 30 ng/L', () => {
    // Exact: printed whole nanograms.
    expect(current('NSF/ANSI 401', 'atenolol')).toMatchObject([
      { challengeLow: 200, maxProduct: 30 },
    ]);
  });

  it('trade-journal column on NSF/ANSI 58: inlet pressure 50 psi, seven days', () => {
    const conditions = waterEfficiencyFigures('test condition', 'NSF/ANSI 58');
    // Exact: printed whole numbers.
    expect(conditions.find(({ metric }) => metric === 'inlet pressure')?.value).toBe(50);
    expect(conditions.find(({ metric }) => metric === 'duration')?.value).toBe(7);
  });

  it('US EPA WaterSense draft (2022): reject ratio of at most 2.3, an efficiency of at least 30.3 %', () => {
    const [draft] = waterEfficiencyFigures('threshold', 'US EPA WaterSense draft');
    expect(draft).toMatchObject({ comparator: '<=', value: 2.3 });
    // Half a unit of the last digit printed.
    expect(Math.abs(100 / (1 + (draft?.value ?? 0)) - 30.3)).toBeLessThan(0.05);
  });
});
