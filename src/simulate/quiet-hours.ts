import { DAY_S, SAME_INSTANT_S } from './same-instant.ts';

/**
 * Seconds until quiet hours end, counted from an instant within them.
 *
 * @param localS local clock in seconds; any number of whole days more or less does not matter
 * @param fromS start of the quiet hours in seconds after midnight, itself quiet
 * @param toS their end, itself no longer quiet; the hours may run across midnight
 * @returns 0 outside the quiet hours and when `fromS` equals `toS`
 * @example quietWait(79_200, 79_200, 25_200) // 32400: from 22:00 to 07:00
 */
export function quietWait(localS: number, fromS: number, toS: number): number {
  if (fromS === toS) return 0;
  // Looked at one tolerance later, so that a rounding error before a border lands on its far side.
  const midnightS = DAY_S * Math.floor((localS + SAME_INSTANT_S) / DAY_S);
  const clockS = localS - midnightS;
  const lookS = clockS + SAME_INSTANT_S;
  const isQuiet = fromS < toS ? lookS >= fromS && lookS < toS : lookS >= fromS || lookS < toS;
  if (!isQuiet) return 0;
  return toS > lookS ? toS - clockS : toS + DAY_S - clockS;
}
