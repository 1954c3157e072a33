import { describe, expect, it } from 'vitest';
import { type AnalyteReading, analyteIndex } from './analyte-index.ts';

const index = analyteIndex([]);

/** `nitrate as N via alias`, or the kind of reading with its keys. */
function show(reading: AnalyteReading): string {
  switch (reading.kind) {
    case 'found':
      return [reading.analyte.key, reading.basis, 'via', reading.via].filter(Boolean).join(' ');
    case 'ambiguous':
      return `ambiguous ${reading.candidates.map(({ key }) => key).join(' ')}`;
    case 'conflict':
      return `conflict ${reading.byName.key} ${reading.byCas.key}`;
    case 'unknown':
      return 'unknown';
  }
}

const byName = (name: string) => show(index.resolve(name, null));
const byCas = (cas: string) => show(index.resolve(null, cas));

describe('an analyte by its name', () => {
  it('is found by key, name and alias, whatever case and punctuation', () => {
    expect(byName('lead')).toBe('lead via key');
    expect(byName('LEAD')).toBe('lead via name');
    expect(byName('Lead, Total')).toBe('lead via alias');
    expect(byName(' total_lead ')).toBe('lead via alias');
    expect(byName('Pb')).toBe('lead via alias');
    expect(byName('Arsénico')).toBe('arsenic via alias');
    expect(byName('γ-HCH')).toBe('lindane via alias');
  });

  it('carries the basis its spelling fixes', () => {
    expect(byName('NO3-N')).toBe('nitrate as N via alias');
    expect(byName('Nitrate (as NO3)')).toBe('nitrate as NO3 via alias');
    expect(byName('Silicon')).toBe('silica as Si via alias');
    expect(byName('Nitrate')).toBe('nitrate via name');
  });

  it('is found behind a stated basis that the analyte has, and not behind another', () => {
    expect(byName('Silica, dissolved as SiO2')).toBe('silica as SiO2 via alias');
    expect(byName('Total Hardness (as CaCO3)')).toBe('total-hardness as CaCO3 via alias');
    expect(byName('Chloride as Cl')).toBe('chloride via alias');
    expect(byName('Lead as Pb')).toBe('lead via name');
    expect(byName('Lead as N')).toBe('unknown');
  });

  it('is found for a metal without the fraction', () => {
    expect(byName('Zinc, dissolved')).toBe('zinc via alias');
    expect(byName('Total Recoverable Nickel')).toBe('nickel via alias');
    expect(byName('Nitrogen, dissolved')).toBe('unknown');
  });

  it('is found by a name with another in brackets, where the two agree', () => {
    expect(byName('Perfluorooctanoic acid (PFOA)')).toBe('pfoa via alias');
    expect(byName('Sodium (Na)')).toBe('sodium via alias');
    expect(byName('Conductivity [EC]')).toBe('conductivity via alias');
    expect(byName('Lead (As)')).toBe('unknown');
    expect(byName('Lead (method 200.8)')).toBe('unknown');
  });

  it('is asked about where the name means two things', () => {
    expect(byName('EC')).toBe('ambiguous conductivity e-coli');
    expect(byName('TON')).toBe('ambiguous odor nitrate-nitrite');
    expect(byName('Chlorine')).toBe('ambiguous chlorine-free chlorine-total');
    expect(byName('S')).toBe('ambiguous sulfide sulfate');
    for (const name of ['TC', 'FC', 'TA', 'TH', 'COD', 'SU', 'KH', 'P', 'TCEP']) {
      expect(index.resolve(name, null).kind).toBe('ambiguous');
    }
  });

  it('turns on case where only case tells a symbol from another word', () => {
    expect(byName('Na')).toBe('sodium via alias');
    expect(byName('NA')).toBe('ambiguous sodium');
    expect(byName('Cu')).toBe('copper via alias');
    expect(byName('CU')).toBe('ambiguous copper color-apparent');
    expect(byName('K')).toBe('potassium via alias');
    expect(byName('k')).toBe('unknown');
  });

  it('is told apart where dropping the punctuation would join two substances', () => {
    expect(byName('ClO2')).toBe('chlorine-dioxide via alias');
    expect(byName('ClO2-')).toBe('chlorite via alias');
    expect(byName('ClO2⁻')).toBe('chlorite via alias');
    expect(byName('PFOSA')).toBe('fosa via alias');
    expect(byName('PFOS_A')).toBe('pfos via alias');
    expect(byName('PFOS-A')).toBe('ambiguous pfos fosa');
  });

  it('is not a labelled standard, a spike or a part of it, whatever the CAS number says', () => {
    for (const name of [
      '13C8PFOA',
      'M2-6:2FTS',
      'D3-MEFOSA',
      'L-PFOA',
      'Perfluoro-n-[13C8]octanoic acid',
    ]) {
      expect(show(index.resolve(name, '335-67-1'))).toBe('unknown');
    }
    expect(show(index.resolve('1,4-Dioxane-d8', '123-91-1'))).toBe('unknown');
    expect(show(index.resolve('Ferrous iron', '7439-89-6'))).toBe('unknown');
  });

  it('is unknown for marks of nothing and for text', () => {
    for (const name of ['N/A', '-', '???', 'qwertyuiop']) expect(byName(name)).toBe('unknown');
    expect(show(index.resolve(null, null))).toBe('unknown');
    expect(show(index.resolve('', ''))).toBe('unknown');
  });
});

describe('an analyte by its CAS number', () => {
  it('is found by the number alone', () => {
    expect(byCas('7439-92-1')).toBe('lead via cas');
    expect(byCas('14798-03-9')).toBe('ammonia via cas');
    expect(byCas('7440-38-2')).toBe('arsenic via cas');
  });

  it('is asked about where one number serves several analytes', () => {
    expect(byCas('57-12-5')).toBe('ambiguous cyanide-free cyanide-total');
    expect(byCas('7782-50-5')).toBe('ambiguous chlorine-free chlorine-total');
    expect(byCas('7440-61-1')).toBe('ambiguous uranium uranium-activity');
  });

  it('settles a name with two meanings', () => {
    expect(show(index.resolve('NA', '7440-23-5'))).toBe('sodium via cas');
    expect(show(index.resolve('TCEP', '115-96-8'))).toBe('tcep via cas');
    expect(show(index.resolve('P', '7723-14-0'))).toBe('total-phosphorus via cas');
  });

  it('conflicts with a name that means another analyte', () => {
    expect(show(index.resolve('Lead', '7440-38-2'))).toBe('conflict lead arsenic');
    expect(show(index.resolve('TTHM', '67-66-3'))).toBe('conflict tthm chloroform');
  });

  it('does not conflict with related forms, bases and shared numbers', () => {
    const pairs = [
      ['Ammonia', '14798-03-9', 'ammonia via alias'],
      ['Free chlorine', '7782-50-5', 'chlorine-free via alias'],
      ['Total chlorine', '7782-50-5', 'chlorine-total via alias'],
      ['Uranium activity', '7440-61-1', 'uranium-activity via name'],
      ['PFOS', '45298-90-6', 'pfos via alias'],
      ['Orthophosphate', '7723-14-0', 'orthophosphate via name'],
      ['Arsenic III', '7440-38-2', 'arsenic-iii via alias'],
      ['Nitrate plus nitrite', '14797-55-8', 'nitrate-nitrite via name'],
      ['Hardness', '471-34-1', 'total-hardness via alias'],
    ] as const;
    for (const [name, cas, expected] of pairs)
      expect(show(index.resolve(name, cas))).toBe(expected);
  });

  it('is left aside where it is no number or nobody knows it', () => {
    expect(show(index.resolve('Lead', '7440-38-3'))).toBe('lead via name');
    expect(show(index.resolve('Lead', 'N/A'))).toBe('lead via name');
    expect(show(index.resolve('Lead', '7732-18-5'))).toBe('lead via name');
    expect(byCas('7732-18-5')).toBe('unknown');
  });
});

describe('suggestions for a misspelt name', () => {
  it('are the keys of at most three analytes with the nearest names', () => {
    expect(index.suggest('leed')).toEqual(['lead']);
    expect(index.suggest('Cadmuim')[0]).toBe('cadmium');
    for (const name of ['chloro', 'benzene', 'perfluoro', 'lead']) {
      expect(index.suggest(name).length).toBeLessThanOrEqual(3);
    }
  });

  it('are none for empty text and for text like nothing', () => {
    expect(index.suggest('')).toEqual([]);
    expect(index.suggest('zzzzzzzzzzzz')).toEqual([]);
  });
});

describe('the index', () => {
  it('is built once for the tables alone', () => {
    expect(analyteIndex([])).toBe(index);
    expect(index.problems).toEqual([]);
    expect(index.byKey('lead')?.name).toBe('Lead');
    expect(index.byKey('Lead')).toBeUndefined();
  });
});
