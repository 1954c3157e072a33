import type { PourRow } from '../../../model/index.ts';
import { significant } from '../../format-number.ts';
import { durationText } from '../../format-quantity.ts';
import { pour, spreadFigure } from '../figures.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  count,
  figure,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { deviceNames, subjectName } from '../subjects.ts';
import { left, right, tablePiece } from '../table.ts';

/** Flow of clean water and the time common vessels take. */
export function flowSection(input: NotesInput): Piece {
  const rows = input.outcomes.pours.rows as readonly PourRow[];
  if (rows.length === 0) return NOTHING;
  const names = deviceNames(input.bench);
  const nameOf = (row: PourRow) => subjectName(names.get(row.device) ?? row.device, row.variant);
  const untimed = input.devices.filter((device) => rows.every((row) => row.device !== device));
  return blocks([
    markup('## Flow and filling times'),
    paragraph([
      extremes(rows, nameOf),
      scatter(rows),
      markup(
        'Flow is as poured at the bench, corrected for neither pressure nor temperature unless a column says so.',
      ),
      untimed.length === 0
        ? NOTHING
        : say`Not timed: ${listed(untimed.map((device) => quoted(names.get(device) ?? device)))}.`,
    ]),
    tablePiece({
      caption: markup('Flow of clean water and the time to fill common vessels'),
      columns: [
        left('Device'),
        right('Runs'),
        right('Flow, L/min'),
        right(say`Glass of ${pour('glass', 250)}`),
        right(say`Carafe of ${pour('carafe', 1000)}`),
        right('US gallon'),
      ],
      rows: rows.map((row) => {
        const key = nameOf(row);
        const time = (name: string, seconds: number): Piece =>
          figure(`${key}.${name}`, seconds, 's', durationText(seconds));
        return [
          quoted(nameOf(row)),
          count(`${key}.runs`, row.runs),
          flowFigure(`${key}.flow`, row),
          time('glass', row.fill_glass_250_mL_s),
          time('carafe', row.fill_carafe_1_L_s),
          time('gallon', row.fill_us_gallon_s),
        ];
      }),
    }),
    behaviourTable(rows, nameOf),
  ]);
}

/** The flow with its interval, where it has one. */
function flowFigure(key: string, row: PourRow): Piece {
  const range = row.flow_uncertainty;
  const [low, high] = range === null ? [null, null] : [range.low_L_per_min, range.high_L_per_min];
  return spreadFigure(key, { low, estimate: row.flow_L_per_min, high }, 'L/min');
}

/** What the intervals rest on. */
function scatter(rows: readonly PourRow[]): Piece {
  const of = (wanted: 'repeats' | 'bench' | 'instruments'): number =>
    rows.filter((row) => row.flow_uncertainty?.rests_on === wanted).length;
  const [bench, instruments] = [of('bench'), of('instruments')];
  return paragraph([
    rows.some((row) => row.flow_uncertainty !== null)
      ? markup('In brackets the interval from repeats, readings, stopwatch and vessels.')
      : NOTHING,
    bench === 0
      ? NOTHING
      : say`Of ${count('flow.bench', bench)} of ${count('flows', rows.length)} flows there is a single pour, with the scatter of the repeats of other devices.`,
    instruments === 0
      ? NOTHING
      : say`Of ${count('flow.instruments', instruments)} of ${count('flows', rows.length)} flows nothing shows how well they repeat; their interval is that of the instruments alone.`,
  ]);
}

/** What the pours say beyond the mean: repeats, the first rush, decline, standard conditions. */
function behaviourTable(rows: readonly PourRow[], nameOf: (row: PourRow) => string): Piece {
  const rate = (key: string, low: number, estimate: number | null, high: number): Piece =>
    spreadFigure(key, { low, estimate, high }, 'L/min');
  const percent = (key: string, share: number | null): Piece =>
    share === null ? NOTHING : figure(key, share * 100, '%', significant(share * 100, 3));
  const columns: readonly (readonly [string, (row: PourRow, key: string) => Piece])[] = [
    [
      'First rush, L/min',
      ({ first_rush: rush }, key) =>
        rush === null
          ? NOTHING
          : rate(`${key}.rush`, rush.low_L_per_min, rush.flow_L_per_min, rush.high_L_per_min),
    ],
    [
      'Decline along a run, %',
      ({ decline, decline_low: low, decline_high: high }, key) =>
        decline === null || low === null || high === null
          ? NOTHING
          : figure(
              `${key}.decline`,
              [decline, low, high].map((share) => share * 100),
              '%',
              `${significant(decline * 100, 2)} (${significant(low * 100, 2)} to ${significant(high * 100, 2)})`,
            ),
    ],
    [
      'At 25 °C and 50 psi, L/min',
      ({ standardised: standard }, key) => {
        if (standard === null) return NOTHING;
        return rate(
          `${key}.standard`,
          Math.min(standard.by_power_low_L_per_min, standard.by_arrhenius_low_L_per_min),
          null,
          Math.max(standard.by_power_high_L_per_min, standard.by_arrhenius_high_L_per_min),
        );
      },
    ],
    [
      'Of the advertised flow, %',
      ({ share_of_advertised_flow: share }, key) => percent(`${key}.of-advertised`, share),
    ],
    [
      'Without pause, L a day',
      (row, key) =>
        row.production_L_per_day === null
          ? NOTHING
          : spreadFigure(
              `${key}.production`,
              {
                low: row.production_low_L_per_day,
                estimate: row.production_L_per_day,
                high: row.production_high_L_per_day,
              },
              'L',
            ),
    ],
    [
      'Of the advertised production, %',
      ({ share_of_advertised_production: share }, key) =>
        percent(`${key}.of-advertised-production`, share),
    ],
  ];
  const shown = columns.filter(([, cell]) => rows.some((row) => cell(row, '').markdown !== ''));
  if (shown.length === 0) return NOTHING;
  return tablePiece({
    caption: markup('What the timed pours show beyond the mean; no rating'),
    columns: [left('Device'), ...shown.map(([head]) => right(headOf(head)))],
    rows: rows
      .filter((row) => shown.some(([, cell]) => cell(row, '').markdown !== ''))
      .map((row) => [quoted(nameOf(row)), ...shown.map(([, cell]) => cell(row, nameOf(row)))]),
    legend: [
      markup(
        'Blank: not logged. In brackets the interval. Standard conditions: by the flow equation of an ASTM practice, with the interval over both common temperature factors, at the solids and recovery of the bench. Advertised figures hold under conditions of the maker’s own.',
      ),
    ],
  });
}

/** A head with its figures in the data. */
function headOf(head: string): Piece {
  return head.startsWith('At ')
    ? say`At ${figure('standard.temperature', 25, 'degC', '25 °C')} and ${figure('standard.pressure', 50, 'psi', '50 psi')}, L/min`
    : markup(head);
}

function extremes(rows: readonly PourRow[], nameOf: (row: PourRow) => string): Piece {
  const ordered = [...rows].sort((a, b) => a.flow_L_per_min - b.flow_L_per_min);
  const [slowest] = ordered;
  const fastest = ordered.at(-1);
  if (slowest === undefined || fastest === undefined) return NOTHING;
  const text = (row: PourRow): Piece => say`${flowFigure('flow', row)} L/min (${nameOf(row)})`;
  return slowest === fastest
    ? say`Clean water flowed at ${text(slowest)}.`
    : say`Clean water flowed at rates from ${text(slowest)} to ${text(fastest)}.`;
}
