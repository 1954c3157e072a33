import { FLUSH_OFF, type IdleRiseRow, type Spread, STANDARD } from '../../model/index.ts';
import { atMostDigits, significant } from '../format-number.ts';
import { durationText, volumeText } from '../format-quantity.ts';
import type { View } from '../view.ts';

const NONE = 'not tested';

/** For each meter and scale: the pauses, the scenarios, and the automatic flush on and off. */
export function idleRiseViews(rows: readonly IdleRiseRow[]): View[] {
  const groups = [...new Set(rows.map(groupOf))];
  return groups.flatMap((group) => {
    const own = rows.filter((row) => groupOf(row) === group);
    const pauses = own.filter((row) => row.what === 'pause');
    const scenarios = own.filter((row) => row.what === 'scenario');
    return [
      pauseView(group, pauses),
      ...(scenarios.length === 0 ? [] : [scenarioView(group, scenarios)]),
      ...flushViews(group, scenarios),
    ];
  });
}

function groupOf(row: IdleRiseRow): string {
  const scale = row.scale === null ? 'scale not stated' : `${row.scale} scale`;
  return `${row.meter ?? 'meter not named'}, ${scale}, ${row.unit}`;
}

function pauseView(group: string, rows: readonly IdleRiseRow[]): View {
  const highest = [...rows].sort((a, b) => (b.first_draw_tds ?? 0) - (a.first_draw_tds ?? 0))[0];
  const most =
    highest?.first_draw_tds == null || highest.idle_s === null
      ? 'no reading'
      : `up to ${atMostDigits(highest.first_draw_tds, 3)} ${highest.unit} in the first ` +
        `${volumeText(highest.first_draw_L ?? 0)} (${highest.device}, ${highest.variant}, after ${durationText(highest.idle_s)})`;
  return {
    caption: `First water after a pause (${group}): ${most}`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      { head: 'Pause', align: 'right' },
      { head: 'First reading', align: 'right' },
      { head: 'In the first', align: 'right' },
      { head: 'Of the feed, %', align: 'right' },
      { head: 'Running', align: 'right' },
      { head: 'Volume to recover', align: 'right' },
    ],
    rows: rows.map((row) => [
      row.device,
      row.variant,
      row.idle_s === null ? '' : durationText(row.idle_s),
      tdsText(row.first_draw_tds),
      row.first_draw_L === null ? NONE : volumeText(row.first_draw_L),
      row.first_draw_of_feed === null ? NONE : significant(row.first_draw_of_feed * 100, 2),
      row.running_tds === null
        ? NONE
        : `${tdsText(row.running_tds)}${row.running_from === 'last-reading' ? ' [l]' : ''}`,
      row.recover_L === null ? 'not reached' : volumeText(row.recover_L),
    ]),
    legend: [
      '[l] last reading after this pause; without readings at no pause it stands for the running water.',
      'Recovered: nine tenths of the rise are gone. Readings of another meter or scale stand in a table of their own and are not compared.',
    ],
  };
}

function scenarioView(group: string, rows: readonly IdleRiseRow[]): View {
  const above = rows.find((row) => row.above_tds !== null);
  return {
    caption: `TDS of a scenario's water as far as the tested pauses reach (${group})`,
    columns: [
      { head: 'Device', align: 'left' },
      { head: 'Variant', align: 'left' },
      { head: 'Scenario', align: 'left' },
      { head: 'Water covered, %', align: 'right' },
      { head: 'Mean of it', align: 'right' },
      ...(above === undefined
        ? []
        : [
            {
              head: `Above ${atMostDigits(above.above_tds ?? 0, 6)} ${above.unit}, % of all water`,
              align: 'right',
            } as const,
          ]),
    ],
    rows: rows.map((row) => [
      row.device,
      row.variant,
      row.scenario ?? '',
      row.covered_share === null ? NONE : significant(row.covered_share * 100, 3),
      rangeText(row.mean_tds, tdsText),
      ...(above === undefined
        ? []
        : [rangeText(row.share_above, (share) => (share * 100).toFixed(1))]),
    ]),
    legend: [
      'Between two tested pauses the reading is taken as a straight line in the length of the pause; the range is that of the two.',
      'Pours after shorter or longer pauses than any tested are not covered; they widen the share above a reading.',
    ],
  };
}

/** What switching the automatic flush off saves in water and costs in TDS. */
function flushViews(group: string, rows: readonly IdleRiseRow[]): View[] {
  const pairs = rows.flatMap((off) => {
    if (off.variant !== FLUSH_OFF) return [];
    const on = rows.find(
      (row) =>
        row.variant === STANDARD && row.device === off.device && row.scenario === off.scenario,
    );
    return on === undefined ? [] : { on, off };
  });
  if (pairs.length === 0) return [];
  return [
    {
      caption: `The automatic flush on and off: drain saved, and TDS of the water (${group})`,
      columns: [
        { head: 'Device', align: 'left' },
        { head: 'Scenario', align: 'left' },
        { head: 'Drain with flush, L/year', align: 'right' },
        { head: 'Without, L/year', align: 'right' },
        { head: 'Saved, L/year', align: 'right' },
        { head: 'Mean TDS with flush', align: 'right' },
        { head: 'Without', align: 'right' },
        { head: 'Water covered with and without, %', align: 'right' },
      ],
      rows: pairs.map(({ on, off }) => [
        off.device,
        off.scenario ?? '',
        litresText(on.drain_L_per_year),
        litresText(off.drain_L_per_year),
        on.drain_L_per_year === null || off.drain_L_per_year === null
          ? NONE
          : litresText(on.drain_L_per_year - off.drain_L_per_year),
        rangeText(on.mean_tds, tdsText),
        rangeText(off.mean_tds, tdsText),
        `${shareText(on.covered_share)} and ${shareText(off.covered_share)}`,
      ]),
      legend: ['The means compare only where both cover about the same water.'],
    },
  ];
}

function tdsText(tds: number | null): string {
  return tds === null ? NONE : significant(tds, 3);
}

function litresText(litres: number | null): string {
  return litres === null ? NONE : significant(litres, 3);
}

function shareText(share: number | null): string {
  return share === null ? NONE : significant(share * 100, 2);
}

function rangeText({ low, estimate, high }: Spread, text: (value: number) => string): string {
  if (low === null || high === null) return NONE;
  const range = text(low) === text(high) ? text(low) : `${text(low)} to ${text(high)}`;
  return estimate === null || text(low) === text(high) ? range : `${text(estimate)} (${range})`;
}
