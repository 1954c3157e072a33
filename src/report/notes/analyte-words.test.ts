import { describe, expect, it } from 'vitest';
import { analyteIndex } from '../../reference/index.ts';
import { analyteGroups, analyteWords } from './analyte-words.ts';

const index = analyteIndex([]);

function analyte(name: string) {
  const reading = index.resolve(name, null);
  if (reading.kind !== 'found') throw new Error(`${name} is ${reading.kind}`);
  return reading.analyte;
}

describe('the name of an analyte inside a sentence', () => {
  it.each([
    ['Lead', 'lead'],
    ['Chlorine, free', 'free chlorine'],
    ['Hardness, total as CaCO3', 'total hardness'],
    ['Arsenic (total)', 'arsenic (total)'],
    ['Escherichia coli', 'Escherichia coli'],
    ['Total coliforms', 'total coliforms'],
    ['pH', 'pH'],
  ])('%s reads %s', (name, words) => {
    expect(analyteWords(analyte(name))).toBe(words);
  });

  it('leaves the name of an analyte of the bench alone', () => {
    expect(analyteWords({ ...analyte('Lead'), name: 'My Tracer, Blue', group: 'own' })).toBe(
      'My Tracer, Blue',
    );
  });
});

describe('groups of analytes', () => {
  it('stand in a fixed order, unknown ones last, and lose none', () => {
    const items = ['Calcium', 'E. coli', 'Lead'].map((name) => ({ analyte: analyte(name) }));
    const own = { analyte: { ...analyte('Lead'), key: 'tracer', group: 'own' } };
    const groups = analyteGroups([own, ...items]);
    expect(groups.map(({ group }) => group.id)).toEqual([
      'metals',
      'microbes',
      'minerals',
      'others',
    ]);
    expect(groups.flatMap((each) => each.items)).toHaveLength(4);
  });

  it('of nothing are none', () => {
    expect(analyteGroups([])).toEqual([]);
  });
});
