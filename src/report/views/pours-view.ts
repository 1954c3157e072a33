import type { PourRow } from '../../model/index.ts';
import { boundDigits, significant } from '../format-number.ts';
import { durationText } from '../format-quantity.ts';
import type { View } from '../view.ts';

/** Flow and filling times, then how it repeats and starts, then beside what is advertised. */
export function poursViews(rows: readonly PourRow[]): View[] {
  if (rows.length === 0) return [poursView(rows)];
  return [poursView(rows), openView(rows), steadinessView(rows), standardView(rows)];
}

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
      { head: 'Range of the flow', align: 'right' },
      { head: 'Lowest to highest run', align: 'right' },
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
      rangeText(
        row.flow_uncertainty?.low_L_per_min ?? null,
        row.flow_uncertainty?.high_L_per_min ?? null,
      ),
      `${significant(row.lowest_run_L_per_min, 3)} to ${significant(row.highest_run_L_per_min, 3)}`,
      durationText(row.fill_glass_250_mL_s),
      durationText(row.fill_carafe_1_L_s),
      durationText(row.fill_us_cup_s),
      durationText(row.fill_us_gallon_s),
    ]),
    legend: [
      'Flow is all volume over all time; not corrected for pressure or temperature. Its range holds repeats, readings, stopwatch and vessels; so does that of every time to fill, in the data.',
    ],
  };
}

const RESTS_ON = {
  repeats: 'repeats',
  bench: 'scatter of the other devices',
  instruments: 'instruments',
} as const;

/** What the uncertainty of each flow is made of. */
function openView(rows: readonly PourRow[]): View {
  const known = rows.flatMap((row) => row.flow_uncertainty ?? []);
  const byRepeats = known.filter((open) => open.rests_on === 'repeats').length;
  return {
    caption: `How sure the flows are: the repeats decide for ${byRepeats} of ${rows.length}, otherwise the instruments or the other devices`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      { head: 'Std. uncertainty, %', align: 'right' },
      { head: 'Repeats, %', align: 'right' },
      { head: 'Readings, %', align: 'right' },
      { head: 'Stopwatch, %', align: 'right' },
      { head: 'Vessel or scale, %', align: 'right' },
      { head: 'Rests on', align: 'left' },
    ],
    rows: rows.map((row) => {
      const open = row.flow_uncertainty;
      const part = (value: number | null | undefined): string =>
        value == null ? NONE : significant((100 * value) / row.flow_L_per_min, 2);
      return [
        row.device,
        row.variant,
        part(open?.standard_L_per_min),
        part(open?.scatter_L_per_min),
        part(open?.reading_L_per_min),
        part(open?.stopwatch_L_per_min),
        part(open?.vessel_L_per_min),
        open === null ? NONE : RESTS_ON[open.rests_on],
      ];
    }),
    legend: [
      'Standard uncertainties. The scatter of repeats holds the errors of readings and stopwatch, so the larger of the two counts; what a vessel or scale is off is the same in all repeats and comes on top.',
    ],
  };
}

const NONE = 'not tested';

function flowText(flow: number | undefined): string {
  return flow === undefined ? NONE : significant(flow, 3);
}

/** A range with both ends rounded outward. */
function rangeText(low: number | null, high: number | null): string {
  if (low === null || high === null) return NONE;
  return `${boundDigits(low, 3, 'down')} to ${boundDigits(high, 3, 'up')}`;
}

/** A figure with its range in parentheses. */
function rangedText(
  value: number | null | undefined,
  low: number | null | undefined,
  high: number | null | undefined,
): string {
  if (value == null) return NONE;
  return `${significant(value, 3)} (${rangeText(low ?? null, high ?? null)})`;
}

/** Percent with its range, to a tenth. */
function percentRange(row: PourRow): string {
  const { decline, decline_low: low, decline_high: high } = row;
  if (decline === null || low === null || high === null) return NONE;
  const tenths = (value: number, round: (tenths: number) => number) =>
    (round(value * 1000) / 10).toFixed(1);
  return `${(decline * 100).toFixed(1)} (${tenths(low, Math.floor)} to ${tenths(high, Math.ceil)})`;
}

/** How well the flow repeats, how it starts and how it ends. */
function steadinessView(rows: readonly PourRow[]): View {
  const declining = rows.filter((row) => (row.decline ?? 0) >= 0.05).length;
  const tested = rows.filter((row) => row.decline !== null).length;
  const sure = rows.filter((row) => (row.decline_low ?? 0) > 0).length;
  return {
    caption:
      tested === 0
        ? 'How the flow repeats; no run was read in parts, so its course is not tested'
        : `How the flow repeats and runs: ${declining} of ${tested} devices read in parts flow 5 % or more slower at the end than at the start; ${sure} slower beyond the uncertainty`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      { head: 'Pours', align: 'right' },
      { head: 'Mean, L/min', align: 'right' },
      { head: 'Interval of the mean', align: 'right' },
      { head: 'Standard deviation', align: 'right' },
      { head: 'First second, L/min', align: 'right' },
      { head: 'After it, L/min', align: 'right' },
      { head: 'Slower at the end by, %', align: 'right' },
      { head: 'Settled, L/min', align: 'right' },
    ],
    rows: rows.map((row) => [
      row.device,
      row.variant,
      row.repeats === null ? '1' : String(row.repeats.n),
      flowText(row.repeats?.mean_L_per_min),
      row.repeats === null
        ? NONE
        : `${significant(row.repeats.low_L_per_min, 3)} to ${significant(row.repeats.high_L_per_min, 3)}`,
      row.repeats === null ? NONE : significant(row.repeats.sd_L_per_min, 2),
      rangedText(
        row.first_rush?.flow_L_per_min,
        row.first_rush?.low_L_per_min,
        row.first_rush?.high_L_per_min,
      ),
      rangedText(
        row.first_rush?.after_L_per_min,
        row.first_rush?.after_low_L_per_min,
        row.first_rush?.after_high_L_per_min,
      ),
      percentRange(row),
      rangedText(
        row.settled?.flow_L_per_min,
        row.settled?.low_L_per_min,
        row.settled?.high_L_per_min,
      ),
    ]),
    legend: [
      'Pours: single pours, and runs read in parts as one each. The mean weighs all alike; the flow above weighs by time.',
      'Settled: slope of the volume against time of runs read cumulatively, free of a slow or fast start.',
      'Ranges in parentheses hold repeats, readings, stopwatch and vessels; the interval of the mean holds its scatter alone. A first second stopped by hand is as uncertain as the hand.',
    ],
  };
}

/** Flow under standard conditions and production, beside what is advertised. */
function standardView(rows: readonly PourRow[]): View {
  const percent = (share: number | null): string =>
    share === null ? NONE : significant(share * 100, 2);
  const litres = (amount: number | null, none: string): string =>
    amount === null ? none : significant(amount, 3);
  const known = rows.filter((row) => row.share_of_advertised_flow !== null);
  const below = known.filter((row) => (row.share_of_advertised_flow ?? 1) < 1).length;
  return {
    caption:
      known.length === 0
        ? 'Flow at 25 °C and 50 psi, and the production of a day'
        : `${below} of ${known.length} flows measured at the bench lie below the advertised one`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      { head: 'At 25 °C and 50 psi, L/min', align: 'right' },
      { head: 'Of the advertised flow, %', align: 'right' },
      { head: 'Without pause, L/day', align: 'right' },
      { head: 'Advertised, L/day', align: 'right' },
      { head: 'Of it, %', align: 'right' },
      { head: 'Usable tank, L', align: 'right' },
    ],
    rows: rows.map((row) => [
      row.device,
      row.variant,
      row.standardised === null ? NONE : standardText(row.standardised),
      percent(row.share_of_advertised_flow),
      litres(row.production_L_per_day, NONE),
      litres(row.advertised_production_L_per_day, 'not stated'),
      percent(row.share_of_advertised_production),
      litres(row.usable_tank_L, NONE),
    ]),
    legend: [
      'Two figures at 25 °C and 50 psi: by 1.03 per kelvin and by the Arrhenius factor, each with the range of flow, thermometer and gauge. Solids and recovery are those of the bench; a pump inside the device sets its own pressure.',
      'Measured at the bench under the conditions of the day: none of these is a rating.',
    ],
  };
}

function standardText(row: NonNullable<PourRow['standardised']>): string {
  const power = rangedText(
    row.by_power_L_per_min,
    row.by_power_low_L_per_min,
    row.by_power_high_L_per_min,
  );
  const arrhenius = rangedText(
    row.by_arrhenius_L_per_min,
    row.by_arrhenius_low_L_per_min,
    row.by_arrhenius_high_L_per_min,
  );
  return power === arrhenius ? power : `${power}; ${arrhenius}`;
}
