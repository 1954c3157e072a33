import { BenchError } from '../findings/index.ts';

/** Stops the simulation because of what it was given. */
export function refuseInput(what: string, remedy: string): never {
  throw new BenchError('simulation-input', what, remedy);
}

/** What a number of the input must be, in words that follow "must be". */
interface Demand {
  readonly holds: (value: number) => boolean;
  readonly words: string;
}

export const ZERO_OR_MORE: Demand = {
  holds: (value) => value >= 0 && value < Number.POSITIVE_INFINITY,
  words: 'a finite number from 0 upward',
};

export const ABOVE_ZERO: Demand = {
  holds: (value) => value > 0 && value < Number.POSITIVE_INFINITY,
  words: 'a finite number above 0',
};

/** Also below 0: the intercept of a fit can be. */
export const FINITE: Demand = { holds: Number.isFinite, words: 'a finite number' };

export const FRACTION: Demand = {
  holds: (value) => value >= 0 && value <= 1,
  words: 'a number from 0 to 1',
};

/** The number itself, once it is known to meet the demand. */
export function checkNumber(name: string, value: unknown, demand: Demand): number {
  if (typeof value !== 'number' || !demand.holds(value)) {
    refuseInput(`${name} is ${String(value)}`, `give ${name} as ${demand.words}`);
  }
  return value;
}
