import { atMostDigits } from './format-number.ts';

/** Volumes and times for people, with a space before the unit and at most three digits. */
const DIGITS = 3;
const ML_PER_L = 1000;
const MINUTE_S = 60;
const HOUR_S = 3600;
const DAY_S = 86_400;

/**
 * A volume: millilitres below one litre, litres from there.
 *
 * @param litres any finite number
 * @example volumeText(0.25) // '250 mL'
 * @example volumeText(1.5) // '1.5 L'
 */
export function volumeText(litres: number): string {
  const small = litres !== 0 && Math.abs(litres) < 1;
  return small
    ? `${atMostDigits(litres * ML_PER_L, DIGITS)} mL`
    : `${atMostDigits(litres, DIGITS)} L`;
}

/**
 * A length of time: seconds below two minutes, minutes below two hours, hours below two days, then
 * days of 86,400 s.
 *
 * @param seconds any finite number
 * @example durationText(42.5) // '42.5 s'
 * @example durationText(5400) // '90 min'
 */
export function durationText(seconds: number): string {
  const size = Math.abs(seconds);
  if (size < 2 * MINUTE_S) return `${atMostDigits(seconds, DIGITS)} s`;
  if (size < 2 * HOUR_S) return `${atMostDigits(seconds / MINUTE_S, DIGITS)} min`;
  if (size < 2 * DAY_S) return `${atMostDigits(seconds / HOUR_S, DIGITS)} h`;
  return `${atMostDigits(seconds / DAY_S, DIGITS)} d`;
}
