import type { DrainRegionRow, SweepRow, WaterInputRow } from '../../model/index.ts';
import { atMostDigits, significant } from '../format-number.ts';
import { volumeText } from '../format-quantity.ts';
import type { View } from '../view.ts';
import { ratioText } from './water-use-view.ts';

/** The device that drains least in each cell, one row a pour size and a column a number of pours. */
export function regionsView(rows: readonly DrainRegionRow[], isRandom = false): View {
  const sizes = [...new Set(rows.map((row) => row.pour_mL))];
  const counts = [...new Set(rows.map((row) => row.pours_per_day))];
  const apart = rows.filter((row) => row.told_apart === true).length;
  const hasDraws = rows.some((row) => row.told_apart !== null);
  return {
    caption:
      rows.length === 0
        ? 'No device could be played'
        : hasDraws
          ? `Drains least by pour size and pours a day; told apart from every other device in ${apart} of ${rows.length} cells`
          : 'Lowest estimate by pour size and pours a day; nothing is told apart without draws',
    columns: [
      { head: 'Pour', align: 'right' },
      ...counts.map((count) => ({ head: `${count} a day`, align: 'left' }) as const),
    ],
    rows: sizes.map((size) => [
      volumeText(size / 1000),
      ...counts.map((count) => {
        const row = rows.find((each) => each.pour_mL === size && each.pours_per_day === count);
        return row === undefined ? '' : regionText(row);
      }),
    ]),
    legend: [
      `Litres to drain per clean litre behind the name. Devices with a drain line, of tanks those that tanks.csv describes and that can give the water; ${isRandom ? 'pours at random' : 'even pours'} from 07:00 to 22:00.`,
      ...(hasDraws
        ? ['With "or": drains least by its estimate, and not told apart from these.']
        : []),
    ],
  };
}

function regionText(row: DrainRegionRow): string {
  const name = row.variant === 'standard' ? row.device : `${row.device} (${row.variant})`;
  const others = row.not_told_apart_from;
  const more = others.length === 0 ? '' : ` or ${others.join(', ')}`;
  return `${name} ${ratioText(row.total_drain_ratio.estimate)}${more}`;
}

/** Inputs with their standard uncertainty and their share in the variance, per device and scenario. */
export function inputsView(rows: readonly WaterInputRow[]): View {
  const most = rows
    .filter((row) => row.share !== null && row.input !== 'year')
    .reduce<WaterInputRow | null>(
      (top, row) => (top === null || (row.share ?? 0) > (top.share ?? 0) ? row : top),
      null,
    );
  return {
    caption:
      most === null
        ? 'Inputs of the water use and their standard uncertainties'
        : `Inputs of the water use; the largest share in a total drain ratio is that of ${most.input} (${most.device}, ${most.scenario}): ${percent(most.share)}`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Scenario', align: 'left' },
      { head: 'Input', align: 'left' },
      { head: 'Estimate', align: 'right' },
      { head: 'Std. uncertainty', align: 'right' },
      { head: 'Rests on', align: 'left' },
      { head: 'Share', align: 'right' },
    ],
    rows: rows.map((row) => [
      row.variant === 'standard' ? row.device : `${row.device} (${row.variant})`,
      row.scenario,
      row.input,
      row.estimate === null ? '' : `${significant(row.estimate, 4)}${unitOf(row.unit)}`,
      row.standard_uncertainty === null
        ? ''
        : `${significant(row.standard_uncertainty, 2)}${unitOf(row.unit)}`,
      row.rests_on,
      percent(row.share),
    ]),
    legend: [
      'Share: of the variance of the total drain ratio. That of drain-ratio includes per-start, which comes from the same fit.',
      'Assumed: the spread of pour sizes is an assumption of the bench; no distribution is published.',
      ...(rows.some((row) => row.rests_on === 'tank figures')
        ? [
            'Tank figures: tolerances of gauge, vessels and clock; the error of the gauge moves all pressures of a tank at once.',
          ]
        : []),
    ],
  };
}

function unitOf(unit: string | null): string {
  return unit === null || unit === '1' ? '' : ` ${unit}`;
}

function percent(share: number | null): string {
  return share === null ? '' : `${(share * 100).toFixed(0)} %`;
}

/** Water use at each value of the inputs that were swept. */
export function sweepView(rows: readonly SweepRow[]): View {
  const first = rows[0];
  const second = first?.second_input ?? null;
  return {
    caption:
      first === undefined
        ? 'No device has the input that was swept'
        : `Total drain per clean litre with ${first.input}${second === null ? '' : ` and ${second}`} set to other values, all else as measured`,
    columns: [
      ...(first === undefined
        ? []
        : [{ head: headOf(first.input, first.unit), align: 'right' } as const]),
      ...(second === null || first === undefined
        ? []
        : [{ head: headOf(second, first.second_unit), align: 'right' } as const]),
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      { head: 'Scenario', align: 'left' },
      { head: 'Total drain, L per clean L', align: 'right' },
      { head: 'Recovery, %', align: 'right' },
      { head: 'Drain, L/year', align: 'right' },
    ],
    rows: rows.map((row) => [
      atMostDigits(row.value, 4),
      ...(second === null
        ? []
        : [row.second_value === null ? '' : atMostDigits(row.second_value, 4)]),
      row.device,
      row.variant,
      row.scenario,
      ratioText(row.total_drain_ratio),
      row.recovery === null ? '' : significant(row.recovery * 100, 3),
      significant(row.drain_L_per_year, 3),
    ]),
    legend: ['Values that were set and not measured; ranges are not computed for them.'],
  };
}

function headOf(input: string, unit: string | null): string {
  return unit === null || unit === '1' ? input : `${input}, ${unit}`;
}
