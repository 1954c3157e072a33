import type { PourRow } from '../../../model/index.ts';
import { significant } from '../../format-number.ts';
import { durationText } from '../../format-quantity.ts';
import { amount, pour } from '../figures.ts';
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
  const once = rows.filter((row) => row.runs === 1).length;
  const untimed = input.devices.filter((device) => rows.every((row) => row.device !== device));
  return blocks([
    markup('## Flow and filling times'),
    paragraph([
      extremes(rows, nameOf),
      once === 0
        ? NOTHING
        : once === rows.length
          ? markup('Each flow rests on one run, so how well it repeats is not known.')
          : say`For ${count('runs-once', once)} of ${count('flows', rows.length)} flows there is one run only, so how well they repeat is not known.`,
      markup('Flow is as poured at the bench, corrected for neither pressure nor temperature.'),
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
          figure(`${key}.flow`, row.flow_L_per_min, 'L/min', significant(row.flow_L_per_min, 3)),
          time('glass', row.fill_glass_250_mL_s),
          time('carafe', row.fill_carafe_1_L_s),
          time('gallon', row.fill_us_gallon_s),
        ];
      }),
    }),
  ]);
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
