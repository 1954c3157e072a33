import { type Bench, type BenchRow, STANDARD } from '../../model/index.ts';

/** Two readings further apart in time than this belong to two pauses, seconds. */
const ONE_PAUSE_S = 3600;

/** Readings that may be compared: one device and state, one meter, one scale, one unit. */
export interface IdleGroup {
  readonly device: string;
  readonly variant: string;
  readonly meter: string | null;
  readonly scale: string | null;
  /** What the readings measure: a ppm of a pen meter is taken as mg/L on its scale. */
  readonly dimension: string;
  readonly unit: 'ppm' | 'mg/L';
  /** In order of the pause, the shortest first. */
  readonly profiles: readonly IdleProfile[];
  readonly rows: readonly BenchRow<'idleTds'>[];
}

/** The TDS of the water after one pause, by the volume drawn since: a step for each portion. */
export interface IdleProfile {
  readonly idleS: number;
  /** Litres at which each step ends. */
  readonly toL: readonly number[];
  readonly tds: readonly number[];
  /** How many pauses of this length were tested. */
  readonly trials: number;
  /** Feed by the same meter; null where not read. */
  readonly feedTds: number | null;
}

/** All readings of idle-tds.csv by what may be compared, in the order of the file. */
export function idleGroups(bench: Bench): IdleGroup[] {
  const groups = new Map<string, BenchRow<'idleTds'>[]>();
  for (const row of bench.tables.idleTds) {
    const { device, variant, meter, scale, tds } = row.values;
    const key = JSON.stringify([device, variant ?? STANDARD, meter, scale, tds.dimension]);
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()].flatMap((rows) => {
    const [first] = rows;
    if (first === undefined) return [];
    const { device, variant, meter, scale, tds } = first.values;
    const pauses = [...new Set(rows.map((row) => row.values.idle.value))].sort((a, b) => a - b);
    return {
      device,
      variant: variant ?? STANDARD,
      meter,
      scale: scale?.toLowerCase() ?? null,
      dimension: tds.dimension,
      unit: /ppm/i.test(tds.text) ? 'ppm' : 'mg/L',
      profiles: pauses.map((idleS) =>
        profileOf(
          idleS,
          rows.filter((row) => row.values.idle.value === idleS),
        ),
      ),
      rows,
    };
  });
}

interface Steps {
  readonly toL: readonly number[];
  readonly tds: readonly number[];
}

function profileOf(idleS: number, rows: readonly BenchRow<'idleTds'>[]): IdleProfile {
  const trials = trialsOf(rows).map(stepsOf);
  const toL = [...new Set(trials.flatMap((trial) => trial.toL))].sort((a, b) => a - b);
  const feeds = rows.flatMap((row) => row.values.feed_tds?.value ?? []);
  return {
    idleS,
    toL,
    tds: toL.map((end, i) => {
      const middle = ((toL[i - 1] ?? 0) + end) / 2;
      return mean(trials.map((trial) => tdsAt(trial, middle)));
    }),
    trials: trials.length,
    feedTds: feeds.length === 0 ? null : mean(feeds),
  };
}

/** A new trial starts where the clock jumps, or where a cumulative reading falls back. */
function trialsOf(rows: readonly BenchRow<'idleTds'>[]): BenchRow<'idleTds'>[][] {
  const trials: BenchRow<'idleTds'>[][] = [];
  for (const row of rows) {
    const current = trials.at(-1);
    const before = current?.at(-1);
    if (current === undefined || before === undefined || isNewTrial(before, row)) {
      trials.push([row]);
    } else current.push(row);
  }
  return trials;
}

function isNewTrial(before: BenchRow<'idleTds'>, row: BenchRow<'idleTds'>): boolean {
  const [a, b] = [before.values.at, row.values.at];
  const hasJumped = a !== null && b !== null && Math.abs(b.seconds - a.seconds) > ONE_PAUSE_S;
  const hasFallen =
    row.values.reading === 'cumulative' && row.values.drawn.value <= before.values.drawn.value;
  return hasJumped || hasFallen;
}

/** A cumulative reading is of the water since the reading before it. */
function stepsOf(trial: readonly BenchRow<'idleTds'>[]): Steps {
  const toL: number[] = [];
  const tds: number[] = [];
  for (const { values } of trial) {
    const before = toL.at(-1) ?? 0;
    const end = values.reading === 'cumulative' ? values.drawn.value : before + values.drawn.value;
    if (!(end > before)) continue;
    toL.push(end);
    tds.push(values.tds.value);
  }
  return { toL, tds };
}

/** TDS at a volume drawn; after the last step that of the last step. */
export function tdsAt(steps: Steps, litres: number): number {
  const index = steps.toL.findIndex((end) => litres < end);
  return steps.tds[index === -1 ? steps.tds.length - 1 : index] ?? Number.NaN;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
