import { BenchError } from '../findings/index.ts';

/**
 * Refuses the input of a statistic: throws, because no honest number can come out.
 *
 * @throws {BenchError} statistics-input, always
 */
export function refuse(message: string, remedy: string): never {
  throw new BenchError('statistics-input', message, remedy);
}

/** Refuses a value that is NaN or infinite. */
export function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) refuse(`${name} is ${value}`, `give a finite number for ${name}`);
}

/** Refuses a value that is NaN, infinite, or below zero. */
export function requireNotNegative(name: string, value: number): void {
  if (!(value >= 0) || value === Infinity) {
    refuse(`${name} is ${value}`, `give a finite number of zero or more for ${name}`);
  }
}

/** Refuses a value that is NaN, infinite, zero or below. */
export function requirePositive(name: string, value: number): void {
  if (!(value > 0) || value === Infinity) {
    refuse(`${name} is ${value}`, `give a finite number above zero for ${name}`);
  }
}

/** Refuses a value that is not a probability; 0 and 1 are probabilities. */
export function requireProbability(name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) refuse(`${name} is ${value}`, `give ${name} between 0 and 1`);
}

/** Refuses a value that is not strictly between 0 and 1. */
export function requireInnerProbability(name: string, value: number): void {
  if (!(value > 0 && value < 1)) {
    refuse(`${name} is ${value}`, `give ${name} above 0 and below 1`);
  }
}

/** Refuses a value that is not a whole number of at least `least`. */
export function requireCount(name: string, value: number, least: number): void {
  if (!Number.isSafeInteger(value) || value < least) {
    refuse(`${name} is ${value}`, `give a whole number of at least ${least} for ${name}`);
  }
}

/** Refuses a list with fewer than `least` numbers, or with a number that is not finite. */
export function requireNumbers(name: string, values: ArrayLike<number>, least: number): void {
  if (values.length < least) {
    refuse(`${name} hold ${values.length} numbers`, `give at least ${least} numbers`);
  }
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    if (!Number.isFinite(value)) {
      refuse(`${name} hold ${value} at position ${i + 1}`, 'give finite numbers only');
    }
  }
}

/** Refuses two lists of different length. */
export function requireSameLength(
  name: string,
  first: ArrayLike<number>,
  second: ArrayLike<number>,
): void {
  if (first.length !== second.length) {
    refuse(
      `${name} have lengths ${first.length} and ${second.length}`,
      'give one number of each for every row',
    );
  }
}

/** Refuses a covariance that two standard uncertainties cannot have; rounding is let pass. */
export function requireCovariance(covariance: number, first: number, second: number): void {
  requireFinite('the covariance', covariance);
  if (Math.abs(covariance) > first * second * (1 + 1e-9)) {
    refuse(
      `the covariance ${covariance} is larger than the two uncertainties allow`,
      'give a covariance of at most their product',
    );
  }
}
