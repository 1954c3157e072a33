/**
 * Sum that keeps the digits a plain loop would lose when large and small numbers meet.
 *
 * @param values finite numbers; none gives 0
 * @returns the sum; NaN or infinite when a value is
 * Accuracy: as if added in twice the working precision and then rounded.
 * Source: A. Neumaier (1974), Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen,
 * Zeitschrift für Angewandte Mathematik und Mechanik 54, 39-51.
 * @example compensatedSum([1, 1e100, 1, -1e100]) // 2
 */
export function compensatedSum(values: ArrayLike<number>): number {
  let sum = 0;
  let lost = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return Number.isFinite(sum) ? sum + lost : sum;
}
