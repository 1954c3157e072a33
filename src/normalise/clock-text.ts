import type { DailyWindow, WallTime, Weekdays } from '../model/index.ts';
import { type CellProblem, type CellReading, problem } from './cell-problem.ts';

const COLONS = /^(?:(\d+):)?(\d{1,3}):(\d{1,2}(?:[.,]\d+)?)$/;
const LETTERS = /^(?:(\d+)\s*h)?\s*(?:(\d+)\s*m(?:in)?)?\s*(?:(\d+(?:[.,]\d+)?)\s*s)?$/;
const PRIMES = /^(\d+)['′]\s*(?:(\d+(?:[.,]\d+)?)["″])?$/;

/**
 * A time written as a clock shows it: `0:04.2`, `1:04:25`, `4'25"`, `1m23s`.
 *
 * One colon means minutes and seconds on a stopwatch; elsewhere it is asked about.
 * @returns seconds, a problem, or null when the text is written another way
 */
export function clockSeconds(text: string, isStopwatch: boolean): CellReading<number> | null {
  const colons = COLONS.exec(text);
  if (colons !== null) {
    if (colons[1] === undefined && !isStopwatch) {
      return problem(
        'unit-ambiguous',
        `"${text}" could be hours and minutes or minutes and seconds`,
        'write the unit, such as 8 h or 30 min',
      );
    }
    const hours = colons[1] === undefined ? 0 : Number(colons[1]);
    const minutes = Number(colons[2]);
    const seconds = decimal(colons[3]);
    if (seconds >= 60 || (colons[1] !== undefined && minutes >= 60)) return impossible(text);
    return { value: hours * 3600 + minutes * 60 + seconds };
  }
  const letters = LETTERS.exec(text);
  const written = letters?.slice(1).filter((part) => part !== undefined).length ?? 0;
  if (letters !== null && written > 1) {
    return {
      value: Number(letters[1] ?? 0) * 3600 + Number(letters[2] ?? 0) * 60 + decimal(letters[3]),
    };
  }
  const primes = PRIMES.exec(text);
  if (primes !== null) return { value: Number(primes[1]) * 60 + decimal(primes[2]) };
  return null;
}

function decimal(text: string | undefined): number {
  return text === undefined ? 0 : Number(text.replace(',', '.'));
}

function impossible(text: string): CellProblem {
  return problem(
    'quantity-unreadable',
    `"${text}" is not a time: minutes and seconds end at 59`,
    'write it as minutes:seconds, such as 1:23.4',
  );
}

const MOMENT =
  /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2})(?:[.,](\d+))?)?)?(Z|[+-]\d{2}:?\d{2})?$/;

/** An ISO 8601 date or local time, without offset. */
export function readWallTime(cell: string, needsClock: boolean): CellReading<WallTime> {
  const text = cell.trim();
  const match = MOMENT.exec(text);
  if (match === null) {
    return problem(
      'date-unreadable',
      `"${text}" is not an ISO 8601 date or time`,
      `write it as ${needsClock ? '2026-07-06T07:10' : '2026-07-06 or 2026-07-06T07:10'}`,
    );
  }
  if (match[8] !== undefined) {
    return problem(
      'date-unreadable',
      `"${text}" carries an offset from universal time`,
      'write the local wall clock without an offset',
    );
  }
  const hasTime = match[4] !== undefined;
  if (needsClock && !hasTime) {
    return problem(
      'date-unreadable',
      `"${text}" has no time of day`,
      'write date and time, such as 2026-07-06T07:10',
    );
  }
  const parts = match.slice(1, 7).map((part) => (part === undefined ? 0 : Number(part)));
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = parts;
  const date = new Date(Date.UTC(year, month - 1, day));
  const exists =
    date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  if (!exists || hour > 23 || minute > 59 || second > 59) {
    return problem('date-impossible', `"${text}" does not exist`, 'correct the date or the time');
  }
  const fraction = match[7] === undefined ? 0 : Number(`0.${match[7]}`);
  const seconds = date.getTime() / 1000 + hour * 3600 + minute * 60 + second + fraction;
  return { value: { text, seconds, hasTime } };
}

const WINDOW = /^(\d{1,2}):(\d{2})\s*[-–—]\s*(\d{1,2}):(\d{2})$/;

/** A daily window such as `07:00-09:00`; one that ends at 24:00 reaches midnight. */
export function readWindow(cell: string, mayWrap: boolean): CellReading<DailyWindow> {
  const text = cell.trim();
  const match = WINDOW.exec(text);
  const [fromH = 0, fromM = 0, toH = 0, toM = 0] = match?.slice(1).map(Number) ?? [];
  const fromS = fromH * 3600 + fromM * 60;
  const toS = toH * 3600 + toM * 60;
  if (match === null || fromM > 59 || toM > 59 || fromS >= 86400 || toS > 86400) {
    return problem(
      'date-unreadable',
      `"${text}" is not a window of the day`,
      'write two times, such as 07:00-09:00',
    );
  }
  if (!mayWrap && toS <= fromS) {
    return problem(
      'window-backwards',
      `the window "${text}" ends before it starts`,
      'put the earlier time first; a window across midnight takes two rows',
    );
  }
  return { value: { text, fromS, toS } };
}

const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
const GROUPS: Readonly<Record<string, Weekdays>> = {
  daily: [true, true, true, true, true, true, true],
  weekdays: [true, true, true, true, true, false, false],
  weekends: [false, false, false, false, false, true, true],
};

/** `daily`, `weekdays`, `weekends` or a list of days such as `mon,wed`. */
export function readWeekdays(cell: string): CellReading<Weekdays> {
  const text = cell.trim().toLowerCase();
  const group = GROUPS[text];
  if (group !== undefined) return { value: group };
  const days: [boolean, boolean, boolean, boolean, boolean, boolean, boolean] = [
    false,
    false,
    false,
    false,
    false,
    false,
    false,
  ];
  const words = text.split(/[\s,;|]+/).filter((word) => word !== '');
  for (const word of words) {
    const index = DAYS.indexOf(word as (typeof DAYS)[number]);
    if (index === -1) {
      return problem(
        'choice-unknown',
        `"${word}" is not a day of the week`,
        'write daily, weekdays, weekends, or days such as mon,wed',
      );
    }
    days[index] = true;
  }
  return words.length === 0
    ? problem('cell-missing', 'no day is named', 'write daily, or days such as mon,wed')
    : { value: days };
}
