/**
 * P-values adjusted so that the chance of any false call among all is at most the level.
 *
 * @param pValues in any order; none gives none
 * @returns in the order given, each at least its p-value and at most 1
 * Source: S. Holm (1979), A simple sequentially rejective multiple test procedure, Scandinavian
 * Journal of Statistics 6, 65-70 (memory). Holds whatever the dependence of the tests.
 * @example holm([0.01, 0.04, 0.03]) // [0.03, 0.06, 0.06]
 */
export function holm(pValues: readonly number[]): number[] {
  const order = pValues.map((_, at) => at).sort((a, b) => (pValues[a] ?? 1) - (pValues[b] ?? 1));
  const adjusted = new Array<number>(pValues.length).fill(1);
  let largest = 0;
  order.forEach((at, rank) => {
    largest = Math.max(largest, Math.min(1, (pValues.length - rank) * (pValues[at] ?? 1)));
    adjusted[at] = largest;
  });
  return adjusted;
}
