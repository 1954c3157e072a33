import { describe, expect, it } from 'vitest';
import { type DateOrder, orderEvidence, readLabDate, readLabTime } from './lab-date.ts';

const read = (cell: string, order: DateOrder | null = null) => {
  const date = readLabDate(cell, order);
  return date.kind === 'date' ? date.iso : date.kind;
};

describe('a date of a lab export', () => {
  it('is read in every form that says its order', () => {
    expect(read('2026-07-14')).toBe('2026-07-14');
    expect(read('2016-03-01T00:00:00Z')).toBe('2016-03-01');
    expect(read('2026-07-14 08:10')).toBe('2026-07-14T08:10');
    expect(read('2026-07-14T08:10:00-05:00')).toBe('2026-07-14');
    expect(read('12/31/2024 12:00:00 AM')).toBe('2024-12-31');
    expect(read('14-Jul-26')).toBe('2026-07-14');
    expect(read('July 14, 2026')).toBe('2026-07-14');
    expect(read('1467331200000')).toBe('2016-07-01T00:00');
    expect(read('07/07/2026')).toBe('2026-07-07');
  });

  it('is unclear where day and month could change places, until the order is known', () => {
    for (const cell of ['1/6/2021', '06/12/2023', '4/3/18 9:20', '01.02.2020']) {
      expect(read(cell)).toBe('unclear');
    }
    expect(read('1/6/2021', 'month-first')).toBe('2021-01-06');
    expect(read('1/6/2021', 'day-first')).toBe('2021-06-01');
    expect(read('4/3/18 9:20', 'month-first')).toBe('2018-04-03T09:20');
  });

  it('that does not exist is impossible, and other texts are none', () => {
    expect(read('2026-02-30')).toBe('impossible');
    expect(read('32/13/2026')).toBe('unclear');
    for (const cell of ['', '19-070', 'NA', '12', 'July']) expect(read(cell)).toBe('none');
  });

  it('proves an order by a part above 12 only', () => {
    expect(orderEvidence('13/01/2026')).toBe('day-first');
    expect(orderEvidence('01/13/2026')).toBe('month-first');
    expect(orderEvidence('01/12/2026')).toBeNull();
    expect(orderEvidence('2026-01-13')).toBeNull();
  });
});

describe('a time of a lab export', () => {
  it('is read with a colon, without one, with an h and with a half of the day', () => {
    expect(readLabTime('12:19')).toBe('12:19');
    expect(readLabTime(' 0:08')).toBe('00:08');
    expect(readLabTime('1436')).toBe('14:36');
    expect(readLabTime('0')).toBe('00:00');
    expect(readLabTime('10h30')).toBe('10:30');
    expect(readLabTime('2:36 PM')).toBe('14:36');
    expect(readLabTime('12:00:00 AM')).toBe('00:00');
  });

  it('is none where minutes or hours do not exist', () => {
    for (const cell of ['', '2575', '9:75', 'noon']) expect(readLabTime(cell)).toBeNull();
  });
});
