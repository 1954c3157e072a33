import type { PourRow } from '../../../model/index.ts';
import { significant } from '../../format-number.ts';
import { durationText } from '../../format-quantity.ts';
import { amount, pour, spreadFigure } from '../figures.ts';
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
  const once = rows.filter(({ repeats }) => repeats === null).length;
  const untimed = input.devices.filter((device) => rows.every((row) => row.device !== device));
  return blocks([
    markup('## Flow and filling times'),
    paragraph([
      extremes(rows, nameOf),
      once === 0
        ? NOTHING
        : once === rows.length
          ? markup('Each flow rests on one pour, so how well it repeats is not known.')
          : say`For ${count('runs-once', once)} of ${count('flows', rows.length)} flows there is one pour only, so how well they repeat is not known.`,
      markup(
        'Flow is as poured at the bench, corrected for neither pressure nor temperature unless a column says so.',
      ),
      untimed.length === 0
        ? NOTHING
        : say`Not timed: ${listed(untimed.map((device) => quoted(names.get(device) ?? device)))}.`,
    ]),
    behaviourTable(rows, nameOf),
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
          figure(`${key}.flow`, row.flow_L_per_min, 'L/min', significant(row.flow_L_per_min, 3)),
          time('glass', row.fill_glass_250_mL_s),
          time('carafe', row.fill_carafe_1_L_s),
          time('gallon', row.fill_us_gallon_s),
        ];
      }),
    }),
  ]);
}

/** What the pours say beyond the mean: repeats, the first rush, decline, standard conditions. */
function behaviourTable(rows: readonly PourRow[], nameOf: (row: PourRow) => string): Piece {
  const rate = (key: string, value: number): Piece =>
    figure(key, value, 'L/min', significant(value, 3));
  const percent = (key: string, share: number | null): Piece =>
    share === null ? NOTHING : figure(key, share * 100, '%', significant(share * 100, 3));
  const columns: readonly (readonly [string, (row: PourRow, key: string) => Piece])[] = [
    [
      'Mean of repeats, L/min',
      ({ repeats }, key) =>
        repeats === null
          ? NOTHING
          : spreadFigure(
              `${key}.repeats`,
              {
                low: repeats.low_L_per_min,
                estimate: repeats.mean_L_per_min,
                high: repeats.high_L_per_min,
              },
              'L/min',
            ),
    ],
    [
      'First rush, L/min',
      ({ first_rush: rush }, key) =>
        rush === null ? NOTHING : rate(`${key}.rush`, rush.flow_L_per_min),
    ],
    ['Decline along a run, %', ({ decline }, key) => percent(`${key}.decline`, decline)],
    [
      'At 25 °C and 50 psi, L/min',
      ({ standardised: standard }, key) => {
        if (standard === null) return NOTHING;
        const both = [standard.by_power_L_per_min, standard.by_arrhenius_L_per_min];
        const [low = 0, high = 0] = both.sort((a, b) => a - b);
        const ends = [significant(low, 3), significant(high, 3)];
        return ends[0] === ends[1]
          ? rate(`${key}.standard`, low)
          : figure(`${key}.standard`, both, 'L/min', ends.join(' to '));
      },
    ],
    [
      'Of the advertised flow, %',
      ({ share_of_advertised_flow: share }, key) => percent(`${key}.of-advertised`, share),
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
        'Blank: not logged. In brackets the interval of the mean of repeats. Standard conditions: by the flow equation of an ASTM practice with two common temperature factors, at the solids and recovery of the bench. Advertised figures hold under conditions of the maker’s own.',
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
  const text = (row: PourRow): Piece =>
    say`${amount('flow', row.flow_L_per_min, 'L/min', 3)} (${nameOf(row)})`;
  return slowest === fastest
    ? say`Clean water flowed at ${text(slowest)}.`
    : say`Clean water flowed at rates from ${text(slowest)} to ${text(fastest)}.`;
}
