/** What sets a flush rule off. */
export type FlushTrigger = 'idle' | 'interval' | 'start' | 'produced' | 'power-on' | 'dump';

/** Hours of the local clock in which an `idle`, `interval` or timed `dump` rule stays quiet. */
export interface QuietHours {
  /** Seconds after local midnight, 0 to 86,400; the hours may run across midnight. */
  readonly fromS: number;
  /** Seconds after local midnight, 0 to 86,400, itself no longer quiet; equal to `fromS`: never. */
  readonly toS: number;
  /** `skip`: a flush that falls due is lost. `defer`: it waits until `toS`. */
  readonly mode: 'skip' | 'defer';
}

/**
 * One rule by which a device spends water on its own. Settings that the trigger has no use for are
 * checked as numbers and otherwise ignored.
 */
export interface FlushRule {
  /** Name under which the flushes are counted; rules of one name are counted together. */
  readonly rule: string;
  readonly trigger: FlushTrigger;
  /**
   * Seconds. `idle`: after the end of a pour. `interval`: between flushes. `start`: least pause
   * before a pour that sets the rule off (left out: none). `dump`: between dumps by time.
   */
  readonly afterS?: number;
  /** Litres poured. `produced`: per flush. `dump`: per dump by volume. */
  readonly afterL?: number;
  /** Litres that one flush or dump spends. */
  readonly volumeL: number;
  /** What it spends: `feed` (left out) or `clean`, product that had to be made first. */
  readonly water?: 'feed' | 'clean';
  /** Share of `volumeL` that reaches the drain, 0 (recirculated) to 1 (left out). */
  readonly drainFraction?: number;
  /** `idle` only: flush again every `afterS` until the next pour. */
  readonly repeat?: boolean;
  /**
   * `idle`: `pour` (left out) counts from the end of each pour, `power-on` also from power-on.
   * `interval`: `power-on` (left out) is a fixed grid, `last-flush` counts from the last flush of
   * any rule.
   */
  readonly anchor?: 'pour' | 'power-on' | 'last-flush';
  /** The flush is dropped when the last flush of any rule is less than this many seconds ago. */
  readonly minIntervalS?: number;
  readonly quiet?: QuietHours;
}

/** How a device spends water: while producing, per start, and by its flush rules. */
export interface DrainDevice {
  /** Litres to drain per litre of clean water while producing. */
  readonly drainRatio: number;
  /** Litres to drain at each start of a pour, besides the ratio; left out: 0. */
  readonly perStartL?: number;
  /** Gives a pour its duration; left out: pours take no time. */
  readonly cleanFlowLPerMin?: number;
  readonly flushRules: readonly FlushRule[];
}

/** Draws of clean water in order of time; the two lists have one length. */
export interface Pours {
  /** Seconds from power-on at which each pour starts. */
  readonly atS: ArrayLike<number>;
  /** Clean litres of each pour. */
  readonly volumeL: ArrayLike<number>;
}

/** Pours as the generators give them. */
export interface PourSeries extends Pours {
  readonly atS: Float64Array;
  readonly volumeL: Float64Array;
}

/** How long the device is watched. Power-on is second 0. */
export interface Horizon {
  readonly endS: number;
  /** Seconds after local midnight at power-on, for quiet hours; left out: 0. */
  readonly clockAtStartS?: number;
  /** True: the result lists every flush. */
  readonly recordFlushes?: boolean;
}

/** One executed flush. Flushes that a `produced` rule owes together are one record. */
export interface FlushRecord {
  readonly rule: string;
  /** Seconds from power-on. */
  readonly atS: number;
}

/** Where the water went. Volumes in litres. */
export interface SimulatedDrain {
  /** Clean water delivered to the user; product spent by a flush is not part of it. */
  readonly cleanL: number;
  /** Drain of the pours: ratio × volume + per-start. */
  readonly producingDrainL: number;
  /** Drain of the flushes and dumps, with the drain of making product that a flush spends. */
  readonly flushDrainL: number;
  readonly totalDrainL: number;
  /** Executed flushes of every rule of the device, 0 where it never ran. */
  readonly flushCounts: Readonly<Record<string, number>>;
  /** Total drain per clean litre; null without clean water. */
  readonly totalDrainRatio: number | null;
  /** Clean per clean and drain together, a fraction; null without clean water. */
  readonly recovery: number | null;
  /** Only when asked for: every executed flush in order. */
  readonly flushes?: readonly FlushRecord[];
}
