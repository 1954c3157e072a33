import type { DrainCurve, WaterUse, WaterUseFact } from '../../analyse/index.ts';
import type { BreakEvenRow, Spread, WaterCurveRow } from '../../model/index.ts';
import { atMostDigits, significant } from '../format-number.ts';
import { volumeText } from '../format-quantity.ts';
import type { View } from '../view.ts';

const NOT_TESTED = 'not tested';

function figure(spread: Spread, digits: number): string {
  return spread.estimate === null ? NOT_TESTED : significant(spread.estimate, digits);
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
      row.recovery.estimate === null ? NOT_TESTED : significant(row.recovery.estimate * 100, 3),
      figure(row.drain_L_per_year, 3),
    ]),
    legend: [
      'Drain goes to the sewer; a device without a drain line drains 0.',
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

/** Total drain ratio against the size of a pour that stands alone. */
export function curveView(rows: readonly WaterCurveRow[], curves: readonly DrainCurve[]): View {
  const sizes = [...new Set(rows.map((row) => row.pour_mL))];
  const excluded = curves.flatMap(({ drain, isolated }) =>
    isolated === null || isolated.excludedRules.length === 0
      ? []
      : `${drain.device.values.device} (${drain.variant}): ${isolated.excludedRules.join(', ')}`,
  );
  return {
    caption: 'Litres to drain per clean litre of a pour that stands alone, by pour size',
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      ...sizes.map((size) => ({ head: volumeText(size / 1000), align: 'right' }) as const),
    ],
    rows: curves.map(({ drain }) => [
      drain.device.values.device,
      drain.variant,
      ...sizes.map((size) => {
        const row = rows.find(
          (item) =>
            item.device === drain.device.values.device &&
            item.variant === drain.variant &&
            item.pour_mL === size,
        );
        return ratioText(row?.total_drain_ratio ?? null);
      }),
    ]),
    legend: [
      'A pour alone bears its start and one flush after it; pours in quick succession share them.',
      ...(excluded.length === 0
        ? []
        : [`Rules that do not depend on a pour stay out: ${excluded.join('; ')}.`]),
    ],
  };
}

/** Pour sizes at which two devices drain the same. */
export function breakEvenView(rows: readonly BreakEvenRow[]): View {
  const found = rows.filter((row) => row.pour_mL !== null);
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
    ],
    rows: rows.map((row) => [
      row.device_a,
      row.variant_a,
      row.device_b,
      row.variant_b,
      row.pour_mL === null ? 'none' : `${atMostDigits(row.pour_mL, 3)} mL`,
    ]),
    legend: ['None: the same one drains less at every pour size. Pours stand alone.'],
  };
}
