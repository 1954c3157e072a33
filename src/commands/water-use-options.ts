import { type Bench, STANDARD } from '../model/index.ts';
import type { Filters } from './filters.ts';

export interface WaterUseOptions extends Filters {
  /** Seed of everything drawn at random; the seed of the bench where it is left out. */
  readonly seed?: number | null;
  /** Draws behind each range, 0 for none; `water_use.draws` of the bench where it is left out. */
  readonly draws?: number | null;
}

export function seedOf(bench: Bench, options: WaterUseOptions): number {
  return options.seed ?? bench.settings.seed;
}

export function drawCount(bench: Bench, options: WaterUseOptions): number {
  return options.draws ?? bench.settings.water_use.draws;
}

/** Every setting and method water use depends on. */
export function waterUseSettings(bench: Bench, options: WaterUseOptions): Record<string, unknown> {
  const { instruments, water_use, people } = bench.settings;
  return {
    scenario_days: bench.settings.scenario_days,
    seed: seedOf(bench, options),
    measures: bench.settings.measures ?? null,
    drain_ratio: 'all drain / all clean water of the runs that count; per-start fitted where told',
    flush_volume: 'as stated, else the mean of the measured flushes',
    variants: `${STANDARD}, flush-off and those of variants.csv`,
    people: people ?? null,
    water_use,
    instruments: { ...instruments, vessel_tolerance: instruments.vessel_tolerance ?? null },
  };
}

/** How ranges were made, for outputs that hold them. */
export function rangeSettings(bench: Bench, options: WaterUseOptions): Record<string, unknown> {
  return {
    draws: drawCount(bench, options),
    confidence: bench.settings.confidence,
    ranges:
      'Monte Carlo over drain ratio, drain per start, flush volumes and pour size, and over years ' +
      'where pours are random; central quantiles',
  };
}
