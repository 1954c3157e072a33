import { describe, expect, it } from 'vitest';
import { analyteIndex } from './analyte-index.ts';
import { lookUp } from './lookup.ts';

const index = analyteIndex([]);

describe('looking up an analyte', () => {
  it('finds it by name, alias, key and CAS number', () => {
    for (const text of ['Lead', 'Pb', 'lead', '7439-92-1', 'Blei']) {
      expect(lookUp(text, index).found.map(({ analyte }) => analyte.key)).toEqual(['lead']);
    }
  });

  it('shows bases with the factor to the canonical one', () => {
    const nitrate = lookUp('nitrate', index).found[0];
    expect(nitrate?.mustStateBasis).toBe(true);
    expect(nitrate?.bases.map(({ basis, toCanonical }) => [basis, toCanonical])).toEqual([
      ['as N', 1],
      ['as NO3', 14007 / 62005],
    ]);
  });

  it('shows related CAS numbers and levels', () => {
    const ammonia = lookUp('ammonia', index).found[0];
    expect(ammonia?.relatedCas.map(({ cas }) => cas)).toContain('14798-03-9');
    expect(lookUp('barium', index).found[0]?.levels.length).toBeGreaterThanOrEqual(4);
  });

  it('shows every meaning of a name with several', () => {
    const lookup = lookUp('EC', index);
    expect(lookup.found.map(({ analyte }) => analyte.key)).toEqual(['conductivity', 'e-coli']);
    expect(lookUp('COD', index).otherMeaning).toBe('chemical oxygen demand');
  });

  it('suggests names that are near or hold the text', () => {
    expect(lookUp('leed', index)).toEqual({ found: [], otherMeaning: null, suggestions: ['lead'] });
    expect(lookUp('xylen', index).suggestions).toContain('o-xylene');
  });

  it('finds and suggests nothing for blank or foreign text', () => {
    for (const text of ['', '  ', 'qq', 'zzzzzzzzzz']) {
      expect(lookUp(text, index)).toEqual({ found: [], otherMeaning: null, suggestions: [] });
    }
  });
});
