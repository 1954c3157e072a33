import { ION_EQUIVALENTS, IONS, type IonConcentrations, milliequivalents } from './ions.ts';

/** Sums of equivalents and how far they lie apart. */
export interface IonBalance {
  readonly cationsMeqPerL: number;
  readonly anionsMeqPerL: number;
  /** Cations less anions, meq/L. */
  readonly differenceMeqPerL: number;
  /** In percent of the sum of both; null without any ion. */
  readonly percentOfSum: number | null;
  /** In percent of the mean of both: twice the figure above; null without any ion. */
  readonly percentOfMean: number | null;
}

/**
 * Ion balance of a water: a water carries no net charge, so the equivalents of cations and anions
 * are equal but for errors and for ions that were not measured.
 *
 * @param ions mg/L; nitrate, nitrite and ammonia as N, alkalinity as CaCO3
 * Source: Standard Methods 1030 E divides by the sum (from memory); DIN 38402-62:2013 by the mean,
 * which gives twice the number. Equivalents are plain: ion pairs are not computed.
 * Checked by: tests/outside-checks/quality-control/
 * @example ionBalance({ sodium: 22.99, chloride: 35.453 }).percentOfSum // 0
 */
export function ionBalance(ions: IonConcentrations): IonBalance {
  let cations = 0;
  let anions = 0;
  for (const ion of IONS) {
    const meqPerL = milliequivalents(ion, ions[ion] ?? 0);
    if (ION_EQUIVALENTS[ion].charge > 0) cations += meqPerL;
    else anions += meqPerL;
  }
  const difference = cations - anions;
  const sum = cations + anions;
  const percent = sum > 0 ? (100 * difference) / sum : null;
  return {
    cationsMeqPerL: cations,
    anionsMeqPerL: anions,
    differenceMeqPerL: difference,
    percentOfSum: percent,
    percentOfMean: percent === null ? null : 2 * percent,
  };
}

/** The largest difference accepted, in meq/L, and the rule it follows. */
export interface BalanceLimit {
  readonly meqPerL: number;
  readonly rule: '0.2 meq/L' | '2 %' | '5 %';
}

/**
 * The difference that is accepted between cations and anions, by the sum of the anions: 0.2 meq/L up
 * to 3 meq/L, 2 % of both sums up to 10 meq/L, 5 % above.
 *
 * A permeate is too dilute for any percent rule: rounding alone breaks it. Hence the absolute one.
 * Source: Standard Methods 1030 E (from memory); 5 % throughout also occurs in regulatory reports.
 */
export function balanceLimit(cationsMeqPerL: number, anionsMeqPerL: number): BalanceLimit {
  if (anionsMeqPerL <= 3) return { meqPerL: 0.2, rule: '0.2 meq/L' };
  const sum = cationsMeqPerL + anionsMeqPerL;
  return anionsMeqPerL <= 10
    ? { meqPerL: 0.02 * sum, rule: '2 %' }
    : { meqPerL: 0.05 * sum, rule: '5 %' };
}
