import type { DrainDevice, FlushRule, QuietHours } from './drain-device.ts';

/** What becomes of a timer once it has fired (or its firing was dropped). */
export const ONCE = 0;
export const AGAIN = 1;
export const ON_GRID = 2;
export const SINCE_FLUSH = 3;

export const NEVER_QUIET = 0;
export const SKIPS = 1;
export const DEFERS = 2;

/** Rules that fire at an event (start or end of a pour), one entry per rule, in row order. */
export interface EventRules {
  readonly row: Int32Array;
  /** Seconds for start rules, litres for volume rules. */
  readonly after: Float64Array;
}

/** Rules that fire by time: grid rules first, then idle rules, each in row order. */
export interface TimerRules {
  readonly row: Int32Array;
  readonly afterS: Float64Array;
  readonly next: Uint8Array;
  readonly firstDueS: Float64Array;
  readonly quiet: Uint8Array;
  readonly quietFromS: Float64Array;
  readonly quietToS: Float64Array;
  /** How many of the timers are grid rules; a pour delays these and cancels the idle ones. */
  readonly gridCount: number;
  readonly anySinceFlush: boolean;
}

/** A device's flush rules sorted by what sets them off, as columns of numbers. */
export interface CompiledRules {
  readonly powerOnRows: Int32Array;
  readonly starts: EventRules;
  /** The shortest pause that sets off a start rule; infinite without such rules. */
  readonly leastPauseS: number;
  readonly volumes: EventRules;
  readonly timers: TimerRules;
  /** By row of the device. */
  readonly minIntervalS: Float64Array;
  readonly drainPerFlushL: Float64Array;
}

/**
 * Litres one flush of a rule sends to drain, with the drain of making the product it spends.
 *
 * The product of a clean-water flush has to be made: that drains ratio × volume, whatever becomes
 * of the product itself.
 */
export function drainPerFlush(rule: FlushRule, drainRatio: number): number {
  const making = rule.water === 'clean' ? drainRatio * rule.volumeL : 0;
  return rule.volumeL * (rule.drainFraction ?? 1) + making;
}

interface Row {
  readonly rule: FlushRule;
  readonly row: number;
}

/** Turns the rules of a checked device into columns for the event loop. */
export function compileFlushRules(device: DrainDevice): CompiledRules {
  const rows: Row[] = device.flushRules.map((rule, row) => ({ rule, row }));
  const of = (chosen: (rule: FlushRule) => boolean) => rows.filter(({ rule }) => chosen(rule));
  const starts = eventRules(
    of(({ trigger }) => trigger === 'start'),
    ({ afterS }) => afterS ?? 0,
  );
  return {
    powerOnRows: Int32Array.from(
      of(({ trigger }) => trigger === 'power-on'),
      ({ row }) => row,
    ),
    starts,
    leastPauseS: starts.after.reduce((least, afterS) => Math.min(least, afterS), Infinity),
    volumes: eventRules(of(isByVolume), ({ afterL }) => afterL ?? 0),
    timers: timerRules(
      of(isByGrid),
      of(({ trigger }) => trigger === 'idle'),
    ),
    minIntervalS: Float64Array.from(rows, ({ rule }) => rule.minIntervalS ?? 0),
    drainPerFlushL: Float64Array.from(rows, ({ rule }) => drainPerFlush(rule, device.drainRatio)),
  };
}

/** True for rules set off by litres poured: `produced`, and a `dump` by volume. */
export function isByVolume(rule: FlushRule): boolean {
  return rule.trigger === 'produced' || (rule.trigger === 'dump' && rule.afterL !== undefined);
}

function isByGrid(rule: FlushRule): boolean {
  return rule.trigger === 'interval' || (rule.trigger === 'dump' && rule.afterS !== undefined);
}

function eventRules(rows: readonly Row[], after: (rule: FlushRule) => number): EventRules {
  return {
    row: Int32Array.from(rows, ({ row }) => row),
    after: Float64Array.from(rows, ({ rule }) => after(rule)),
  };
}

function timerRules(grid: readonly Row[], idle: readonly Row[]): TimerRules {
  const rows = [...grid, ...idle];
  const next = Uint8Array.from(rows, ({ rule }) => afterFiring(rule));
  return {
    row: Int32Array.from(rows, ({ row }) => row),
    afterS: Float64Array.from(rows, ({ rule }) => rule.afterS ?? 0),
    next,
    firstDueS: Float64Array.from(rows, ({ rule }) => firstDue(rule)),
    quiet: Uint8Array.from(rows, ({ rule }) => quietWord(rule.quiet)),
    quietFromS: Float64Array.from(rows, ({ rule }) => rule.quiet?.fromS ?? 0),
    quietToS: Float64Array.from(rows, ({ rule }) => rule.quiet?.toS ?? 0),
    gridCount: grid.length,
    anySinceFlush: next.includes(SINCE_FLUSH),
  };
}

function afterFiring(rule: FlushRule): number {
  if (rule.trigger === 'idle') return rule.repeat === true ? AGAIN : ONCE;
  return rule.anchor === 'last-flush' ? SINCE_FLUSH : ON_GRID;
}

/** An idle rule waits for a first pour unless it is armed at power-on. */
function firstDue(rule: FlushRule): number {
  const isUnarmed = rule.trigger === 'idle' && rule.anchor !== 'power-on';
  return isUnarmed ? Number.POSITIVE_INFINITY : (rule.afterS ?? 0);
}

function quietWord(quiet: QuietHours | undefined): number {
  if (quiet === undefined) return NEVER_QUIET;
  return quiet.mode === 'skip' ? SKIPS : DEFERS;
}
