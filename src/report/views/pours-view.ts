import type { PourRow } from '../../model/index.ts';
import { significant } from '../format-number.ts';
import { durationText } from '../format-quantity.ts';
import type { View } from '../view.ts';

/** Flow of every device and the time it takes to fill common vessels. */
export function poursView(rows: readonly PourRow[]): View {
  const flows = rows.map((row) => row.flow_L_per_min);
  return {
    caption:
      rows.length === 0
        ? 'No timed pours'
        : `Flow of clean water from ${significant(Math.min(...flows), 3)} to ` +
          `${significant(Math.max(...flows), 3)} L/min, as poured at the bench`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      { head: 'Runs', align: 'right' },
      { head: 'Flow, L/min', align: 'right' },
      { head: 'Lowest to highest run, L/min', align: 'right' },
      { head: 'Glass of 250 mL', align: 'right' },
      { head: 'Carafe of 1 L', align: 'right' },
      { head: 'US cup', align: 'right' },
      { head: 'US gallon', align: 'right' },
    ],
    rows: rows.map((row) => [
      row.device,
      row.variant,
      String(row.runs),
      significant(row.flow_L_per_min, 3),
      `${significant(row.lowest_run_L_per_min, 3)} to ${significant(row.highest_run_L_per_min, 3)}`,
      durationText(row.fill_glass_250_mL_s),
      durationText(row.fill_carafe_1_L_s),
      durationText(row.fill_us_cup_s),
      durationText(row.fill_us_gallon_s),
    ]),
    legend: ['Flow is all volume over all time; not corrected for pressure or temperature.'],
  };
}
