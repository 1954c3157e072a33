import type { DrainCurve, WaterUse, WaterUseFact } from '../../analyse/index.ts';
import type { BreakEvenRow, Spread, WaterCurveRow } from '../../model/index.ts';
import { atMostDigits, significant } from '../format-number.ts';
import { volumeText } from '../format-quantity.ts';
import type { View } from '../view.ts';

const NOT_TESTED = 'not tested';

function figure(spread: Spread, digits: number): string {
  return spread.estimate === null ? NOT_TESTED : significant(spread.estimate, digits);
}

/** `1.2 to 1.6`, the lower end rounded down and the upper one up; empty where it is not known. */
export function rangeText(low: number | null, high: number | null, digits = 3): string {
  if (low === null || high === null) return '';
  return `${outward(low, digits, 'down')} to ${outward(high, digits, 'up')}`;
}

function outward(value: number, digits: number, direction: 'down' | 'up'): string {
  const text = significant(value, digits);
  const isInside = direction === 'down' ? Number(text) > value : Number(text) < value;
  if (!isInside) return text;
  const places = (text.split('.')[1] ?? '').length;
  const step =
    places === 0 ? 10 ** Math.max(0, Math.floor(Math.log10(value)) + 1 - digits) : 10 ** -places;
  const moved = Number(text) + (direction === 'down' ? -step : step);
  return moved.toFixed(places);
}

/** One table for each scenario: what goes to the drain in a day and in a year. */
export function waterUseViews(use: WaterUse, facts: readonly WaterUseFact[]): View[] {
  return use.scenarios.flatMap((scenario) => {
    const own = facts.filter((fact) => fact.scenario === scenario);
    return own.length === 0 ? [] : scenarioView(scenario.name, own);
  });
}

function scenarioView(name: string, facts: readonly WaterUseFact[]): View {
  const clean = facts.find(({ row }) => row.clean_L_per_day.estimate !== null)?.row.clean_L_per_day;
  const hasRange = facts.some(({ row }) => row.total_drain_ratio.low !== null);
  const hasTank = facts.some(({ drain }) => drain.hasTank);
  return {
    caption:
      `${name}: ${clean === undefined ? 'no device could be played' : `${figure(clean, 3)} L of clean water a day`}` +
      `; ${ratioRange(facts)}`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      { head: 'Drain while producing, L/day', align: 'right' },
      { head: 'Drain of flushes, L/day', align: 'right' },
      { head: 'Flushes a day', align: 'right' },
      { head: 'Total drain, L per clean L', align: 'right' },
      ...(hasRange ? ([{ head: 'Range', align: 'right' }] as const) : []),
      { head: 'Recovery, %', align: 'right' },
      { head: 'Drain, L/year', align: 'right' },
    ],
    rows: facts.map(({ row, drain }) => [
      drain.hasTank ? `${row.device} [t]` : row.device,
      row.variant,
      figure(row.producing_drain_L_per_day, 3),
      figure(row.flush_drain_L_per_day, 3),
      figure(row.flushes_per_day, 3),
      ratioText(row.total_drain_ratio.estimate),
      ...(hasRange ? [rangeText(row.total_drain_ratio.low, row.total_drain_ratio.high)] : []),
      row.recovery.estimate === null ? NOT_TESTED : significant(row.recovery.estimate * 100, 3),
      figure(row.drain_L_per_year, 3),
    ]),
    legend: [
      'Drain goes to the sewer; a device without a drain line drains 0.',
      ...(hasRange
        ? [
            'Range: what the measurements, the assumed spread of pour sizes and, where pours are random, the years leave open.',
          ]
        : []),
      ...(hasTank
        ? [
            '[t] storage tank: the ratio holds for the draw size it was measured at; other draws differ.',
          ]
        : []),
    ],
  };
}

/** L to drain per litre of clean water, three digits. */
export function ratioText(ratio: number | null): string {
  return ratio === null ? NOT_TESTED : significant(ratio, 3);
}

function ratioRange(facts: readonly WaterUseFact[]): string {
  const ratios = facts.flatMap(({ row, drain }) =>
    drain.device.values.drain_line === 'yes' ? (row.total_drain_ratio.estimate ?? []) : [],
  );
  if (ratios.length === 0) return 'no total drain ratio is known';
  const low = significant(Math.min(...ratios), 3);
  const high = significant(Math.max(...ratios), 3);
  return `devices with a drain line send ${low === high ? low : `from ${low} to ${high}`} L to drain per clean litre`;
}

/** Total drain ratio against pour size: of pours that stand alone, or of so many pours a day. */
export function curveView(
  rows: readonly WaterCurveRow[],
  curves: readonly DrainCurve[],
  isRandom = false,
): View {
  const sizes = [...new Set(rows.map((row) => row.pour_mL))];
  const counts = [...new Set(rows.map((row) => row.pours_per_day))];
  const isAlone = counts.every((count) => count === null);
  if (!isAlone && sizes.length === 1) return dailyView(rows, isRandom);
  const excluded = curves.flatMap(({ drain, isolated }) =>
    isolated === null || isolated.excludedRules.length === 0
      ? []
      : `${drain.device.values.device} (${drain.variant}): ${isolated.excludedRules.join(', ')}`,
  );
  return {
    caption: isAlone
      ? 'Litres to drain per clean litre of a pour that stands alone, by pour size'
      : 'Litres to drain per clean litre, by pour size and pours a day',
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      ...(isAlone ? [] : [{ head: 'Pours a day', align: 'right' } as const]),
      ...sizes.map((size) => ({ head: volumeText(size / 1000), align: 'right' }) as const),
    ],
    rows: curves.flatMap(({ drain }) =>
      counts.map((count) => [
        drain.device.values.device,
        drain.variant,
        ...(count === null ? [] : [String(count)]),
        ...sizes.map((size) => {
          const row = rows.find(
            (item) =>
              item.device === drain.device.values.device &&
              item.variant === drain.variant &&
              item.pour_mL === size &&
              item.pours_per_day === count,
          );
          return ratioText(row?.total_drain_ratio ?? null);
        }),
      ]),
    ),
    legend: isAlone
      ? [
          'A pour alone bears its start and one flush after it; pours in quick succession share them.',
          ...(excluded.length === 0
            ? []
            : [`Rules that do not depend on a pour stay out: ${excluded.join('; ')}.`]),
        ]
      : [dailyLegend(isRandom)],
  };
}

function dailyLegend(isRandom: boolean): string {
  return isRandom
    ? 'Pours at random from 07:00 to 22:00 every day, so many on average; all flush rules at work. A range holds the spread of years.'
    : 'Pours spread evenly from 07:00 to 22:00 every day, all flush rules at work.';
}

/** One pour size against pours a day: total drain ratio with its range, and recovery. */
function dailyView(rows: readonly WaterCurveRow[], isRandom: boolean): View {
  const size = volumeText((rows[0]?.pour_mL ?? 0) / 1000);
  return {
    caption: `Litres to drain per clean litre in pours of ${size}, by pours a day`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      { head: 'Pours a day', align: 'right' },
      { head: 'Total drain, L per clean L', align: 'right' },
      { head: 'Range', align: 'right' },
      { head: 'Recovery, %', align: 'right' },
      { head: 'Range', align: 'right' },
    ],
    rows: rows.map(({ device, variant, pours_per_day, total_drain_ratio, low, high, recovery }) => [
      device,
      variant,
      String(pours_per_day ?? ''),
      ratioText(total_drain_ratio),
      rangeText(low, high),
      recovery === null ? '' : significant(recovery * 100, 3),
      low === null || high === null ? '' : rangeText(100 / (1 + high), 100 / (1 + low)),
    ]),
    legend: [dailyLegend(isRandom)],
  };
}

/** Pour sizes at which two devices drain the same. */
export function breakEvenView(rows: readonly BreakEvenRow[]): View {
  const found = rows.filter((row) => row.pour_mL !== null);
  const hasRange = rows.some((row) => row.low_mL !== null);
  return {
    caption:
      found.length === 0
        ? 'No two devices change places: the one that drains less does so at every pour size'
        : `${found.length} of ${rows.length} pairs change places at some pour size`,
    columns: [
      { head: 'Device A', align: 'left' },
      { head: 'Variant A', align: 'left' },
      { head: 'Device B', align: 'left' },
      { head: 'Variant B', align: 'left' },
      { head: 'Same drain at a pour of', align: 'right' },
      ...(hasRange ? ([{ head: 'Not told apart', align: 'right' }] as const) : []),
    ],
    rows: rows.map((row) => [
      row.device_a,
      row.variant_a,
      row.device_b,
      row.variant_b,
      row.pour_mL === null ? 'none' : `${atMostDigits(row.pour_mL, 3)} mL`,
      ...(hasRange ? [mixedText(row)] : []),
    ]),
    legend: ['None: the same one drains less at every pour size. Pours stand alone.'],
  };
}

/** Pour sizes at which the two are not told apart. */
function mixedText({ low_mL, high_mL }: BreakEvenRow): string {
  if (low_mL === null) return '';
  if (high_mL === null) return `from ${outward(low_mL, 3, 'down')} mL`;
  return `${rangeText(low_mL, high_mL)} mL`;
}
