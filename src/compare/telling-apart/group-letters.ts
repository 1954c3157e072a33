/**
 * The largest groups in which no two members were told apart. A member may stand in several groups,
 * because "not told apart" does not carry over: a may not differ from b, nor b from c, and a still
 * differ from c.
 *
 * @param count members, numbered from 0
 * @param apart pairs that were told apart
 * @returns groups in the order of their members; one group of all where no pair was told apart
 * Source: insert and absorb, H.-P. Piepho (2004), An algorithm for a letter-based representation of
 * all-pairwise comparisons, Journal of Computational and Graphical Statistics 13, 456-466 (memory).
 * @example notToldApartGroups(3, [[0, 2]]) // [[0, 1], [1, 2]]
 */
export function notToldApartGroups(
  count: number,
  apart: readonly (readonly [number, number])[],
): number[][] {
  let groups: number[][] = count === 0 ? [] : [Array.from({ length: count }, (_, at) => at)];
  for (const [a, b] of apart) {
    const split = groups.flatMap((group) =>
      group.includes(a) && group.includes(b)
        ? [group.filter((member) => member !== a), group.filter((member) => member !== b)]
        : [group],
    );
    groups = absorbed(split);
  }
  return groups.sort(byMembers);
}

/** Without groups that lie inside another. */
function absorbed(groups: readonly number[][]): number[][] {
  return groups.filter(
    (group, at) =>
      !groups.some(
        (other, place) =>
          place !== at &&
          group.every((member) => other.includes(member)) &&
          (other.length > group.length || place < at),
      ),
  );
}

function byMembers(first: readonly number[], second: readonly number[]): number {
  for (let at = 0; at < Math.min(first.length, second.length); at += 1) {
    const gap = (first[at] ?? 0) - (second[at] ?? 0);
    if (gap !== 0) return gap;
  }
  return first.length - second.length;
}
