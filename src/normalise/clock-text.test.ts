import { describe, expect, it } from 'vitest';
import { readWallTime, readWeekdays, readWindow } from './clock-text.ts';

const problemOf = (reading: object): unknown => ('problem' in reading ? reading.problem : null);

describe('dates and local times', () => {
  it('reads a date and a time of day without any time zone', () => {
    const reading = readWallTime('2026-07-06T07:10', true);
    expect(reading).toMatchObject({ value: { hasTime: true } });
    expect('value' in reading && reading.value.seconds % 86_400).toBe(7 * 3600 + 10 * 60);
  });

  it('keeps fractions of a second', () => {
    const reading = readWallTime('2026-07-06 07:10:04.25', true);
    expect('value' in reading && reading.value.seconds % 60).toBe(4.25);
  });

  it.each(['2026-02-30', '2026-13-01', '2026-07-06T24:10', '2025-02-29'])(
    'the day or time %s does not exist',
    (cell) => {
      expect(problemOf(readWallTime(cell, false))).toBe('date-impossible');
    },
  );

  it('knows a leap year', () => {
    expect(problemOf(readWallTime('2024-02-29', false))).toBe(null);
  });

  it.each(['6/7/2026', 'July 6', '2026-7-6', '07:10'])('%s is not ISO 8601', (cell) => {
    expect(problemOf(readWallTime(cell, false))).toBe('date-unreadable');
  });

  it('refuses an offset, since the bench keeps local time', () => {
    expect(problemOf(readWallTime('2026-07-06T07:10+02:00', true))).toBe('date-unreadable');
  });

  it('asks for the time of day where one is needed', () => {
    expect(problemOf(readWallTime('2026-07-06', true))).toBe('date-unreadable');
  });
});

describe('windows of the day', () => {
  it('reaches midnight at 24:00', () => {
    expect(readWindow('22:00-24:00', false)).toMatchObject({
      value: { fromS: 79_200, toS: 86_400 },
    });
  });

  it('runs across midnight only where quiet hours may', () => {
    expect(problemOf(readWindow('22:00-07:00', false))).toBe('window-backwards');
    expect(readWindow('22:00-07:00', true)).toMatchObject({
      value: { fromS: 79_200, toS: 25_200 },
    });
  });

  it.each(['7-9', '07:00', '07:60-09:00', '25:00-26:00'])('%s is no window', (cell) => {
    expect(problemOf(readWindow(cell, true))).toBe('date-unreadable');
  });
});

describe('days of the week', () => {
  it('knows daily, weekdays and weekends', () => {
    expect(readWeekdays('daily')).toMatchObject({ value: Array(7).fill(true) });
    expect(readWeekdays('Weekdays')).toMatchObject({
      value: [true, true, true, true, true, false, false],
    });
    expect(readWeekdays('weekends')).toMatchObject({
      value: [false, false, false, false, false, true, true],
    });
  });

  it('reads a list', () => {
    expect(readWeekdays('mon, wed')).toMatchObject({
      value: [true, false, true, false, false, false, false],
    });
  });

  it('names a word that is no day', () => {
    expect(problemOf(readWeekdays('mon,funday'))).toBe('choice-unknown');
  });
});
