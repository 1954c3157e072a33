// A second way to play pours, for comparison only: it walks from second to second and keeps
// counters, where the engine jumps from due time to due time. Slow, and for whole seconds and whole
// millilitres only. Written from the rules in SOURCE.md.
import type { DrainDevice, FlushRule, Horizon, Pours } from '../../../src/simulate/index.ts';

const DAY = 86_400;

interface WatchedRule {
  readonly rule: FlushRule;
  /** Idle rules: a pour has ended (or power-on armed them) and nothing has happened since. */
  isArmed: boolean;
  /** Idle rules and intervals since the last flush: seconds counted. */
  waited: number;
  /** Time rules: the flush should have happened, or happens now. */
  isOwed: boolean;
  /** Time rules: quiet hours have been met, and the flush waits for their end. */
  isHeld: boolean;
  /** Time rules: their end has come, the clock is not looked at again. */
  isReleased: boolean;
  millilitres: number;
}

export interface SecondBySecond {
  cleanL: number;
  producingDrainL: number;
  flushDrainL: number;
  readonly flushes: { rule: string; atS: number }[];
  readonly flushCounts: Record<string, number>;
}

export function playSecondBySecond(
  device: DrainDevice,
  pours: Pours,
  horizon: Horizon,
): SecondBySecond {
  const watched = device.flushRules.map((rule) => watch(rule));
  const inOrder = [
    ...watched.filter(({ rule }) => isClockwork(rule)),
    ...watched.filter(({ rule }) => rule.trigger === 'idle'),
  ];
  const result: SecondBySecond = {
    cleanL: 0,
    producingDrainL: 0,
    flushDrainL: 0,
    flushes: [],
    flushCounts: Object.fromEntries(device.flushRules.map(({ rule }) => [rule, 0])),
  };
  let lastFlush: number | null = null;
  let lastEnd = 0;
  let nextPour = 0;
  let pourEndsAt: number | null = null;

  const clock = (t: number) => (t + (horizon.clockAtStartS ?? 0)) % DAY;

  const execute = (one: WatchedRule, t: number, times: number) => {
    const { rule } = one;
    lastFlush = t;
    result.flushes.push({ rule: rule.rule, atS: t });
    result.flushCounts[rule.rule] = (result.flushCounts[rule.rule] ?? 0) + times;
    for (let k = 0; k < times; k++) {
      result.flushDrainL += rule.volumeL * (rule.drainFraction ?? 1);
      if (rule.water === 'clean') result.flushDrainL += rule.volumeL * device.drainRatio;
    }
    for (const other of watched) if (countsFromFlush(other.rule)) forget(other);
  };

  const isTooSoon = ({ minIntervalS }: FlushRule, t: number) =>
    minIntervalS !== undefined && lastFlush !== null && t - lastFlush < minIntervalS;

  const fireWhatIsDue = (t: number) => {
    for (const one of inOrder) {
      const { rule } = one;
      if (rule.trigger === 'idle') {
        if (one.isArmed && one.waited >= (rule.afterS ?? 0)) one.isOwed = true;
      }
      if (!one.isOwed || one.isHeld) continue;
      if (!one.isReleased && isQuiet(rule, clock(t))) {
        if (rule.quiet?.mode === 'defer') {
          one.isHeld = true;
          continue;
        }
        settle(one);
        continue;
      }
      settle(one);
      if (!isTooSoon(rule, t)) execute(one, t, 1);
    }
  };

  const finishPour = (t: number, litres: number) => {
    lastEnd = t;
    for (const one of watched) {
      const { rule } = one;
      if (rule.trigger === 'idle') {
        forget(one);
        one.isArmed = true;
      }
    }
    for (const one of watched) {
      const { rule } = one;
      if (rule.trigger !== 'produced' && rule.trigger !== 'dump') continue;
      if (rule.afterL === undefined) continue;
      const mark = Math.round(rule.afterL * 1000);
      one.millilitres += Math.round(litres * 1000);
      if (one.millilitres < mark || isTooSoon(rule, t)) continue;
      let times = 0;
      while (one.millilitres >= mark) {
        one.millilitres -= mark;
        times++;
      }
      execute(one, t, times);
    }
  };

  const startPour = (t: number, litres: number) => {
    for (const one of watched) {
      if (one.rule.trigger !== 'start' || t - lastEnd < (one.rule.afterS ?? 0)) continue;
      if (!isTooSoon(one.rule, t)) execute(one, t, 1);
    }
    for (const one of watched) {
      if (one.rule.trigger !== 'idle') continue;
      forget(one);
      one.isArmed = false;
    }
    result.cleanL += litres;
    result.producingDrainL += device.drainRatio * litres + (device.perStartL ?? 0);
  };

  for (let t = 0; t <= horizon.endS; t++) {
    if (t === 0) {
      for (const one of watched) if (one.rule.trigger === 'power-on') execute(one, 0, 1);
    } else {
      for (const one of watched) letOneSecondPass(one, t, clock(t));
    }
    if (pourEndsAt === t) {
      pourEndsAt = null;
      finishPour(t, pours.volumeL[nextPour - 1] ?? 0);
    }
    if (pourEndsAt !== null) continue;
    fireWhatIsDue(t);
    while (pourEndsAt === null && pours.atS[nextPour] === t) {
      const litres = pours.volumeL[nextPour] ?? 0;
      nextPour++;
      startPour(t, litres);
      const lasts =
        device.cleanFlowLPerMin === undefined
          ? 0
          : Math.round((litres / device.cleanFlowLPerMin) * 60);
      if (lasts > 0) {
        pourEndsAt = t + lasts;
      } else {
        finishPour(t, litres);
        fireWhatIsDue(t);
      }
    }
  }
  return result;
}

function watch(rule: FlushRule): WatchedRule {
  return {
    rule,
    isArmed: rule.trigger === 'idle' && rule.anchor === 'power-on',
    waited: 0,
    isOwed: false,
    isHeld: false,
    isReleased: false,
    millilitres: 0,
  };
}

function letOneSecondPass(one: WatchedRule, t: number, clock: number): void {
  const { rule } = one;
  if (one.isHeld && clock === (rule.quiet?.toS ?? 0) % DAY) {
    one.isHeld = false;
    one.isReleased = true;
  }
  if (rule.trigger === 'idle') {
    if (one.isArmed) one.waited++;
  } else if (countsFromFlush(rule)) {
    one.waited++;
    if (one.waited >= (rule.afterS ?? 0)) one.isOwed = true;
  } else if (isClockwork(rule) && t % (rule.afterS ?? 0) === 0) {
    one.isOwed = true;
  }
}

/** Interval and timed dump. */
function isClockwork(rule: FlushRule): boolean {
  return rule.trigger === 'interval' || (rule.trigger === 'dump' && rule.afterS !== undefined);
}

function countsFromFlush(rule: FlushRule): boolean {
  return rule.trigger === 'interval' && rule.anchor === 'last-flush';
}

/** What was owed is done or dropped; a repeat counts from here. */
function settle(one: WatchedRule): void {
  forget(one);
  if (one.rule.trigger === 'idle') one.isArmed = one.rule.repeat === true;
}

function forget(one: WatchedRule): void {
  one.waited = 0;
  one.isOwed = false;
  one.isHeld = false;
  one.isReleased = false;
}

function isQuiet({ quiet }: FlushRule, clock: number): boolean {
  if (quiet === undefined || quiet.fromS === quiet.toS) return false;
  let second = quiet.fromS;
  // From `fromS` forward to `toS`, through midnight where `toS` is the smaller.
  const lasts = quiet.toS > quiet.fromS ? quiet.toS - quiet.fromS : quiet.toS + DAY - quiet.fromS;
  if (clock < second) second -= DAY;
  return clock - second < lasts;
}
