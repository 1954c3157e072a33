/**
 * The word of a list that is nearest to a misspelt one, for a remedy such as `did you mean "…"?`.
 *
 * Near means at most a third of its letters wrong, missing, added or exchanged with a neighbour
 * (optimal string alignment distance).
 * @returns null when none is near enough
 */
export function closestWord(word: string, words: readonly string[]): string | null {
  let best: string | null = null;
  let bestDistance = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const candidate of words) {
    const distance = editDistance(word, candidate);
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** Edits that turn `a` into `b`; an exchange of neighbours counts once. */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const current = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      let edits = Math.min(
        (last[j] ?? 0) + 1,
        (current[j - 1] ?? 0) + 1,
        (last[j - 1] ?? 0) + cost,
      );
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        edits = Math.min(edits, (beforeLast[j - 2] ?? 0) + 1);
      }
      current.push(edits);
    }
    beforeLast = last;
    last = current;
  }
  return last[b.length] ?? 0;
}
