import { checkNumber, refuseInput, ZERO_OR_MORE } from './check-number.ts';
import { DAY_S } from './same-instant.ts';

export type Spread = 'even' | 'together' | 'random';

/** Pours of one kind that come again on chosen days of the week. */
export interface PourGroup {
  /** Seven entries, Monday first: true on the days that have the pours. */
  readonly weekdays: readonly boolean[];
  /** Start of the window in seconds after midnight. */
  readonly fromS: number;
  /** End of the window, later than its start and at most 86,400; a pour never starts at it. */
  readonly toS: number;
  /** A whole number for `even` and `together`; the mean number for `random`. */
  readonly poursPerDay: number;
  /** Clean litres of each pour. */
  readonly volumeL: number;
  readonly spread: Spread;
}

/** @throws {BenchError} simulation-input, naming the figure */
export function checkGroup(group: PourGroup): void {
  if (group.weekdays.length !== 7) {
    refuseInput(
      `weekdays has ${group.weekdays.length} entries`,
      'give weekdays as seven entries, Monday first',
    );
  }
  checkNumber('fromS', group.fromS, ZERO_OR_MORE);
  checkNumber('toS', group.toS, {
    holds: (value) => value > group.fromS && value <= DAY_S,
    words: `a number of seconds after fromS, at most ${DAY_S}; across midnight is two groups`,
  });
  checkNumber('volumeL', group.volumeL, ZERO_OR_MORE);
  checkNumber('poursPerDay', group.poursPerDay, ZERO_OR_MORE);
  if (!['even', 'together', 'random'].includes(group.spread)) {
    refuseInput(`spread is "${String(group.spread)}"`, 'write even, together or random');
  }
}

/** Days in a row on which nobody draws water. */
export interface DaysAway {
  /** The first of them, counted from 1: day 1 is the Monday of power-on. */
  readonly fromDay: number;
  /** How many, at least 1. */
  readonly days: number;
}

/** Second at which each day that has the pours begins; day 0 is a Monday. */
export function daysOf(
  group: PourGroup,
  days: number,
  away: readonly DaysAway[] = [],
): Float64Array {
  checkNumber('days', days, {
    holds: (value) => Number.isSafeInteger(value) && value >= 0,
    words: 'a whole number from 0 upward',
  });
  for (const absence of away) {
    for (const [name, value] of Object.entries(absence)) {
      checkNumber(`away.${name}`, value, {
        holds: (number) => Number.isSafeInteger(number) && number >= 1,
        words: 'a whole number from 1 upward',
      });
    }
  }
  const starts: number[] = [];
  for (let day = 0; day < days; day++) {
    const isAway = away.some((one) => day + 1 >= one.fromDay && day + 1 < one.fromDay + one.days);
    if (group.weekdays[day % 7] === true && !isAway) starts.push(day * DAY_S);
  }
  return Float64Array.from(starts);
}
