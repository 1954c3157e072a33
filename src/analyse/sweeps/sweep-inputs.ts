import type { DrainDevice, FlushRule, PourGroup, StorageTank } from '../../simulate/index.ts';

/** What one input of a sweep changes: a device, or the pours of a scenario. */
export type SweepInput =
  | { readonly kind: 'drain-ratio' | 'per-start' | 'flow' }
  | { readonly kind: 'flush'; readonly rule: string; readonly figure: FlushFigure }
  | { readonly kind: 'tank'; readonly figure: TankFigure }
  | { readonly kind: 'pour' | 'pours-per-day' | 'pour-factor' };

/** A figure of a tank by its name in a sweep, and in the model of its refills. */
export const TANK_FIGURES = {
  shell: 'shellL',
  precharge: 'prechargeKPa',
  'feed-pressure': 'feedKPa',
  stop: 'stopKPa',
  restart: 'restartKPa',
  'permeate-flow': 'openFlowLPerMin',
  'reject-flow': 'rejectFlowLPerMin',
} as const satisfies Record<string, keyof StorageTank>;
export type TankFigure = keyof typeof TANK_FIGURES;

export type FlushFigure = 'volume' | 'after' | 'drain-fraction' | 'min-interval';

/** One input and the values it takes, in the core unit. */
export interface Sweep {
  /** As it is named in the output, such as `flush.idle-flush.volume`. */
  readonly name: string;
  readonly input: SweepInput;
  readonly values: readonly number[];
  readonly unit: string;
}

/** A device and the pours it is played with. */
export interface SweepPoint {
  readonly model: DrainDevice;
  /** Null without the refill model of a tank. */
  readonly tank: StorageTank | null;
  /** Null for a recording. */
  readonly groups: readonly PourGroup[] | null;
  /** Every pour is this many times as large. */
  readonly pourFactor: number;
}

/**
 * A point with one input set to a value; null where it has no such input: another rule, a recording
 * whose pours are what they were, a rule without that figure, a tank that has no ratio of its own.
 *
 * `after` of a rule that counts litres takes litres, of one that counts time seconds; the unit the
 * value was written with says which rules are meant.
 */
export function withInput(point: SweepPoint, sweep: Sweep, value: number): SweepPoint | null {
  const { input, unit } = sweep;
  const { model, groups, tank } = point;
  switch (input.kind) {
    case 'drain-ratio':
      return tank === null ? { ...point, model: { ...model, drainRatio: value } } : null;
    case 'per-start':
      return tank === null ? { ...point, model: { ...model, perStartL: value } } : null;
    case 'tank':
      return tank === null
        ? null
        : { ...point, tank: { ...tank, [TANK_FIGURES[input.figure]]: value } };
    case 'flow':
      return { ...point, model: { ...model, cleanFlowLPerMin: value } };
    case 'flush':
      return withFlush(point, input.rule, input.figure, value, unit);
    case 'pour-factor':
      return { ...point, pourFactor: point.pourFactor * value };
    case 'pour':
      return groups === null
        ? null
        : { ...point, groups: groups.map((group) => ({ ...group, volumeL: value })) };
    case 'pours-per-day':
      return groups === null
        ? null
        : { ...point, groups: groups.map((group) => ({ ...group, poursPerDay: value })) };
  }
}

function withFlush(
  point: SweepPoint,
  name: string,
  figure: FlushFigure,
  value: number,
  unit: string,
): SweepPoint | null {
  let isChanged = false;
  const flushRules = point.model.flushRules.map((rule) => {
    const changed = rule.rule === name ? changedRule(rule, figure, value, unit) : null;
    if (changed !== null) isChanged = true;
    return changed ?? rule;
  });
  return isChanged ? { ...point, model: { ...point.model, flushRules } } : null;
}

function changedRule(
  rule: FlushRule,
  figure: FlushFigure,
  value: number,
  unit: string,
): FlushRule | null {
  switch (figure) {
    case 'volume':
      return { ...rule, volumeL: value };
    case 'drain-fraction':
      return { ...rule, drainFraction: value };
    case 'min-interval':
      return { ...rule, minIntervalS: value };
    case 'after':
      if (unit === 'L') return rule.afterL === undefined ? null : { ...rule, afterL: value };
      return rule.afterS === undefined ? null : { ...rule, afterS: value };
  }
}
