import { refuse } from './refuse-input.ts';

// Mass fractions at which one law hands over to the next.
const LOWEST_LAW_ENDS = 1.2e-7;
const HIGHEST_LAW_STARTS = 0.138;

/**
 * Relative standard deviation between laboratories that is usual for a mass fraction.
 *
 * What: 22 % below 0.12 mg/kg, then 0.02 c^-0.1505 (16 % at 1 mg/kg, 2 % at 100 %), then 0.01 c^-0.5
 * above 13.8 %. A rule of experience for a competent laboratory, not a measurement: what rests on it
 * is assumed.
 * @param massFraction kg per kg, above 0 and at most 1: 1 mg/L of water is 1e-6
 * @returns a fraction: 0.22 is 22 %
 * @throws {BenchError} statistics-input outside that range
 * Source: M. Thompson (2000), Recent trends in inter-laboratory precision at ppb and sub-ppb
 * concentrations, Analyst 125, 385-386, after W. Horwitz (1982), Analytical Chemistry 54, 67A-76A
 * (from memory).
 * Checked by: tests/outside-checks/statistics/horwitz-thompson.test.ts
 * @example horwitzThompsonRelativeSd(1e-6) // 0.16
 */
export function horwitzThompsonRelativeSd(massFraction: number): number {
  if (!(massFraction > 0 && massFraction <= 1)) {
    refuse(`the mass fraction is ${massFraction}`, 'give kg per kg, above 0 and at most 1');
  }
  if (massFraction < LOWEST_LAW_ENDS) return 0.22;
  if (massFraction <= HIGHEST_LAW_STARTS) return 0.02 * massFraction ** (0.8495 - 1);
  return 0.01 * massFraction ** (0.5 - 1);
}
