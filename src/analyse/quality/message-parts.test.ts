import { describe, expect, it } from 'vitest';
import { groupedBy } from './grouped-by.ts';
import { median } from './median.ts';
import { firstNames, shortNumber } from './short-number.ts';

describe('the middle of some figures', () => {
  it('is none for none, the figure for one, and the mean of two', () => {
    expect(median([])).toBeNull();
    expect(median([7])).toBe(7);
    expect(median([1, 2])).toBe(1.5);
    expect(median([9, 1, 5])).toBe(5);
  });

  it('leaves the figures as they were', () => {
    const values = [3, 1, 2];
    median(values);
    expect(values).toEqual([3, 1, 2]);
  });
});

describe('figures and names in messages', () => {
  it('carry three digits and no more', () => {
    expect(shortNumber(1234.5)).toBe('1230');
    expect(shortNumber(0.000456789)).toBe('0.000457');
    expect(shortNumber(0)).toBe('0');
  });

  it('name the first few and count the rest', () => {
    expect(firstNames([])).toBe('');
    expect(firstNames(['a', 'b'], 2)).toBe('a; b');
    expect(firstNames(['a', 'b', 'c'], 2)).toBe('a; b and 1 more');
  });
});

describe('groups of items', () => {
  it('come in the order in which their keys first occur', () => {
    const groups = groupedBy([3, 1, 4, 6], (value) => (value % 2 === 0 ? 'even' : 'odd'));
    expect([...groups]).toEqual([
      ['odd', [3, 1]],
      ['even', [4, 6]],
    ]);
    expect(groupedBy([], String).size).toBe(0);
  });
});
