import { describe, expect, it } from 'vitest';
import { analyteIndex } from './analyte-index.ts';
import { JURISDICTIONS, levelsOf } from './levels.ts';

describe('reference levels of an analyte', () => {
  it('come in the canonical unit beside the one of the source', () => {
    const [level] = levelsOf('barium', ['US-EPA']);
    expect(level).toMatchObject({ kind: 'MCL', value: 2, unit: 'mg/L', canonicalValue: 2000 });
  });

  it('keep a lower bound where the level is a range', () => {
    const ranges = levelsOf('ph', ['US-EPA']);
    expect(ranges[0]).toMatchObject({
      low: 6.5,
      value: 8.5,
      canonicalLow: 6.5,
      canonicalValue: 8.5,
    });
  });

  it('are chosen by jurisdiction: all when none is named, none from an empty list', () => {
    expect(new Set(levelsOf('lead').map(({ jurisdiction }) => jurisdiction)).size).toBe(4);
    expect(levelsOf('lead', [])).toEqual([]);
    expect(levelsOf('lead', ['Atlantis'])).toEqual([]);
    expect(levelsOf('lead', ['EU', 'WHO']).map(({ jurisdiction }) => jurisdiction)).toEqual([
      'WHO',
      'EU',
      'EU',
    ]);
    expect(JURISDICTIONS).toContain('CA-Health-Canada');
  });

  it('are none for an analyte nobody set a level for, and for an unknown key', () => {
    expect(levelsOf('caffeine')).toEqual([]);
    expect(levelsOf('no-such-analyte')).toEqual([]);
  });

  it('say why they have no canonical value', () => {
    const reason = (key: string, jurisdiction: string) =>
      levelsOf(key, [jurisdiction]).find((level) => level.canonicalValue === null)?.notConverted;
    expect(reason('tthm', 'WHO')).toContain('ratio sum');
    expect(reason('conductivity', 'EU')).toContain('20 C');
    expect(reason('giardia', 'US-EPA')).toBe('the rule states no number');
  });

  it('are not plain where they are proposed, withdrawn, superseded or a screen', () => {
    const plain = (key: string, kind: string) =>
      levelsOf(key).find((level) => level.kind === kind)?.plain;
    expect(plain('lead', 'action level')).toBe(true);
    expect(plain('lead', 'trigger level')).toBe(false);
    expect(plain('perchlorate', 'proposed MCL')).toBe(false);
    expect(plain('chlorobenzene', 'MAC (withdrawn)')).toBe(false);
    expect(plain('gross-beta', 'screening level')).toBe(false);
    expect(plain('pfbs', 'hazard-index HBWC')).toBe(false);
    expect(plain('mcpa', 'guideline value (historic)')).toBe(false);
  });

  it('say in their kind from or until when they apply, so that both are held and neither misleads', () => {
    const dated = levelsOf('lead').filter(({ kind }) => / (?:from|until) \d{4}$/.test(kind));
    expect(
      dated.map(({ jurisdiction, kind, canonicalValue, plain }) => {
        return [jurisdiction, kind, canonicalValue, plain];
      }),
    ).toEqual([
      ['US-EPA', 'action level from 2027', 10, true],
      ['EU', 'parametric value from 2036', 5, true],
      ['EU', 'parametric value until 2036', 10, true],
    ]);
  });

  it('read none detected as none in another way of counting, and nothing else', () => {
    const index = analyteIndex([
      { key: 'e-coli', name: null, cas: null, unit: 'CFU/100mL', aliases: [] },
      { key: 'turbidity', name: null, cas: null, unit: 'FNU', aliases: [] },
    ]);
    const coliform = index.byKey('e-coli');
    const turbidity = index.byKey('turbidity');
    if (coliform === undefined || turbidity === undefined) throw new Error('not added');
    expect(levelsOf(coliform).every((level) => level.canonicalValue === 0)).toBe(true);
    expect(levelsOf(turbidity).every((level) => level.canonicalValue === null)).toBe(true);
  });

  it('carry a source, a mark of verification and no blank unit beside a number', () => {
    for (const { key } of analyteIndex([]).analytes) {
      for (const level of levelsOf(key)) {
        expect(level.source).not.toBe('');
        expect(level.verified).toMatch(/^(from memory|seen: .+)$/);
        if (level.value !== null) expect(level.unit).not.toBe('');
      }
    }
  });
});
