/** Product samples of one device that a trip to the tap may bring home for one lab package. */
export interface TripOption {
  /** Options of one group share the feed sample: same event, same package. */
  readonly group: string;
  /** Cost of that feed sample. */
  readonly feedCost: number;
  /** One option a device and group is taken at most. */
  readonly device: string;
  readonly cost: number;
  /** Ids of the open verdicts it settles. */
  readonly settles: readonly string[];
}

/** One group's feed and the options taken with it. */
export interface Trip<O extends TripOption> {
  readonly group: string;
  readonly options: readonly O[];
  readonly cost: number;
  /** Without what was settled before. */
  readonly settles: readonly string[];
}

/**
 * The trip that settles most open verdicts for its money.
 *
 * Devices of a group share its feed, so a second device may be cheaper than it looks alone. For a price
 * L of a verdict an option is worth taking where it settles more than cost/L; the largest ratio is where
 * all options worth taking just pay for the feed (Dinkelbach's method). Over all choices of samples of
 * all groups no ratio is larger: joining groups cannot beat the better of the two.
 * @param settled ids settled already; they count no more
 * @param paid groups whose feed is paid for
 * @param budget what a trip may cost; dearer ones lose their least worthwhile devices
 * @returns null where nothing more can be settled
 * Source: W. Dinkelbach (1967), On nonlinear fractional programming, Management Science 13, 492-498
 * (from memory). Checked against all choices in the tests.
 */
export function bestTrip<O extends TripOption>(
  options: readonly O[],
  settled: ReadonlySet<string>,
  paid: ReadonlySet<string>,
  budget = Number.POSITIVE_INFINITY,
): Trip<O> | null {
  let best: Trip<O> | null = null;
  for (const [group, own] of byGroup(options)) {
    const feedCost = paid.has(group) ? 0 : (own[0]?.feedCost ?? 0);
    const trip = bestOfGroup(group, own, settled, feedCost, budget);
    if (trip !== null && (best === null || ratioOf(trip) > ratioOf(best))) best = trip;
  }
  return best;
}

function byGroup<O extends TripOption>(options: readonly O[]): Map<string, O[]> {
  const groups = new Map<string, O[]>();
  for (const option of options) {
    const group = groups.get(option.group) ?? [];
    groups.set(option.group, group);
    group.push(option);
  }
  return groups;
}

/** Verdicts for money; without any cost the number of verdicts decides. */
function ratioOf(trip: { readonly cost: number; readonly settles: readonly string[] }): number {
  return trip.settles.length / Math.max(trip.cost, Number.MIN_VALUE);
}

interface Weighed<O> {
  readonly option: O;
  readonly value: number;
}

function bestOfGroup<O extends TripOption>(
  group: string,
  options: readonly O[],
  settled: ReadonlySet<string>,
  feedCost: number,
  budget: number,
): Trip<O> | null {
  let weighed = options
    .map((option): Weighed<O> => {
      return { option, value: option.settles.filter((id) => !settled.has(id)).length };
    })
    .filter(({ value, option }) => value > 0 && feedCost + option.cost <= budget);
  while (weighed.length > 0) {
    const taken = largestRatio(weighed, feedCost);
    const trip = tripOf(group, taken, settled, feedCost);
    if (trip.cost <= budget) return trip;
    const worst = taken.reduce((a, b) =>
      b.value * a.option.cost < a.value * b.option.cost ? b : a,
    );
    weighed = weighed.filter((one) => one !== worst);
  }
  return null;
}

function largestRatio<O extends TripOption>(
  weighed: readonly Weighed<O>[],
  feedCost: number,
): Weighed<O>[] {
  const devices = [...new Set(weighed.map(({ option }) => option.device))].map((device) =>
    weighed.filter(({ option }) => option.device === device),
  );
  let ratio = 0;
  for (;;) {
    const taken = devices.flatMap((own) => worthTaking(own, ratio));
    const cost = taken.reduce((sum, { option }) => sum + option.cost, feedCost);
    const value = taken.reduce((sum, one) => sum + one.value, 0);
    const next = value / Math.max(cost, Number.MIN_VALUE);
    // The ratio rises at every step until it stands.
    if (!(next > ratio)) return taken;
    ratio = next;
  }
}

/** The option of one device with the largest surplus over its cost; none where all fall short. */
function worthTaking<O extends TripOption>(
  own: readonly Weighed<O>[],
  ratio: number,
): Weighed<O>[] {
  const surplus = ({ option, value }: Weighed<O>): number => value - ratio * option.cost;
  const best = own.reduce((a, b) => (surplus(b) > surplus(a) ? b : a));
  // What just pays is taken: it settles more at the same ratio.
  return surplus(best) >= -1e-9 ? [best] : [];
}

function tripOf<O extends TripOption>(
  group: string,
  taken: readonly Weighed<O>[],
  settled: ReadonlySet<string>,
  feedCost: number,
): Trip<O> {
  const ids = new Set(taken.flatMap(({ option }) => option.settles));
  return {
    group,
    options: taken.map(({ option }) => option),
    cost: taken.reduce((sum, { option }) => sum + option.cost, feedCost),
    settles: [...ids].filter((id) => !settled.has(id)),
  };
}

/**
 * Trips one after another, each the best for its money after those before it, until nothing more can
 * be settled or the budget is spent.
 *
 * @param confirm what the trips so far settle together, judged anew; a trip that adds nothing to it is
 * dropped with its options
 */
export function rankTrips<O extends TripOption>(
  options: readonly O[],
  confirm: (trips: readonly Trip<O>[]) => ReadonlySet<string>,
  budget = Number.POSITIVE_INFINITY,
): Trip<O>[] {
  const trips: Trip<O>[] = [];
  let left = [...options];
  let settled: ReadonlySet<string> = new Set();
  let spent = 0;
  for (;;) {
    const paid = new Set(trips.map(({ group }) => group));
    const trip = bestTrip(left, settled, paid, budget - spent);
    if (trip === null) return trips;
    left = left.filter((option) => !trip.options.includes(option));
    const after = confirm([...trips, trip]);
    const added = [...after].filter((id) => !settled.has(id));
    if (added.length === 0) continue;
    trips.push({ ...trip, settles: added });
    settled = after;
    spent += trip.cost;
  }
}
