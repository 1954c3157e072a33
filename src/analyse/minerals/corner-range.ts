import type { Interval } from '../../model/index.ts';

/**
 * The range of a function over a box of intervals, taken at its corners.
 *
 * The extremes of a function that rises or falls steadily with each input lie at corners. Whether it
 * does is looked at on every edge of the box, in its middle and its quarters; where it turns there,
 * nothing is returned.
 * @param box one interval an input; ends must be finite
 * @returns null where the function is not monotone on an edge or is not a number at a corner
 * @example cornerRange([{ low: 1, high: 2 }, { low: 0, high: 3 }], ([a, b]) => a! - b!) // -2 to 2
 */
export function cornerRange(
  box: readonly Interval[],
  compute: (inputs: readonly number[]) => number | null,
): Interval | null {
  const open = box.flatMap(({ low, high }, at) => (low < high ? [at] : []));
  const corners = 2 ** open.length;
  const values: number[] = [];
  for (let corner = 0; corner < corners; corner += 1) {
    const value = compute(cornerInputs(box, open, corner));
    if (value === null || !Number.isFinite(value)) return null;
    values.push(value);
  }
  for (let corner = 0; corner < corners; corner += 1) {
    for (const [bit, at] of open.entries()) {
      if ((corner >> bit) % 2 === 1) continue;
      const from = cornerInputs(box, open, corner);
      const end = values[corner + 2 ** bit];
      const inner = EDGE_SHARES.map((share) => compute(along(from, box, at, share)));
      if (!isSteady([values[corner] ?? null, ...inner, end ?? null])) return null;
    }
  }
  return { low: Math.min(...values), high: Math.max(...values) };
}

const EDGE_SHARES = [0.25, 0.5, 0.75] as const;

/** Rounding in the last digits is no turn. */
const SLACK = 1e-9;

function cornerInputs(box: readonly Interval[], open: readonly number[], corner: number): number[] {
  return box.map(({ low, high }, at) => {
    const bit = open.indexOf(at);
    return bit !== -1 && (corner >> bit) % 2 === 1 ? high : low;
  });
}

function along(from: readonly number[], box: readonly Interval[], at: number, share: number) {
  return from.map((value, index) => {
    const interval = box[index];
    return index === at && interval !== undefined
      ? interval.low + share * (interval.high - interval.low)
      : value;
  });
}

function isSteady(values: readonly (number | null)[]): boolean {
  let rises = false;
  let falls = false;
  for (const [at, value] of values.entries()) {
    const before = values[at - 1];
    if (value === null || !Number.isFinite(value)) return false;
    if (before === undefined || before === null) continue;
    if (value > before + SLACK) rises = true;
    if (value < before - SLACK) falls = true;
  }
  return !(rises && falls);
}
