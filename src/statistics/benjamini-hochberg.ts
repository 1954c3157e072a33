import { requireProbability } from './refuse-input.ts';

/**
 * P-values adjusted so that calling those at or below q significant keeps the expected share of
 * false calls among all calls at or below q.
 *
 * @param pValues any number of p-values, none included; order does not matter
 * @returns adjusted p-values in the order given, each at least its p-value and at most 1
 * @throws {BenchError} statistics-input when one is not a probability
 * Edge cases: an empty list gives an empty list; one p-value stays as it is.
 * Source: Y. Benjamini & Y. Hochberg (1995), Controlling the false discovery rate, Journal of the
 * Royal Statistical Society B 57, 289-300. Holds for independent or positively dependent tests.
 * Checked by: tests/outside-checks/statistics/r-distributions/
 * @example benjaminiHochberg([0.01, 0.04, 0.03]) // [0.03, 0.04, 0.04]
 */
export function benjaminiHochberg(pValues: readonly number[]): number[] {
  for (const p of pValues) requireProbability('a p-value', p);
  const order = pValues.map((_, i) => i).sort((a, b) => (pValues[b] ?? 0) - (pValues[a] ?? 0));
  const adjusted = new Array<number>(pValues.length).fill(1);
  const m = pValues.length;
  let smallest = 1;
  order.forEach((at, fromLargest) => {
    smallest = Math.min(smallest, ((pValues[at] ?? 1) * m) / (m - fromLargest));
    adjusted[at] = smallest;
  });
  return adjusted;
}
