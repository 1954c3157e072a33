/** Something that is bought whole and answers some questions. */
export interface CoverSet {
  /** Zero or more. */
  readonly cost: number;
  /** Indices of the questions it answers. */
  readonly answers: readonly number[];
}

/** Which sets to buy. */
export interface Cover {
  /** Indices of the sets, in the order given. */
  readonly chosen: readonly number[];
  readonly cost: number;
  readonly answered: readonly number[];
  /** Questions that no set answers at all. */
  readonly unanswerable: readonly number[];
  readonly method: 'exact' | 'heuristic';
  /** No choice that answers as much costs less than this; equals `cost` where exact. */
  readonly costAtLeast: number;
  /** No choice within the budget answers more than this; equals the number answered where exact. */
  readonly answeredAtMost: number;
}

/**
 * Questions that no set tells apart count as one. So many different ones are solved exactly, in a
 * table over all their combinations; beyond, greedily.
 */
export const EXACT_QUESTIONS = 16;

/**
 * The cheapest sets that together answer every question that any set answers (weighted set cover).
 *
 * Up to EXACT_QUESTIONS different questions exact, by dynamic programming over combinations of
 * questions. Beyond them greedy, least cost for each new answer, without what becomes superfluous: at
 * most H(d) = 1 + 1/2 + ... + 1/d times the optimum, d the most answers of one set. `costAtLeast` is
 * then a bound by duality: every question pays at least the least share of any set that answers it.
 * @param questions how many there are
 * @param exactQuestions how many different ones are solved exactly, 30 at most
 * Source: V. Chvatal (1979), A greedy heuristic for the set-covering problem, Mathematics of Operations
 * Research 4, 233-235 (from memory). Checked against all combinations in the tests.
 * @example cheapestCover([{ cost: 3, answers: [0, 1] }, { cost: 1, answers: [0] }], 2).chosen // [0]
 */
export function cheapestCover(
  sets: readonly CoverSet[],
  questions: number,
  exactQuestions = EXACT_QUESTIONS,
): Cover {
  const problem = merged(sets, questions);
  if (problem.groups.length > exactQuestions) return greedyCover(problem);
  const table = costTable(problem);
  const all = table.cost.length - 1;
  return exactCover(problem, table, all);
}

/**
 * The sets within a budget that answer most questions, and of those the cheapest.
 *
 * Exact as above. Beyond, the better of two greedy choices, by answers for money and the single best
 * set: at least (1 - 1/e)/2 of the optimum. `answeredAtMost` is then that of a fractional knapsack.
 * @param budget zero or more, the unit of the costs
 * Source: S. Khuller, A. Moss, J. Naor (1999), The budgeted maximum coverage problem, Information
 * Processing Letters 70, 39-45 (from memory).
 */
export function mostAnswered(
  sets: readonly CoverSet[],
  questions: number,
  budget: number,
  exactQuestions = EXACT_QUESTIONS,
): Cover {
  const affordable = sets.map((set) =>
    isWithin(set.cost, budget) ? set : { ...set, answers: [] },
  );
  const problem = merged(affordable, questions);
  const none = unanswerable(sets, questions);
  if (problem.groups.length > exactQuestions) {
    return { ...greedyWithin(problem, budget), unanswerable: none };
  }
  const table = costTable(problem);
  let best = 0;
  for (let mask = 1; mask < table.cost.length; mask += 1) {
    if (!isWithin(table.cost[mask] ?? Number.POSITIVE_INFINITY, budget)) continue;
    const more = weightOf(problem, mask) - weightOf(problem, best);
    const cheaper = (table.cost[mask] ?? 0) < (table.cost[best] ?? 0);
    if (more > 0 || (more === 0 && cheaper)) best = mask;
  }
  return { ...exactCover(problem, table, best), unanswerable: none };
}

/** Sums of prices such as 0.1 + 0.2 do not exceed a budget of 0.3. */
function isWithin(cost: number, budget: number): boolean {
  return cost <= budget * (1 + 1e-12);
}

interface Problem {
  readonly sets: readonly CoverSet[];
  /** Questions answered by the very same sets. */
  readonly groups: readonly (readonly number[])[];
  /** Indices of groups, by set. */
  readonly groupsOf: readonly (readonly number[])[];
  readonly unanswerable: readonly number[];
}

function unanswerable(sets: readonly CoverSet[], questions: number): number[] {
  const known = new Set(sets.flatMap(({ answers }) => answers));
  return Array.from({ length: questions }, (_, at) => at).filter((at) => !known.has(at));
}

function merged(sets: readonly CoverSet[], questions: number): Problem {
  const bySets = new Map<string, number[]>();
  const none = unanswerable(sets, questions);
  for (let question = 0; question < questions; question += 1) {
    const key = sets.flatMap(({ answers }, at) => (answers.includes(question) ? at : [])).join(' ');
    if (key === '') continue;
    const group = bySets.get(key) ?? [];
    bySets.set(key, group);
    group.push(question);
  }
  const groups = [...bySets.values()];
  const groupsOf = sets.map(({ answers }) =>
    groups.flatMap((group, at) => (answers.includes(group[0] ?? -1) ? at : [])),
  );
  return { sets, groups, groupsOf, unanswerable: none };
}

interface CostTable {
  /** Least cost of answering exactly a combination of groups, by bit mask. */
  readonly cost: Float64Array;
  readonly set: Int32Array;
  readonly before: Int32Array;
}

function costTable({ sets, groups, groupsOf }: Problem): CostTable {
  const size = 2 ** groups.length;
  const cost = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  const set = new Int32Array(size).fill(-1);
  const before = new Int32Array(size);
  cost[0] = 0;
  for (const [at, { cost: price }] of sets.entries()) {
    const bits = (groupsOf[at] ?? []).reduce((mask, group) => mask | (1 << group), 0);
    if (bits === 0) continue;
    for (let mask = 0; mask < size; mask += 1) {
      const joined = mask | bits;
      const sum = (cost[mask] ?? 0) + price;
      if (joined === mask || sum >= (cost[joined] ?? 0)) continue;
      cost[joined] = sum;
      set[joined] = at;
      before[joined] = mask;
    }
  }
  return { cost, set, before };
}

function weightOf({ groups }: Problem, mask: number): number {
  return groups.reduce((sum, group, at) => sum + ((mask >> at) & 1) * group.length, 0);
}

function exactCover(problem: Problem, table: CostTable, wanted: number): Cover {
  const chosen: number[] = [];
  for (let mask = wanted; mask !== 0; mask = table.before[mask] ?? 0) {
    chosen.push(table.set[mask] ?? -1);
  }
  const answered = problem.groups.flatMap((group, at) => ((wanted >> at) & 1 ? group : []));
  return coverOf(problem, chosen, answered, 'exact', null);
}

function coverOf(
  { sets, unanswerable: none }: Problem,
  chosen: readonly number[],
  answered: readonly number[],
  method: Cover['method'],
  bounds: { readonly costAtLeast: number; readonly answeredAtMost: number } | null,
): Cover {
  const cost = chosen.reduce((sum, at) => sum + (sets[at]?.cost ?? 0), 0);
  return {
    chosen: [...chosen].sort((a, b) => a - b),
    cost,
    answered: [...answered].sort((a, b) => a - b),
    unanswerable: none,
    method,
    costAtLeast: bounds === null ? cost : Math.min(cost, bounds.costAtLeast),
    answeredAtMost: bounds === null ? answered.length : bounds.answeredAtMost,
  };
}

/** New answers of a set, counted in questions. */
function newAnswers({ groups, groupsOf }: Problem, at: number, done: ReadonlySet<number>): number {
  return (groupsOf[at] ?? []).reduce(
    (sum, group) => sum + (done.has(group) ? 0 : (groups[group]?.length ?? 0)),
    0,
  );
}

/** Sets by most new answers for money; free ones first. Stops where no set adds any. */
function greedyOrder(problem: Problem, budget: number): number[] {
  const chosen: number[] = [];
  const done = new Set<number>();
  let left = budget;
  for (;;) {
    let best = -1;
    let bestRatio = 0;
    for (const [at, { cost }] of problem.sets.entries()) {
      const ratio = newAnswers(problem, at, done) / Math.max(cost, Number.MIN_VALUE);
      if (isWithin(cost, left) && ratio > bestRatio) {
        best = at;
        bestRatio = ratio;
      }
    }
    if (best < 0) return chosen;
    chosen.push(best);
    left -= problem.sets[best]?.cost ?? 0;
    for (const group of problem.groupsOf[best] ?? []) done.add(group);
  }
}

function greedyCover(problem: Problem): Cover {
  const { sets, groups, groupsOf } = problem;
  const order = greedyOrder(problem, Number.POSITIVE_INFINITY);
  let chosen = order;
  const costliest = [...order].sort((a, b) => (sets[b]?.cost ?? 0) - (sets[a]?.cost ?? 0));
  for (const at of costliest) {
    const rest = chosen.filter((one) => one !== at);
    const covered = new Set(rest.flatMap((one) => groupsOf[one] ?? []));
    if (covered.size === groups.length) chosen = rest;
  }
  const bounds = { costAtLeast: dualBound(problem, order), answeredAtMost: groups.flat().length };
  return coverOf(problem, chosen, groups.flat(), 'heuristic', bounds);
}

/** Two prices of the questions that no set exceeds, and the dearest question alone: the best holds. */
function dualBound(problem: Problem, order: readonly number[]): number {
  const { sets, groups, groupsOf } = problem;
  const setsOf = groups.map((_, group) =>
    sets.flatMap((set, at) => (groupsOf[at]?.includes(group) === true ? { set, at } : [])),
  );
  const shares = setsOf.map((all) =>
    Math.min(...all.map(({ set, at }) => set.cost / (groupsOf[at]?.length ?? 1))),
  );
  const alone = setsOf.map((all) => Math.min(...all.map(({ set }) => set.cost)));
  const greedy = order.reduce((sum, at) => sum + (sets[at]?.cost ?? 0), 0);
  const none = new Set<number>();
  const largest = Math.max(1, ...sets.map((_, at) => newAnswers(problem, at, none)));
  const harmonic = Array.from({ length: largest }, (_, at) => 1 / (at + 1));
  return Math.max(
    shares.reduce((sum, share) => sum + share, 0),
    ...alone,
    greedy / harmonic.reduce((sum, one) => sum + one, 0),
  );
}

function greedyWithin(problem: Problem, budget: number): Cover {
  const { sets, groups } = problem;
  const order = greedyOrder(problem, budget);
  const answersOf = (chosen: readonly number[]): number[] => {
    const done = new Set(chosen.flatMap((at) => problem.groupsOf[at] ?? []));
    return groups.flatMap((group, at) => (done.has(at) ? group : []));
  };
  const single = sets
    .map((_, at) => [at])
    .reduce((a, b) => (answersOf(b).length > answersOf(a).length ? b : a), [] as number[]);
  const chosen = answersOf(single).length > answersOf(order).length ? single : order;
  return coverOf(problem, chosen, answersOf(chosen), 'heuristic', {
    costAtLeast: 0,
    answeredAtMost: Math.min(groups.flat().length, knapsackBound(problem, budget)),
  });
}

/** Answers if sets could be bought in parts and never overlapped. */
function knapsackBound(problem: Problem, budget: number): number {
  const none = new Set<number>();
  const byRatio = problem.sets
    .map(({ cost }, at) => ({ cost, answers: newAnswers(problem, at, none) }))
    .filter(({ answers }) => answers > 0)
    .sort((a, b) => b.answers * a.cost - a.answers * b.cost);
  let left = budget;
  let sum = 0;
  for (const { cost, answers } of byRatio) {
    if (cost > left) return Math.floor(sum + (answers * left) / cost);
    left -= cost;
    sum += answers;
  }
  return sum;
}
