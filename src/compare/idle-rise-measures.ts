import type { IdleRiseRow, Spread } from '../model/index.ts';
import { normalQuantile } from '../statistics/index.ts';
import { type Measure, plainMeasure, rangedFigure } from './measure.ts';

/** Half of the last digit of a meter that reads whole numbers. */
const HALF_DIGIT = 0.5;

export interface MeterErrors {
  readonly confidence: number;
  /** How far a meter may be off, as a fraction of its reading. */
  readonly tolerance: number;
}

/**
 * First-draw TDS after each tested pause, and the mean TDS of the water of each scenario.
 *
 * Readings of two meters or scales are never one measure: where the bench has several, each has its
 * own id. A mean that covers only a part of the water of a scenario says so as its outcome.
 * Source: a / √3 of a half-width a, JCGM 100:2008 (GUM), 4.3.7; the error of a meter repeats in every
 * reading, so trials do not narrow it.
 */
export function idleRiseMeasures(rows: readonly IdleRiseRow[], errors: MeterErrors): Measure[] {
  const meters = [...new Set(rows.map(meterOf))];
  const measures = rows.flatMap((row): Measure[] => {
    const suffix = meters.length < 2 ? '' : `.meter-${meters.indexOf(meterOf(row)) + 1}`;
    const base = {
      unit: row.unit,
      direction: 'lower',
      device: row.device,
      variant: row.variant,
    } as const;
    const scale = `${row.meter ?? 'meter not named'}, scale ${row.scale ?? 'not stated'}`;
    if (row.idle_s !== null) {
      const pause = pauseText(row.idle_s);
      const { first_draw_tds: estimate } = row;
      const figure = widened({ low: estimate, estimate, high: estimate }, errors);
      return [
        plainMeasure({
          ...base,
          measure: `idle-rise.first-draw.${pause.id}${suffix}`,
          title: `First-draw TDS after ${pause.words} (${scale})`,
          ...rangedFigure(figure),
        }),
      ];
    }
    if (row.scenario === null) return [];
    const figure = rangedFigure(widened(row.mean_tds, errors));
    const isPart = figure.estimate !== null && (row.covered_share ?? 0) < 1;
    return [
      plainMeasure({
        ...base,
        measure: `idle-rise.mean.${row.scenario}${suffix}`,
        title: `Mean TDS, ${row.scenario} (${scale})`,
        ...figure,
        outcome: isPart ? 'partly-tested' : figure.outcome,
      }),
    ];
  });
  return inOrder(measures);
}

/** Measures together, devices within them in the order of the bench. */
function inOrder(measures: readonly Measure[]): Measure[] {
  const ids = [...new Set(measures.map(({ row }) => row.measure))];
  return ids.flatMap((id) => measures.filter(({ row }) => row.measure === id));
}

function meterOf({ meter, scale, unit }: IdleRiseRow): string {
  return JSON.stringify([meter, scale, unit]);
}

function pauseText(seconds: number): { readonly id: string; readonly words: string } {
  const [size, unit] =
    seconds >= 3600 && seconds % 3600 === 0
      ? [seconds / 3600, 'h']
      : seconds >= 60 && seconds % 60 === 0
        ? [seconds / 60, 'min']
        : [seconds, 's'];
  return { id: `${size}${unit}`, words: `${size} ${unit}` };
}

/** The range with what the meter leaves open at both ends. */
function widened({ low, estimate, high }: Spread, { confidence, tolerance }: MeterErrors): Spread {
  if (estimate === null || low === null || high === null) {
    return { low: null, estimate, high: null };
  }
  const reach = normalQuantile((1 + confidence) / 2) / Math.sqrt(3);
  const open = (reading: number): number => reach * Math.hypot(tolerance * reading, HALF_DIGIT);
  return { low: Math.max(0, low - open(low)), estimate, high: high + open(high) };
}
