import { describe, expect, it } from 'vitest';
import {
  type DrainDevice,
  type FlushRule,
  type FlushTrigger,
  simulateDrain,
} from '../../../src/simulate/index.ts';
import { isWithin, readCases } from './read-cases.ts';

type Kind = 'idle' | 'periodic' | 'volume' | 'power_up' | 'start';

interface StoredFlush {
  readonly kind: Kind;
  readonly volume_L: number;
  readonly after_s?: number;
  readonly every_s?: number;
  readonly every_L?: number;
  readonly after_idle_s?: number;
  readonly repeat?: boolean;
  readonly drain_fraction?: number;
  readonly anchor?: 'last_flush';
}

interface Inputs {
  readonly pours: readonly { readonly t: number; readonly v: number }[];
  readonly unit: {
    readonly drain_ratio: number;
    readonly clean_flow_Lps?: number;
    readonly min_interval_s?: number;
    readonly quiet?: {
      readonly from_s: number;
      readonly to_s: number;
      readonly mode: 'skip' | 'defer';
    };
    readonly flushes: readonly StoredFlush[];
  };
  readonly horizon_s: number;
  readonly clock0_s: number;
}

interface Expected {
  readonly clean_L: number;
  readonly drain_production_L: number;
  readonly drain_flush_L: number;
  readonly drain_total_L: number;
  readonly flush_counts: Readonly<Record<string, number>>;
  readonly drain_per_clean: number | null;
  readonly recovery: number | null;
  readonly flush_times_s: readonly (readonly [string, number])[];
}

const TRIGGERS: Readonly<Record<Kind, FlushTrigger>> = {
  idle: 'idle',
  periodic: 'interval',
  volume: 'produced',
  power_up: 'power-on',
  start: 'start',
};

/** The stored cases give least interval and quiet hours to the device; here each rule has them. */
function deviceOf({ unit }: Inputs): DrainDevice {
  const flushRules = unit.flushes.map((flush): FlushRule => {
    const afterS = flush.after_s ?? flush.every_s ?? flush.after_idle_s;
    return {
      rule: flush.kind,
      trigger: TRIGGERS[flush.kind],
      volumeL: flush.volume_L,
      ...(afterS === undefined ? {} : { afterS }),
      ...(flush.every_L === undefined ? {} : { afterL: flush.every_L }),
      ...(flush.repeat === undefined ? {} : { repeat: flush.repeat }),
      ...(flush.drain_fraction === undefined ? {} : { drainFraction: flush.drain_fraction }),
      ...(flush.anchor === undefined ? {} : { anchor: 'last-flush' as const }),
      ...(unit.min_interval_s === undefined ? {} : { minIntervalS: unit.min_interval_s }),
      ...(unit.quiet === undefined
        ? {}
        : { quiet: { fromS: unit.quiet.from_s, toS: unit.quiet.to_s, mode: unit.quiet.mode } }),
    };
  });
  return {
    drainRatio: unit.drain_ratio,
    flushRules,
    ...(unit.clean_flow_Lps === undefined ? {} : { cleanFlowLPerMin: unit.clean_flow_Lps * 60 }),
  };
}

// Tolerance: 1e-8 relative as stored with each case, as the cases print nine digits. Times of
// flushes: 1e-6 s, the rules' own measure of one instant.
const TIME_S = 1e-6;

const CASES = readCases<Inputs, Expected>('drain-events.json');

describe('event rules R1 to R13, derived, no published source', () => {
  it('has all twenty stored cases', () => {
    expect(CASES.map(({ id }) => id)).toEqual(
      Array.from({ length: 20 }, (_, k) => `EVT-${String(k + 1).padStart(2, '0')}`),
    );
  });

  it.each(CASES)('$id, drain and flush times: $note', ({ inputs, expected, tolerance }) => {
    const got = simulateDrain(
      deviceOf(inputs),
      { atS: inputs.pours.map(({ t }) => t), volumeL: inputs.pours.map(({ v }) => v) },
      { endS: inputs.horizon_s, clockAtStartS: inputs.clock0_s, recordFlushes: true },
    );
    const figures: [string, number | null, number | null][] = [
      ['clean', got.cleanL, expected.clean_L],
      ['drain while producing', got.producingDrainL, expected.drain_production_L],
      ['drain of flushes', got.flushDrainL, expected.drain_flush_L],
      ['drain in total', got.totalDrainL, expected.drain_total_L],
      ['drain per clean', got.totalDrainRatio, expected.drain_per_clean],
      ['recovery', got.recovery, expected.recovery],
    ];
    for (const [name, value, wanted] of figures) {
      expect(isWithin(value, wanted, tolerance), `${name}: ${value} for ${wanted}`).toBe(true);
    }
    const ran = Object.entries(got.flushCounts).filter(([, count]) => count > 0);
    expect(Object.fromEntries(ran)).toEqual(expected.flush_counts);
    expect(got.flushes?.map(({ rule }) => rule)).toEqual(expected.flush_times_s.map(([k]) => k));
    for (const [index, [, atS]] of expected.flush_times_s.entries()) {
      expect(Math.abs((got.flushes?.[index]?.atS ?? Number.NaN) - atS)).toBeLessThanOrEqual(TIME_S);
    }
  });
});
