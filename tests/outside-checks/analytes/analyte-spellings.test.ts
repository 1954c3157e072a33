import { describe, expect, it } from 'vitest';
import { analyteIndex } from '../../../src/reference/index.ts';
import { readCsv } from './read-fixture.ts';

const ROWS = readCsv<'spelling' | 'key' | 'cas' | 'part_or_basis' | 'excluded' | 'source'>(
  'analyte-spellings.csv',
);

/**
 * Spellings whose likely analyte in the collection is wrong on the face of the name: an oxidation
 * state, free cyanide, a kind of alkalinity, a count at 22 C, a sum with its number of members, an
 * index, a gas.
 */
const CORRECTED: Readonly<Record<string, string>> = {
  'Alkalinity;_Phenolphthalein_(as_CaCO3)': 'phenolphthalein-alkalinity',
  'P-Alkalinity': 'phenolphthalein-alkalinity',
  'Alkalinity, Bicarbonate as CaCO3': 'bicarbonate',
  'Alkalinity, Carbonate as CaCO3': 'carbonate',
  'Arsenic (III)': 'arsenic-iii',
  'Arsenic (V)': 'arsenic-v',
  'Cyanide, Free': 'cyanide-free',
  'Free Cyanide': 'cyanide-free',
  'Bact. aér. revivifiables à 22°-68h': 'colony-count-22c',
  'Colony count 22C': 'colony-count-22c',
  'Colony Counts After 3 Days At 22°c': 'colony-count-22c',
  'Koloniezahl 22 °C': 'colony-count-22c',
  'TVC 22C': 'colony-count-22c',
  Corrosivity: 'corrosivity',
  'Total Microcystins': 'microcystins-total',
  H2S: 'hydrogen-sulfide',
  'Hydrogen sulfide': 'hydrogen-sulfide',
  'SOMME DE 20 PFAS': 'pfas-sum-eu20',
  'Somme de 20 substances perfluoroalkylées (PFAS)': 'pfas-sum-eu20',
  SPFAS: 'pfas-sum-eu20',
  'PFAS, Sum (20)': 'pfas-sum-eu20',
  'PFAS Hazard Index': 'pfas-hazard-index',
  'Sum of 25 PFAS': 'pfas-sum-canada25',
};

const index = analyteIndex([]);
const keyed = ROWS.filter(({ key, excluded }) => key !== '' && excluded === '');

describe('1569 analyte spellings collected from public water-data exports and usage (2026)', () => {
  it('never resolve to another analyte than the likely one of the collection', () => {
    const counts = { found: 0, corrected: 0, ambiguous: 0, unknown: 0, conflict: 0 };
    for (const { spelling, key } of keyed) {
      const reading = index.resolve(spelling, null);
      if (reading.kind !== 'found') {
        counts[reading.kind] += 1;
        if (reading.kind === 'ambiguous' && spelling in CORRECTED) throw new Error(spelling);
        continue;
      }
      const wanted = CORRECTED[spelling];
      counts[wanted === undefined ? 'found' : 'corrected'] += 1;
      expect([spelling, reading.analyte.key]).toEqual([spelling, wanted ?? key]);
    }
    // The rest is unknown on purpose: the unit or three columns stand in the name, or it is a part
    // of the analyte.
    expect(counts).toEqual({
      found: 1110,
      corrected: 23,
      ambiguous: 27,
      unknown: 368,
      conflict: 0,
    });
  });

  it('name the likely analyte among the candidates wherever they are asked about', () => {
    for (const { spelling, key } of keyed) {
      const reading = index.resolve(spelling, null);
      if (reading.kind !== 'ambiguous') continue;
      expect([spelling, reading.candidates.map((analyte) => analyte.key)]).toEqual([
        spelling,
        expect.arrayContaining([key]),
      ]);
    }
  });

  it('do not conflict with the CAS number of the likely analyte', () => {
    for (const { spelling, cas } of keyed) {
      if (cas === '' || spelling in CORRECTED) continue;
      expect([spelling, index.resolve(spelling, cas).kind]).not.toEqual([spelling, 'conflict']);
    }
  });

  it('do not match where the collection says it is not the analyte, even with its CAS number', () => {
    const excluded = ROWS.filter((row) => row.excluded === 'yes');
    expect(excluded.length).toBe(9);
    for (const { spelling, cas } of excluded) {
      expect([spelling, index.resolve(spelling, cas).kind]).toEqual([spelling, 'unknown']);
      expect([spelling, index.resolve(spelling, null).kind]).toEqual([spelling, 'unknown']);
    }
  });

  it('fix a basis only where the spelling states it', () => {
    for (const { spelling, part_or_basis: part } of keyed) {
      const reading = index.resolve(spelling, null);
      if (reading.kind !== 'found' || reading.basis === null) continue;
      const species = reading.basis.replace(/^as /, '');
      const words = `${spelling} ${part}`.toLowerCase();
      const stated =
        words.includes(species.toLowerCase()) ||
        // Silicon names the element; the two alkalinities are titrated as CaCO3 by definition.
        /silicon|^si /i.test(`${spelling} `) ||
        /alkalinity|hardness|nitrogen|kjeldahl/i.test(spelling);
      expect([spelling, reading.basis, stated]).toEqual([spelling, reading.basis, true]);
    }
  });
});
